import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { drawnShare, micro } from '../../../ui/drawn.js';
import type { ReplayResult } from '../api/replays.js';
import { axisUpTo, placeOn } from '../money-axis.js';
import css from './week-chart.module.css';

const [WIDE, HIGH] = [1000, 220];
const NAMED = 6;

/** Stock value week by week; the line of the old rules is dashed. The sums stand in the table. */
export function WeekChart({ weeks }: { readonly weeks: ReplayResult['weeks'] }) {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.proof;
  const values = weeks.flatMap((week) => [micro(week.computed), micro(week.old)]);
  const axis = axisUpTo(values.reduce((a, b) => (b > a ? b : a), 0n));
  const x = (at: number) => (at / (weeks.length - 1)) * WIDE;
  const y = (value: bigint) => HIGH - placeOn(axis, value) * HIGH;
  const line = (side: 'computed' | 'old') =>
    `M${weeks.map((week, at) => `${x(at).toFixed(1)} ${y(micro(week[side])).toFixed(1)}`).join('L')}`;
  const every = Math.ceil(weeks.length / NAMED);
  const [first, last] = [weeks[0], weeks.at(-1)];
  return (
    <>
      <p className={css.key}>
        {(['computed', 'old'] as const).map((side) => (
          <span key={side}>
            <svg viewBox="0 0 28 12" aria-hidden="true">
              <path className={css.line} data-side={side} d="M0 6H28" />
            </svg>
            {words.pairs[side]}
          </span>
        ))}
      </p>
      <div
        className={css.chart}
        role="img"
        aria-label={words.weeksPicture(
          ...([format.day(first?.day ?? ''), format.day(last?.day ?? '')] as const),
          ...([format.money(last?.computed ?? '0'), format.money(last?.old ?? '0')] as const),
        )}
      >
        <div className={css.scale}>
          {axis.marks.map((mark) => (
            <span key={String(mark)} style={{ bottom: `${placeOn(axis, mark) * 100}%` }}>
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
          <path className={css.line} data-side="old" d={line('old')} />
          <path className={css.line} data-side="computed" d={line('computed')} />
        </svg>
        <div className={css.days}>
          {weeks.map((week, at) => (
            <span
              key={week.day}
              style={{ left: `${x(at) / 10}%` }}
              data-named={at % every === 0 || undefined}
              data-few={at % (2 * every) === 0 || undefined}
            >
              {format.dayShort(week.day)}
            </span>
          ))}
        </div>
      </div>
    </>
  );
}
