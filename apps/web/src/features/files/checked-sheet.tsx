import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useSpeaking, useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { StatusMark, type Tone } from '../../ui/status-mark.js';
import { type Asked, type CheckedSheet, importKindsQuery, type RowFate } from './api/imports.js';
import { ColumnMatch } from './column-match.js';
import css from './files.module.css';

interface Props {
  readonly sheet: CheckedSheet;
  readonly asked: Asked;
  readonly stale: boolean;
  readonly onColumns: (columns: Asked['columns']) => void;
  readonly onIgnoreUnknown: (ignore: boolean) => void;
}

const FATES = ['new', 'changed', 'same', 'error'] as const;
type Fate = (typeof FATES)[number];

const TONES: Readonly<Record<Fate, Tone>> = {
  new: 'good',
  changed: 'accent',
  same: 'quiet',
  error: 'danger',
};

/** One sheet of a file that was checked: what is wrong with it, its columns, and its rows. */
export function CheckedSheetView({ sheet, asked, stale, onColumns, onIgnoreUnknown }: Props) {
  const w = useText().files;
  const single = asked.kind !== 'book';
  const unknown = sheet.columns.some((column) => column.as === null && !column.leftOut);
  return (
    <section className={css.sheet} aria-label={sheet.sheet}>
      <h3>{single ? sheet.sheet : `${w.kinds[sheet.kind]}: ${sheet.sheet}`}</h3>
      {sheet.problems.length > 0 && (
        <div className={css.wrong} role="alert">
          {sheet.causes.map((cause, i) => {
            const sentence = w.sheet.problem({ ...cause, sentence: sheet.problems[i] ?? '' });
            return <p key={sentence}>{sentence}</p>;
          })}
        </div>
      )}
      {single && (
        <ColumnMatch
          sheet={sheet}
          columns={asked.columns}
          open={sheet.problems.length > 0}
          onColumns={onColumns}
        />
      )}
      {(unknown || asked.ignoreUnknown) && (
        <label className={css.check}>
          <input
            type="checkbox"
            checked={asked.ignoreUnknown}
            onChange={(event) => onIgnoreUnknown(event.currentTarget.checked)}
          />
          {w.sheet.leaveAllOut}
        </label>
      )}
      {sheet.problems.length === 0 && <Rows sheet={sheet} stale={stale} />}
    </section>
  );
}

function Rows({ sheet, stale }: { readonly sheet: CheckedSheet; readonly stale: boolean }) {
  const w = useText().files;
  const counts: Record<Fate, number> = {
    new: sheet.newRows,
    changed: sheet.changedRows,
    same: sheet.sameRows,
    error: sheet.errorRows,
  };
  const [chosen, setChosen] = useState<Fate | 'all'>(sheet.errorRows > 0 ? 'error' : 'all');
  const columns = useColumns(sheet);
  const all = counts.new + counts.changed + counts.same + counts.error;
  const wanted = sheet.rows.filter((row) => chosen === 'all' || row.fate === chosen);
  const rows = wanted.slice(0, 200);
  const total = chosen === 'all' ? all : counts[chosen];
  return (
    <>
      <fieldset className={css.filters} aria-label={w.sheet.rows}>
        {(['all', ...FATES] as const).map((fate) => (
          <button
            key={fate}
            type="button"
            aria-pressed={chosen === fate}
            onClick={() => setChosen(fate)}
          >
            {w.fates[fate]} <b>{fate === 'all' ? all : counts[fate]}</b>
          </button>
        ))}
      </fieldset>
      <DataTable
        label={w.sheet.rows}
        columns={columns}
        rows={rows}
        rowKey={(row) => String(row.row)}
        stale={stale}
      />
      {rows.length < total && <p className={css.hint}>{w.shown(rows.length, total)}</p>}
    </>
  );
}

function useColumns(sheet: CheckedSheet): Column<RowFate>[] {
  const w = useText().files;
  return [
    { id: 'row', head: w.table.row, align: 'end', cell: (row) => row.row },
    { id: 'what', head: w.table.what, cell: (row) => row.title },
    {
      id: 'fate',
      head: w.table.fate,
      cell: ({ fate }) => <StatusMark tone={TONES[fate]}>{w.fate[fate]}</StatusMark>,
    },
    { id: 'details', head: w.table.details, cell: (row) => <Details row={row} sheet={sheet} /> },
  ];
}

/** What would change, or what is wrong. */
function Details({ row, sheet }: { readonly row: RowFate; readonly sheet: CheckedSheet }) {
  const { language, text } = useSpeaking();
  const kinds = useQuery(importKindsQuery).data?.items ?? [];
  const known = kinds.find(({ kind }) => kind === sheet.kind)?.columns ?? [];
  const headingOf = (key: string) => {
    const column = known.find((each) => each.key === key);
    return column ? (language === 'de' ? column.headingDe : column.headingEn) : key;
  };
  const nothing = text.files.nothing;
  return (
    <ul className={css.details}>
      {row.changes.map(({ column, from, to }) => (
        <li key={column}>
          {headingOf(column)}: {from ?? nothing} → {to ?? nothing}
        </li>
      ))}
      {row.problems.map((problem) => {
        const heading = problem.key === null ? null : headingOf(problem.key);
        const at = { sheet: sheet.sheet, row: row.row, heading };
        return <li key={problem.sentence}>{text.files.problem(problem, at)}</li>;
      })}
    </ul>
  );
}
