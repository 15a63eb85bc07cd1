import { NativeSelect } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useSpeaking } from '../../text/text-provider.js';
import { type Asked, type CheckedSheet, importKindsQuery } from './api/imports.js';
import css from './files.module.css';

interface Props {
  readonly sheet: CheckedSheet;
  readonly columns: Asked['columns'];
  readonly open: boolean;
  readonly onColumns: (columns: Asked['columns']) => void;
}

const [UNKNOWN, LEFT_OUT] = ['', '-'];

/** Which column of the file is read as what; what a person chooses here goes before the headings. */
export function ColumnMatch({ sheet, columns, open, onColumns }: Props) {
  const { language, text } = useSpeaking();
  const w = text.files.sheet;
  const kinds = useQuery(importKindsQuery).data?.items ?? [];
  const known = kinds.find(({ kind }) => kind === sheet.kind)?.columns ?? [];
  const choices = [
    { value: UNKNOWN, label: w.unknown },
    { value: LEFT_OUT, label: w.leaveOut },
    ...known.map((column) => ({
      value: column.key,
      label: language === 'de' ? column.headingDe : column.headingEn,
    })),
  ];
  const choose = (letters: string, as: string) => {
    const others = columns.filter(([each]) => each !== letters);
    onColumns(as === UNKNOWN ? others : [...others, [letters, as]]);
  };
  return (
    <details className={css.columns} open={open || undefined}>
      <summary>{w.columns}</summary>
      <p className={css.hint}>{w.columnsHint}</p>
      <div className={css.scroll}>
        <table>
          <thead>
            <tr>
              <th scope="col">{w.column}</th>
              <th scope="col">{w.heading}</th>
              <th scope="col">{w.sample}</th>
              <th scope="col">{w.as}</th>
            </tr>
          </thead>
          <tbody>
            {sheet.columns.map((column) => (
              <tr key={column.column}>
                <td>{column.column}</td>
                <td>{column.heading}</td>
                <td>{column.sample}</td>
                <td>
                  <NativeSelect
                    aria-label={w.asLabel(column.column)}
                    value={column.leftOut ? LEFT_OUT : (column.as ?? UNKNOWN)}
                    data={choices}
                    onChange={(event) => choose(column.column, event.currentTarget.value)}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}
