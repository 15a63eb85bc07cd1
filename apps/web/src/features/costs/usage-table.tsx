import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { DataTable } from '../../ui/data-table.js';
import { Amount, Money } from '../../ui/values.js';
import type { UsageRow } from './api/report-usage.js';
import { fullNameOf } from './full-name.js';
import { differenceOf, shareOfPlan, shortMean } from './usage.js';
import css from './usage-table.module.css';

/** What a restoration takes of each consumable: planned, and really. */
export function UsageTable({ rows }: { readonly rows: readonly UsageRow[] }) {
  const t = useText();
  const words = t.costs.usage;
  const amount = (id: 'planned' | 'placed' | 'dispensed' | 'charged', wideOnly = false) => ({
    ...{ id, head: words[id], align: 'end' as const, wideOnly },
    cell: (row: UsageRow) => <Amount value={shortMean(row[id])} unit={row.consumable.unit} />,
  });
  return (
    <DataTable
      label={words.consumable}
      rows={rows}
      rowKey={(row) => row.consumable.id}
      columns={[
        { id: 'consumable', head: words.consumable, cell: (row) => fullNameOf(row.consumable) },
        amount('planned'),
        amount('dispensed'),
        { id: 'difference', head: words.difference, cell: (row) => <Difference row={row} /> },
        amount('placed', true),
        amount('charged', true),
        {
          ...{ id: 'cost', head: words.cost, align: 'end' },
          cell: (row) => <Money value={row.cost} />,
        },
      ]}
    />
  );
}

/** Bars end at twice what was planned. */
const MOST = 1;

function Difference({ row }: { readonly row: UsageRow }) {
  const t = useText();
  const format = useFormat();
  const difference = differenceOf(row);
  const share = shareOfPlan(row);
  if (difference === 0n) return <span className={css.quiet}>{t.costs.usage.asPlanned}</span>;
  const part = Math.min(Math.abs(share ?? MOST), MOST);
  const sign = difference > 0n ? '+' : '';
  return (
    <span className={css.difference}>
      <span className={css.track} data-more={difference > 0n || undefined} aria-hidden="true">
        <span style={{ width: `${part * 50}%` }} />
      </span>
      <span>
        {sign}
        <Amount value={shortMean(row.difference)} unit={row.consumable.unit} />
        {share !== null && (
          <small>
            {' '}
            ({sign}
            {format.percent(String(share))})
          </small>
        )}
      </span>
    </span>
  );
}
