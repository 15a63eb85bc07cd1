import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { type Axis, bareAxis } from '../../ui/chart/axis.js';
import chart from '../../ui/chart/chart.module.css';
import { ChartKey, KEY } from '../../ui/chart/chart-key.js';
import { STRIP, Strip, stripX } from '../../ui/chart/strips.js';
import { micro } from '../../ui/drawn.js';
import type { Quote, Way } from './api/make-quote.js';
import css from './strips.module.css';
import { codeOf } from './ways.js';

interface Props {
  readonly quote: Quote;
}

/** What the material of each way will likely come to, as a strip; the words beside it say the same. */
export function RangeStrips({ quote }: Props) {
  const w = useText().quotes;
  const axis = bareAxis(
    quote.ways.flatMap(({ materialRange, material }) =>
      [materialRange?.p90 ?? material, material].map(micro),
    ),
  );
  return (
    <div>
      {quote.ways.some(({ materialRange }) => materialRange !== null) && <Key />}
      <ul className={css.strips}>
        {quote.ways.map((way) => (
          <li key={way.way}>
            <span className={css.name}>{w.ways[codeOf(way)]}</span>
            <WayStrip way={way} axis={axis} />
          </li>
        ))}
      </ul>
    </div>
  );
}

interface StripProps {
  readonly way: Way;
  readonly axis: Axis;
}

function WayStrip({ way, axis }: StripProps) {
  const w = useText().quotes;
  const format = useFormat();
  const { materialRange: range, contributionRange, recorded } = way;
  if (range === null || contributionRange === null) {
    return <p className={css.none}>{w.noRange(format.number(String(recorded)))}</p>;
  }
  const x = (amount: string) => stripX(axis, micro(amount));
  const words = w.range(format.money(range.p10), format.money(range.p50), format.money(range.p90));
  return (
    <>
      <Strip label={`${w.ways[codeOf(way)]}: ${words}`}>
        <path className={chart.grid} d={`M0 15H${STRIP.wide}`} />
        <path className={chart.band} d={`M${x(range.p10)} 7H${x(range.p90)}V23H${x(range.p10)}Z`} />
        <path className={chart.dashed} d={`M${x(way.material)} 1V29`} />
        <path className={chart.middle} d={`M${x(range.p50)} 5V25`} />
      </Strip>
      <p className={css.words}>
        {words}
        <span>
          {w.contributionRange(
            format.money(contributionRange.p10),
            format.money(contributionRange.p90),
          )}{' '}
          {w.restsOn(format.number(String(recorded)))}
        </span>
      </p>
    </>
  );
}

function Key() {
  const { key } = useText().quotes;
  return (
    <ChartKey
      entries={[
        { words: key.band, shapes: [{ look: chart.band, path: KEY.box }] },
        { words: key.middle, shapes: [{ look: chart.middle, path: KEY.tick }] },
        { words: key.planned, shapes: [{ look: chart.dashed, path: KEY.tick }] },
      ]}
    />
  );
}
