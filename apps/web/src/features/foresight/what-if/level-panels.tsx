import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { axisTo, largestOf } from '../../../ui/chart/axis.js';
import chart from '../../../ui/chart/chart.module.css';
import { type FootMark, PLOT, Plot, plotX, plotY } from '../../../ui/chart/plot.js';
import { micro } from '../../../ui/drawn.js';
import type { ServiceCurve, ServicePoint } from '../api/what-if.js';
import css from './level-panels.module.css';

type Of = (point: ServicePoint) => string | null;

/** Three small pictures over the same levels; the table below says the same in figures. */
export function LevelPanels({ curve }: { readonly curve: ServiceCurve }) {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.whatIf.panels;
  const priced = curve.points.some((point) => point.stockValue !== null);
  return (
    <div className={css.panels}>
      {priced && (
        <>
          <Panel
            {...{ title: words.stock, unit: format.currency, curve }}
            of={(point) => point.stockValue}
            told={format.money}
          />
          <Panel
            {...{ title: words.waste, unit: format.currency, curve }}
            of={(point) => point.wastedValue}
            told={format.money}
          />
        </>
      )}
      <Panel
        {...{ title: words.outs, unit: words.times, curve }}
        of={(point) => point.stockOuts}
        told={format.number}
      />
    </div>
  );
}

interface PanelProps {
  readonly title: string;
  readonly unit: string;
  readonly curve: ServiceCurve;
  readonly of: Of;
  readonly told: (value: string) => string;
}

function Panel({ title, unit, curve, of, told }: PanelProps) {
  const words = useText().foresight.whatIf.panels;
  const format = useFormat();
  const { points, now } = curve;
  const values = points.map((point) => micro(of(point) ?? '0'));
  const nowValue = now === null ? null : of(now);
  const all = nowValue === null ? values : [...values, micro(nowValue)];
  const axis = axisTo(largestOf(all), { most: 4 });
  const share = (i: number) => (points.length < 2 ? 0.5 : i / (points.length - 1));
  const spots = values.map((value, i) => `${plotX(share(i))} ${plotY(axis, value)}`);
  const at = points.findIndex((point) => point.level === now?.level);
  const [first, last] = [points[0], points.at(-1)];
  const percent = (point: ServicePoint | undefined) => format.percent(point?.level ?? '0');
  const picture = words.picture(
    ...([title, told(first ? (of(first) ?? '0') : '0'), percent(first)] as const),
    ...([told(last ? (of(last) ?? '0') : '0'), percent(last)] as const),
  );
  const foot: FootMark[] = [
    { key: 'first', at: 0, words: percent(first), few: true },
    { key: 'last', at: 1, words: percent(last), few: true },
  ];
  if (at > 0 && at < points.length - 1) {
    const mark = { key: 'now', at: share(at), words: words.nowAt(percent(points[at])) };
    foot.push({ ...mark, few: true, strong: true });
  }
  return (
    <figure className={css.panel}>
      <figcaption className={css.title}>
        {title} <span className={css.unit}>{unit}</span>
      </figcaption>
      <Plot label={picture} axis={axis} foot={foot} small>
        {nowValue !== null && (
          <path
            className={chart.now}
            d={
              at < 0
                ? `M0 ${plotY(axis, micro(nowValue))}H${PLOT.wide}`
                : `M${plotX(share(at))} 0V${PLOT.high}`
            }
          />
        )}
        <path className={chart.line} d={`M${spots.join('L')}`} />
        <path className={chart.dots} d={spots.map((spot) => `M${spot}h0`).join('')} />
        {nowValue !== null && at >= 0 && (
          <path
            className={chart.here}
            d={`M${plotX(share(at))} ${plotY(axis, micro(nowValue))}h0`}
          />
        )}
      </Plot>
    </figure>
  );
}
