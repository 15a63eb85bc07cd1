import { Button, TextInput } from '@mantine/core';
import type { KeyboardEvent, ReactNode } from 'react';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { type Column, DataTable } from '../../../ui/data-table.js';
import { DateField } from '../../../ui/fields.js';
import { Form, SubmitButton } from '../../../ui/form.js';
import { Amount, LotNumber } from '../../../ui/values.js';
import type { Holding } from '../api/list-holdings.js';
import { Second } from '../parts/second.js';
import { nameOf } from '../parts/what.js';
import css from './count.module.css';
import { Difference } from './difference.js';
import { type CountedLine, isTyped } from './draft.js';
import type { Count } from './use-count.js';

interface Props {
  readonly count: Count;
  readonly holdings: readonly Holding[];
  readonly more: (() => void) | undefined;
  /** Where one counts, when that can be chosen. */
  readonly where: ReactNode;
}

/** Writing down what is there, line by line; Enter goes to the next line. */
export function CountEntry({ count, holdings, more, where }: Props) {
  const { counting, ui } = useText();
  const { form, leave, read } = count;
  const columns = useEntryColumns(count, where !== null);
  const problem = form.errorAt('draft');
  return (
    <Form form={form}>
      <div className={css.top}>
        {where}
        <DateField label={counting.day} {...form.field('countedOn')} />
      </div>
      <div>
        <DataTable
          label={counting.list}
          columns={columns}
          rows={holdings}
          rowKey={({ id }) => id}
        />
        {more && (
          <Button variant="default" className={css.more ?? ''} onClick={more}>
            {counting.more}
          </Button>
        )}
        <div className={css.bar}>
          {problem !== undefined && (
            <p role="alert" className={css.problem}>
              {problem}
            </p>
          )}
          <p className={css.progress} aria-live="polite">
            {counting.progress(read.lines.length, holdings.length, more !== undefined)}
          </p>
          <Button variant="default" onClick={leave}>
            {read.lines.length === 0 ? ui.cancel : counting.leave}
          </Button>
          <SubmitButton form={form}>{counting.review}</SubmitButton>
        </div>
      </div>
    </Form>
  );
}

function useEntryColumns({ form, read }: Count, ofOnePlace: boolean): Column<Holding>[] {
  const { columns } = useText().counting;
  const { draft } = form.values;
  const lines = new Map(read.lines.map((line) => [line.holding.id, line]));
  const type = (id: string, typed: string) => {
    form.set('draft', { ...draft, [id]: typed });
    form.clearAt(id);
  };
  return [
    { id: 'what', head: columns.what, cell: (row) => <What row={row} ofOnePlace={ofOnePlace} /> },
    { id: 'lot', head: columns.lot, cell: (row) => <Lot row={row} /> },
    {
      id: 'expected',
      head: columns.expected,
      align: 'end',
      cell: (row) => <Amount value={row.onHand} unit={row.consumable.unit} />,
    },
    {
      id: 'counted',
      head: columns.counted,
      cell: (row) => (
        <Entry
          row={row}
          typed={draft[row.id] ?? ''}
          error={form.errorAt(row.id)}
          onType={(typed) => type(row.id, typed)}
        />
      ),
    },
    {
      id: 'difference',
      head: columns.difference,
      align: 'end',
      cell: (row) => <LineDifference line={lines.get(row.id)} />,
    },
  ];
}

function What({ row, ofOnePlace }: { readonly row: Holding; readonly ofOnePlace: boolean }) {
  return (
    <>
      {nameOf(row.consumable)}
      <Second>{ofOnePlace ? row.consumable.category : row.location.name}</Second>
    </>
  );
}

function Lot({ row }: { readonly row: Holding }) {
  const { holdings } = useText().shelves;
  const format = useFormat();
  return (
    <>
      <LotNumber value={row.lot.lotNumber} />
      {row.openedOn !== null && <Second>{holdings.opened(format.day(row.openedOn))}</Second>}
      {row.containers !== null && <Second>{holdings.sealedContainers(row.containers)}</Second>}
    </>
  );
}

function LineDifference({ line }: { readonly line: CountedLine | undefined }) {
  if (!line) return <span className={css.none}>–</span>;
  return <Difference micro={line.difference} unit={line.holding.consumable.unit} />;
}

interface EntryProps {
  readonly row: Holding;
  readonly typed: string;
  readonly error: string | undefined;
  readonly onType: (typed: string) => void;
}

/** Enter goes down the list, as one goes along a shelf. */
function toNext(event: KeyboardEvent<HTMLInputElement>): void {
  if (event.key !== 'Enter') return;
  event.preventDefault();
  const entries = [...document.querySelectorAll<HTMLInputElement>('[data-count-entry]')];
  const next = entries[entries.indexOf(event.currentTarget) + 1];
  next?.focus();
}

function Entry({ row, typed, error, onType }: EntryProps) {
  const { counting, ui } = useText();
  const what = `${nameOf(row.consumable)}, ${row.lot.lotNumber ?? ui.notStated}, ${row.location.name}`;
  return (
    <div className={css.entry}>
      <TextInput
        data-count-entry
        aria-label={counting.countedOf(what)}
        inputMode="decimal"
        autoComplete="off"
        value={typed}
        error={error}
        onChange={(event) => onType(event.currentTarget.value)}
        onKeyDown={toNext}
      />
      <Button
        variant="subtle"
        aria-label={counting.asExpectedFor(what)}
        aria-pressed={isTyped(typed) && typed === row.onHand}
        onClick={() => onType(row.onHand)}
      >
        {counting.asExpected}
      </Button>
    </div>
  );
}
