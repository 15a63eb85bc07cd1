import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { drawnShare, micro } from '../../../ui/drawn.js';
import { Section } from '../../../ui/section.js';
import type { ContributionRow } from '../api/report-contributions.js';
import { type Axis, axisBetween, placeOn } from '../axis.js';
import spread from '../spread-chart.module.css';
import css from './contribution-spread.module.css';

interface Props {
  readonly title: string;
  readonly rows: readonly ContributionRow[];
  readonly nameOf: (row: ContributionRow) => string;
}

const WIDE = 1000;

interface Width {
  readonly row: ContributionRow;
  readonly p10: bigint;
  readonly p50: bigint;
  readonly p90: bigint;
}

function widthsOf(rows: readonly ContributionRow[]): Width[] {
  return rows.flatMap((row) => {
    const { p10, p50, p90 } = row;
    if (p10 === null || p50 === null || p90 === null) return [];
    return [{ row, p10: micro(p10), p50: micro(p50), p90: micro(p90) }];
  });
}

/** One bar a row: what 8 of 10 restorations leave, and the one in the middle. */
export function ContributionSpread({ title, rows, nameOf }: Props) {
  const t = useText();
  const format = useFormat();
  const widths = widthsOf(rows);
  if (widths.length === 0) return null;
  const lowest = widths.reduce((a, { p10 }) => (p10 < a ? p10 : a), 0n);
  const highest = widths.reduce((a, { p90 }) => (p90 > a ? p90 : a), 0n);
  const axis = axisBetween(lowest, highest);
  return (
    <Section title={title} hint={t.costReports.contributions.spreadHint}>
      <div
        className={spread.chart}
        role="img"
        aria-label={t.costReports.contributions.picture(widths.length)}
      >
        {widths.map((width) => (
          <div key={nameOf(width.row)} className={spread.row}>
            <span className={spread.name}>{nameOf(width.row)}</span>
            <Bar width={width} axis={axis} />
            <span className={spread.middle}>{format.money(width.row.p50 ?? '0')}</span>
          </div>
        ))}
        <div className={spread.row}>
          <span />
          <div className={spread.axis}>
            {axis.marks.map((mark) => (
              <span key={String(mark)} style={{ left: `${placeOn(axis, mark) * 100}%` }}>
                {format.number(String(drawnShare(mark, 1_000_000n)))}
              </span>
            ))}
          </div>
          <span className={spread.unit}>{format.currency}</span>
        </div>
      </div>
    </Section>
  );
}

function Bar({ width, axis }: { readonly width: Width; readonly axis: Axis }) {
  const x = (value: bigint) => placeOn(axis, value) * WIDE;
  const [from, middle, to] = [x(width.p10), x(width.p50), x(width.p90)];
  return (
    <svg
      aria-hidden="true"
      className={spread.bar}
      viewBox={`0 0 ${WIDE} 28`}
      preserveAspectRatio="none"
    >
      {axis.marks.map((mark) => (
        <path
          key={String(mark)}
          className={mark === 0n ? css.zero : spread.grid}
          d={`M${x(mark)} 0V28`}
        />
      ))}
      <path className={spread.band} d={`M${from} 8H${Math.max(to, from + 2)}V20H${from}Z`} />
      <path className={spread.mark} d={`M${middle} 4V24`} />
    </svg>
  );
}
