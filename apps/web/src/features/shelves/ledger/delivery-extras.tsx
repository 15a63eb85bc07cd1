import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { type Column, DataTable } from '../../../ui/data-table.js';
import { Section } from '../../../ui/section.js';
import { LotNumber, Money } from '../../../ui/values.js';
import type { Delivery } from '../api/get-delivery.js';
import { Second } from '../parts/second.js';
import { nameOf } from '../parts/what.js';
import css from './delivery.module.css';

type Fault = Delivery['faults'][number];
type Invoice = Delivery['invoices'][number];

/** What came damaged or not at all. */
export function Faults({ faults }: { readonly faults: readonly Fault[] }) {
  const { deliveryMore: words } = useText();
  if (faults.length === 0) return null;
  const { fault: heads, faultKinds: kinds } = words;
  const columns: Column<Fault>[] = [
    {
      id: 'what',
      head: heads.what,
      cell: (row) => (
        <>
          {nameOf(row.consumable)}
          <Second>{row.presentationName}</Second>
        </>
      ),
    },
    { id: 'kind', head: heads.kind, cell: ({ kind }) => kinds[kind] },
    { id: 'packs', head: heads.packs, align: 'end', cell: ({ packs }) => String(packs) },
    {
      id: 'lot',
      head: heads.lot,
      cell: ({ lotNumber }) => (lotNumber === null ? '' : <LotNumber value={lotNumber} />),
    },
    { id: 'note', head: heads.note, cell: ({ note }) => note ?? '' },
  ];
  return (
    <Section title={words.faults} hint={words.faultsHint}>
      <div className={css.lines}>
        <DataTable label={words.faults} columns={columns} rows={faults} rowKey={(row) => row.id} />
      </div>
    </Section>
  );
}

/** Invoices that came after the goods, with what each changed. */
export function Invoices({ invoices }: { readonly invoices: readonly Invoice[] }) {
  const { deliveryMore: words } = useText();
  const format = useFormat();
  if (invoices.length === 0) return null;
  const { invoice: heads } = words;
  const columns: Column<Invoice>[] = [
    {
      id: 'when',
      head: heads.when,
      cell: (row) => (
        <>
          {format.instant(row.recordedAt)}
          <Second>{row.recordedBy.name}</Second>
        </>
      ),
    },
    { id: 'reference', head: heads.reference, cell: ({ reference }) => reference ?? '' },
    {
      id: 'before',
      head: heads.before,
      align: 'end',
      cell: (row) => <Money value={row.landedBefore} />,
    },
    {
      id: 'after',
      head: heads.after,
      align: 'end',
      cell: (row) => <Money value={row.landedTotal} />,
    },
    {
      id: 'variance',
      head: heads.variance,
      align: 'end',
      cell: (row) => <Money value={row.priceVariance} />,
    },
  ];
  return (
    <Section title={words.invoices} hint={words.invoicesHint}>
      <div className={css.lines}>
        <DataTable
          label={words.invoices}
          columns={columns}
          rows={invoices}
          rowKey={(row) => row.id}
        />
      </div>
    </Section>
  );
}
