import { Link } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useSpeaking, useText } from '../../text/text-provider.js';
import { axisTo, largestOf } from '../../ui/chart/axis.js';
import css from '../../ui/chart/chart.module.css';
import { footOf, Plot, plotX, plotY } from '../../ui/chart/plot.js';
import { DataTable } from '../../ui/data-table.js';
import { micro } from '../../ui/drawn.js';
import { Section } from '../../ui/section.js';
import { Money } from '../../ui/values.js';
import type { CostRow } from './groups.js';

interface Props {
  readonly rows: readonly CostRow[];
  readonly asTable: boolean;
}

export function MonthSection({ rows, asTable }: Props) {
  const t = useText();
  const words = t.costs.months;
  return (
    <Section
      title={words.title}
      hint={words.hint}
      aside={
        <Link
          className="tb-screen-only"
          from="/costs"
          to="/costs"
          search={(old) => ({ ...old, months: asTable ? undefined : 'table' })}
          resetScroll={false}
          replace
        >
          {asTable ? words.asPicture : words.asTable}
        </Link>
      }
    >
      <MonthChart rows={rows} />
      {asTable && <MonthTable rows={rows} />}
    </Section>
  );
}

function MonthChart({ rows }: { readonly rows: readonly CostRow[] }) {
  const t = useText();
  const format = useFormat();
  const short = useShortMonth();
  const axis = axisTo(largestOf(rows.map((row) => micro(row.p90))), { most: 4 });
  const share = (i: number) => (rows.length < 2 ? 0.5 : i / (rows.length - 1));
  const along = (key: 'p10' | 'p50' | 'p90') =>
    rows.map((row, i) => `${plotX(share(i))} ${plotY(axis, micro(row[key]))}`);
  const band = `M${[...along('p90'), ...along('p10').reverse()].join('L')}Z`;
  const name = (row: CostRow | undefined) => format.month(row?.month ?? '2000-01');
  return (
    <Plot
      label={t.costs.months.picture(name(rows[0]), name(rows.at(-1)))}
      axis={axis}
      foot={footOf(rows, ({ month }, i) => ({
        ...{ key: month ?? '', at: share(i), words: short(month ?? '') },
      }))}
    >
      <path className={css.outer} d={band} />
      <path className={css.line} d={`M${along('p50').join('L')}`} />
      <path
        className={css.dots}
        d={along('p50')
          .map((at) => `M${at}h0`)
          .join('')}
      />
    </Plot>
  );
}

function useShortMonth(): (month: string) => string {
  const { locale } = useSpeaking();
  const words = new Intl.DateTimeFormat(locale, {
    month: 'short',
    year: '2-digit',
    timeZone: 'UTC',
  });
  return (month) => words.format(new Date(`${month}-01T00:00:00Z`));
}

function MonthTable({ rows }: { readonly rows: readonly CostRow[] }) {
  const t = useText();
  const format = useFormat();
  const words = t.costs.table;
  return (
    <DataTable
      label={t.costs.months.title}
      rows={rows}
      rowKey={(row) => row.month ?? ''}
      columns={[
        { id: 'month', head: t.costs.months.month, cell: (row) => format.month(row.month ?? '') },
        {
          id: 'n',
          head: words.restorations,
          align: 'end',
          cell: (row) => format.number(String(row.restorations)),
        },
        { id: 'p10', head: words.p10, align: 'end', cell: (row) => <Money value={row.p10} /> },
        { id: 'p50', head: words.p50, align: 'end', cell: (row) => <Money value={row.p50} /> },
        { id: 'p90', head: words.p90, align: 'end', cell: (row) => <Money value={row.p90} /> },
      ]}
    />
  );
}
