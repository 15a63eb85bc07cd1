import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { axisTo, largestOf } from '../../../ui/chart/axis.js';
import css from '../../../ui/chart/chart.module.css';
import { ChartKey, KEY } from '../../../ui/chart/chart-key.js';
import { footOf, Plot, plotX, plotY } from '../../../ui/chart/plot.js';
import { micro } from '../../../ui/drawn.js';
import type { ReplayResult } from '../api/replays.js';

const SIDES = ['computed', 'old'] as const;

/** Stock value week by week; the line of the old rules is dashed. The sums stand in the table. */
export function WeekChart({ weeks }: { readonly weeks: ReplayResult['weeks'] }) {
  const words = useText().foresight.proof;
  const format = useFormat();
  const values = weeks.flatMap((week) => SIDES.map((side) => micro(week[side])));
  const axis = axisTo(largestOf(values), { most: 4 });
  const share = (i: number) => (weeks.length < 2 ? 0.5 : i / (weeks.length - 1));
  const line = (side: (typeof SIDES)[number]) =>
    weeks.map((week, i) => `${plotX(share(i))} ${plotY(axis, micro(week[side]))}`).join('L');
  const [first, last] = [weeks[0], weeks.at(-1)];
  return (
    <>
      <ChartKey
        entries={SIDES.map((side) => ({
          words: words.pairs[side],
          shapes: [{ look: css.line, path: KEY.line, side }],
        }))}
      />
      <Plot
        label={words.weeksPicture(
          ...([format.day(first?.day ?? ''), format.day(last?.day ?? '')] as const),
          ...([format.money(last?.computed ?? '0'), format.money(last?.old ?? '0')] as const),
        )}
        axis={axis}
        foot={footOf(weeks, ({ day }, i) => ({
          ...{ key: day, at: share(i), words: format.dayShort(day) },
        }))}
      >
        <path className={css.line} data-side="old" d={`M${line('old')}`} />
        <path className={css.line} data-side="computed" d={`M${line('computed')}`} />
      </Plot>
    </>
  );
}
