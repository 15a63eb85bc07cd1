import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { drawnShare, micro } from '../../ui/drawn.js';
import { type Axis, axisTo } from './axis.js';
import type { CostRow } from './groups.js';
import css from './spread-chart.module.css';

interface Props {
  readonly rows: readonly CostRow[];
  readonly nameOf: (row: CostRow) => string;
}

/** One bar a row: cheapest to dearest, 8 of 10, the one in the middle. The table says the same. */
export function SpreadChart({ rows, nameOf }: Props) {
  const t = useText();
  const format = useFormat();
  const largest = rows.reduce((most, row) => (micro(row.max) > most ? micro(row.max) : most), 0n);
  const axis = axisTo(largest);
  const middles = rows.map((row) => row.p50).sort((a, b) => (micro(a) < micro(b) ? -1 : 1));
  const [low = '0', high = '0'] = [middles[0], middles.at(-1)];
  const summary = t.costs.spread.picture(rows.length, format.money(low), format.money(high));
  return (
    <div className={css.chart} role="img" aria-label={summary}>
      <Key />
      {rows.map((row) => (
        <div key={nameOf(row)} className={css.row}>
          <span className={css.name}>{nameOf(row)}</span>
          <RangeBar row={row} axis={axis} />
          <span className={css.middle}>{format.money(row.p50)}</span>
        </div>
      ))}
      <div className={css.row}>
        <span />
        <div className={css.axis}>
          {axis.marks.map((mark) => (
            <span key={String(mark)} style={{ left: `${drawnShare(mark, axis.end) * 100}%` }}>
              {format.number(String(drawnShare(mark, 1_000_000n)))}
            </span>
          ))}
        </div>
        <span className={css.unit}>{format.currency}</span>
      </div>
    </div>
  );
}

const WIDE = 1000;

function RangeBar({ row, axis }: { readonly row: CostRow; readonly axis: Axis }) {
  const at = (cost: string) => drawnShare(micro(cost), axis.end) * WIDE;
  const [min, p10, p50, p90, max] = [row.min, row.p10, row.p50, row.p90, row.max].map(at);
  return (
    <svg
      aria-hidden="true"
      className={css.bar}
      viewBox={`0 0 ${WIDE} 28`}
      preserveAspectRatio="none"
    >
      {axis.marks.map((mark) => {
        const x = drawnShare(mark, axis.end) * WIDE;
        return <path key={String(mark)} className={css.grid} d={`M${x} 0V28`} />;
      })}
      <path className={css.whisker} d={`M${min} 14H${max}M${min} 10v8M${max} 10v8`} />
      <path className={css.band} d={`M${p10} 8H${p90}V20H${p10}Z`} />
      <path className={css.mark} d={`M${p50} 4V24`} />
    </svg>
  );
}

function Key() {
  const t = useText();
  const words = t.costs.spread.key;
  return (
    <p className={css.key}>
      <span>
        <svg viewBox="0 0 28 12" aria-hidden="true">
          <path className={css.whisker} d="M1 6H27M1 2v8M27 2v8" />
        </svg>
        {words.whisker}
      </span>
      <span>
        <svg viewBox="0 0 28 12" aria-hidden="true">
          <path className={css.band} d="M2 1H26V11H2Z" />
        </svg>
        {words.band}
      </span>
      <span>
        <svg viewBox="0 0 28 12" aria-hidden="true">
          <path className={css.mark} d="M14 0V12" />
        </svg>
        {words.middle}
      </span>
    </p>
  );
}
