import { Link } from '@tanstack/react-router';
import { useText } from '../../text/text-provider.js';
import { DataTable } from '../../ui/data-table.js';
import { Section } from '../../ui/section.js';
import { Amount, Day } from '../../ui/values.js';
import type { LotTrace } from './api/trace-lot.js';
import css from './hold-history.module.css';

/** What is left of it, and where. */
export function OnHandSection({ trace }: { readonly trace: LotTrace }) {
  const t = useText();
  const words = t.trace.now;
  const { unit } = trace.lot.consumable;
  return (
    <Section title={words.title}>
      <DataTable
        label={words.title}
        rows={trace.onHand}
        rowKey={(row) => row.holdingId}
        empty={<p className={css.none}>{words.empty}</p>}
        columns={[
          {
            ...{ id: 'location', head: words.location },
            cell: (row) => (
              <Link
                to="/shelves"
                search={{ holdingId: row.holdingId }}
                aria-label={words.open(row.location.name)}
              >
                {row.location.name}
              </Link>
            ),
          },
          {
            ...{ id: 'onHand', head: words.onHand, align: 'end' },
            cell: (row) => <Amount value={row.onHand} unit={unit} />,
          },
          {
            ...{ id: 'opened', head: words.opened },
            cell: (row) => (row.openedOn === null ? words.sealed : <Day value={row.openedOn} />),
          },
          {
            ...{ id: 'until', head: words.until },
            cell: (row) => <Day value={row.effectiveExpiry} />,
          },
        ]}
      />
    </Section>
  );
}
