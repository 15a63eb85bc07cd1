import { Link } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useSpeaking, useText } from '../../text/text-provider.js';
import { DataTable } from '../../ui/data-table.js';
import { drawnShare, micro } from '../../ui/drawn.js';
import { Section } from '../../ui/section.js';
import { Money } from '../../ui/values.js';
import { axisTo } from './axis.js';
import type { CostRow } from './groups.js';
import css from './month-chart.module.css';

const [WIDE, HIGH] = [1000, 240];

/** At most so many months are named below the picture. */
const NAMED = 8;

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
  const largest = rows.reduce((most, row) => (micro(row.p90) > most ? micro(row.p90) : most), 0n);
  const axis = axisTo(largest, 4);
  const x = (at: number) => (rows.length < 2 ? WIDE / 2 : (at / (rows.length - 1)) * WIDE);
  const y = (cost: bigint) => HIGH - drawnShare(cost, axis.end) * HIGH;
  const along = (key: 'p10' | 'p50' | 'p90') =>
    rows.map((row, at) => `${x(at).toFixed(1)} ${y(micro(row[key])).toFixed(1)}`);
  const band = `M${[...along('p90'), ...along('p10').reverse()].join('L')}Z`;
  const every = Math.ceil(rows.length / NAMED);
  const name = (row: CostRow | undefined) => format.month(row?.month ?? '2000-01');
  return (
    <div
      className={css.chart}
      role="img"
      aria-label={t.costs.months.picture(name(rows[0]), name(rows.at(-1)))}
    >
      <div className={css.scale}>
        {axis.marks.map((mark) => (
          <span key={String(mark)} style={{ bottom: `${drawnShare(mark, axis.end) * 100}%` }}>
            {format.number(String(drawnShare(mark, 1_000_000n)))}
          </span>
        ))}
      </div>
      <svg
        aria-hidden="true"
        className={css.picture}
        viewBox={`0 0 ${WIDE} ${HIGH}`}
        preserveAspectRatio="none"
      >
        {axis.marks.map((mark) => (
          <path key={String(mark)} className={css.grid} d={`M0 ${y(mark)}H${WIDE}`} />
        ))}
        <path className={css.band} d={band} />
        <path className={css.line} d={`M${along('p50').join('L')}`} />
        <path
          className={css.dots}
          d={along('p50')
            .map((at) => `M${at}h0`)
            .join('')}
        />
      </svg>
      <div className={css.months}>
        {rows.map((row, at) => (
          <span
            key={row.month}
            style={{ left: `${x(at) / 10}%` }}
            data-named={(rows.length - 1 - at) % every === 0 || undefined}
          >
            {short(row.month ?? '')}
          </span>
        ))}
      </div>
    </div>
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
