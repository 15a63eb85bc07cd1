import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useMay } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import { type Column, DataTable } from '../../../ui/data-table.js';
import { Section } from '../../../ui/section.js';
import { type PriceVariances, priceVariancesQuery } from '../api/report-price-variances.js';
import type { Choice } from '../choice.js';
import { fullNameOf } from '../full-name.js';
import { SignedMoney } from '../signed-money.js';

type Row = PriceVariances['rows'][number];

/** Price variance of invoices that came after the goods; part of no restoration, so beside them. */
export function LaterInvoices({ period }: { readonly period: Pick<Choice, 'from' | 'to'> }) {
  const { costReports } = useText();
  const words = costReports.laterInvoices;
  const may = useMay();
  const report = useQuery(priceVariancesQuery(period));
  const rows = report.data?.rows ?? [];
  if (rows.length === 0) return null;
  const columns: Column<Row>[] = [
    { id: 'month', head: words.month, cell: ({ month }) => month },
    { id: 'what', head: words.consumable, cell: (row) => fullNameOf(row.consumable) },
    {
      id: 'delivery',
      head: words.delivery,
      cell: ({ deliveryId, deliveryReference, receivedOn, supplierName }) => {
        const name = `${supplierName}, ${deliveryReference ?? receivedOn}`;
        if (!may('deliveries.read')) return name;
        return (
          <Link to="/shelves/deliveries/$deliveryId" params={{ deliveryId }}>
            {name}
          </Link>
        );
      },
    },
    {
      id: 'amount',
      head: words.amount,
      align: 'end',
      cell: ({ amount }) => <SignedMoney value={amount} />,
    },
    {
      id: 'stock',
      head: words.toStock,
      align: 'end',
      cell: ({ toStock }) => <SignedMoney value={toStock} />,
    },
  ];
  return (
    <Section title={words.title} hint={words.hint}>
      <DataTable
        label={words.title}
        columns={columns}
        rows={rows}
        rowKey={(row) => `${row.month}/${row.deliveryId}/${row.consumable.id}`}
        stale={report.isPlaceholderData}
      />
    </Section>
  );
}
