import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { axisTo, largestOf } from '../../ui/chart/axis.js';
import css from '../../ui/chart/chart.module.css';
import { ChartKey, KEY } from '../../ui/chart/chart-key.js';
import { StripAxis, StripRow, stripX } from '../../ui/chart/strips.js';
import { micro } from '../../ui/drawn.js';
import type { CostRow } from './groups.js';

interface Props {
  readonly rows: readonly CostRow[];
  readonly nameOf: (row: CostRow) => string;
}

/** One strip a row: cheapest to dearest, 8 of 10, the one in the middle. The table says the same. */
export function SpreadChart({ rows, nameOf }: Props) {
  const t = useText();
  const format = useFormat();
  const words = t.costs.spread;
  const axis = axisTo(largestOf(rows.map((row) => micro(row.max))));
  const middles = rows.map((row) => row.p50).sort((a, b) => (micro(a) < micro(b) ? -1 : 1));
  const [low = '0', high = '0'] = [middles[0], middles.at(-1)];
  return (
    <div
      className={css.strips}
      role="img"
      aria-label={words.picture(rows.length, format.money(low), format.money(high))}
    >
      <ChartKey
        entries={[
          { words: words.key.whisker, shapes: [{ look: css.whisker, path: KEY.whisker }] },
          { words: words.key.band, shapes: [{ look: css.band, path: KEY.box }] },
          { words: words.key.middle, shapes: [{ look: css.middle, path: KEY.tick }] },
        ]}
      />
      {rows.map((row) => {
        const x = (cost: string) => stripX(axis, micro(cost));
        const [min, max] = [x(row.min), x(row.max)];
        return (
          <StripRow key={nameOf(row)} name={nameOf(row)} end={format.money(row.p50)} axis={axis}>
            <path className={css.whisker} d={`M${min} 15H${max}M${min} 11v8M${max} 11v8`} />
            <path className={css.band} d={`M${x(row.p10)} 9H${x(row.p90)}V21H${x(row.p10)}Z`} />
            <path className={css.middle} d={`M${x(row.p50)} 5V25`} />
          </StripRow>
        );
      })}
      <StripAxis axis={axis} unit={format.currency} />
    </div>
  );
}
