import { Link } from '@tanstack/react-router';
import { useText } from '../../text/text-provider.js';
import { DataTable } from '../../ui/data-table.js';
import { Section } from '../../ui/section.js';
import { Amount, Day } from '../../ui/values.js';
import type { LotTrace } from './api/trace-lot.js';

/** Somebody scanned the label, but the book had none of it: the patient got it all the same. */
export function ShortfallsSection({ trace }: { readonly trace: LotTrace }) {
  const t = useText();
  const words = t.trace.shortfalls;
  if (trace.shortfalls.length === 0) return null;
  return (
    <Section title={words.title} hint={words.hint}>
      <DataTable
        label={words.title}
        rows={trace.shortfalls}
        rowKey={(row) => row.id}
        columns={[
          { id: 'date', head: words.date, cell: (row) => <Day value={row.usedOn} /> },
          {
            ...{ id: 'quantity', head: words.quantity, align: 'end' },
            cell: (row) => <Amount value={row.quantity} unit={row.consumable.unit} />,
          },
          {
            ...{ id: 'open', head: words.open, align: 'end' },
            cell: (row) => <Amount value={row.open} unit={row.consumable.unit} />,
          },
          {
            ...{ id: 'visit', head: words.visit },
            cell: (row) => (
              <Link to="/trace" search={{ visitId: row.visitId }}>
                {words.openVisit}
              </Link>
            ),
          },
        ]}
      />
    </Section>
  );
}
