import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { DataTable } from '../../../ui/data-table.js';
import { drawnShare, micro } from '../../../ui/drawn.js';
import { Section } from '../../../ui/section.js';
import { Money } from '../../../ui/values.js';
import type { SupplyMonth, SupplyReport } from '../api/report-supplies.js';
import css from './supply-months.module.css';

interface Props {
  readonly report: SupplyReport;
  readonly stale: boolean;
}

/** The share of each month as a bar, and every figure below it. */
export function SupplyMonths({ report, stale }: Props) {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.supplies;
  const money = (id: string, head: string, of: (row: SupplyMonth) => string, wideOnly = false) => ({
    ...{ id, head, align: 'end' as const, wideOnly },
    cell: (row: SupplyMonth) => <Money value={of(row)} />,
  });
  const share = (id: string, head: string, of: (row: SupplyMonth) => string | null) => ({
    ...{ id, head, align: 'end' as const },
    cell: (row: SupplyMonth) => {
      const value = of(row);
      return value === null ? t.ui.none : format.percent(value);
    },
  });
  return (
    <>
      <Section title={words.months} hint={words.monthsHint}>
        <Bars report={report} />
      </Section>
      <Section title={t.costs.table.title}>
        <DataTable<SupplyMonth>
          label={t.costs.table.title}
          rows={report.rows}
          rowKey={(row) => row.month}
          stale={stale}
          columns={[
            { id: 'month', head: t.costs.months.month, cell: (row) => format.month(row.month) },
            report.shareOf === 'fees'
              ? money('fees', words.bases.fees, (row) => row.fees)
              : money('income', words.bases.income, (row) => row.income),
            money('material', words.material, (row) => row.material),
            share('materialShare', words.materialShare, (row) => row.materialShare),
            money('bought', words.bought, (row) => row.bought, true),
            share('boughtShare', words.boughtShare, (row) => row.boughtShare),
            money('waste', words.waste, (row) => row.waste, true),
            share('wasteShare', words.wasteShare, (row) => row.wasteShare),
          ]}
        />
      </Section>
    </>
  );
}

function Bars({ report }: { readonly report: SupplyReport }) {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.supplies;
  const rows = [...report.rows].reverse();
  const shares = rows.flatMap((row) => [row.materialShare, row.boughtShare]);
  const largest = shares.reduce((most, value) => {
    const size = micro(value ?? '0');
    return size > most ? size : most;
  }, 0n);
  const wide = (value: string | null) => `${drawnShare(micro(value ?? '0'), largest) * 100}%`;
  return (
    <div className={css.chart} role="img" aria-label={words.picture(rows.length)}>
      <p className={css.key} aria-hidden="true">
        <span data-of="material">{words.materialShare}</span>
        <span data-of="bought">{words.boughtShare}</span>
      </p>
      {rows.map((row) => (
        <div key={row.month} className={css.row}>
          <span>{format.month(row.month)}</span>
          <span className={css.track} aria-hidden="true">
            {row.materialShare !== null && (
              <span data-of="material" style={{ width: wide(row.materialShare) }} />
            )}
            {row.boughtShare !== null && (
              <span data-of="bought" style={{ width: wide(row.boughtShare) }} />
            )}
          </span>
          <span className={css.share}>
            {row.materialShare === null ? t.ui.none : format.percent(row.materialShare)}
          </span>
        </div>
      ))}
    </div>
  );
}
