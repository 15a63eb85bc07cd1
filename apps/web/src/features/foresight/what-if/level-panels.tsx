import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { drawnShare, micro } from '../../../ui/drawn.js';
import type { ServiceCurve, ServicePoint } from '../api/what-if.js';
import { axisUpTo, placeOn } from '../money-axis.js';
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

const [WIDE, HIGH] = [300, 130];

function Panel({ title, unit, curve, of, told }: PanelProps) {
  const t = useText();
  const format = useFormat();
  const { points, now } = curve;
  const values = points.map((point) => micro(of(point) ?? '0'));
  const nowValue = now === null ? null : of(now);
  const all = nowValue === null ? values : [...values, micro(nowValue)];
  const axis = axisUpTo(all.reduce((a, b) => (b > a ? b : a), 0n));
  const x = (at: number) => (points.length < 2 ? WIDE / 2 : (at / (points.length - 1)) * WIDE);
  const y = (value: bigint) => HIGH - placeOn(axis, value) * HIGH;
  const line = values.map((value, at) => `${x(at).toFixed(1)} ${y(value).toFixed(1)}`);
  const at = points.findIndex((point) => point.level === now?.level);
  const [first, last] = [points[0], points.at(-1)];
  const percent = (point: ServicePoint | undefined) => format.percent(point?.level ?? '0');
  const picture = t.foresight.whatIf.panels.picture(
    ...([title, told(first ? (of(first) ?? '0') : '0'), percent(first)] as const),
    ...([told(last ? (of(last) ?? '0') : '0'), percent(last)] as const),
  );
  return (
    <figure className={css.panel} role="img" aria-label={picture}>
      <figcaption className={css.title}>
        {title} <span className={css.unit}>{unit}</span>
      </figcaption>
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
        {nowValue !== null && (
          <path
            className={css.now}
            d={at < 0 ? `M0 ${y(micro(nowValue))}H${WIDE}` : `M${x(at)} 0V${HIGH}`}
          />
        )}
        <path className={css.line} d={`M${line.join('L')}`} />
        <path className={css.dots} d={line.map((spot) => `M${spot}h0`).join('')} />
        {nowValue !== null && at >= 0 && (
          <path className={css.here} d={`M${x(at)} ${y(micro(nowValue))}h0`} />
        )}
      </svg>
      <div className={css.levels}>
        <span style={{ left: 0 }}>{percent(first)}</span>
        {at > 0 && at < points.length - 1 && (
          <span className={css.mark} style={{ left: `${(at / (points.length - 1)) * 100}%` }}>
            {t.foresight.whatIf.panels.nowAt(percent(points[at]))}
          </span>
        )}
        <span style={{ left: '100%' }}>{percent(last)}</span>
      </div>
    </figure>
  );
}
