import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { drawnShare, micro } from '../../ui/drawn.js';
import type { Quote, Way } from './api/make-quote.js';
import css from './strips.module.css';
import { codeOf } from './ways.js';

interface Props {
  readonly quote: Quote;
}

/** What the material of each way will likely come to, as a strip; the words beside it say the same. */
export function RangeStrips({ quote }: Props) {
  const w = useText().quotes;
  const largest = quote.ways.reduce((most, { materialRange, material }) => {
    const end = micro(materialRange?.p90 ?? material);
    return end > most ? end : most;
  }, 0n);
  // A little room beyond the dearest, so that its mark is not cut off.
  const end = (largest * 105n) / 100n;
  return (
    <div>
      {quote.ways.some(({ materialRange }) => materialRange !== null) && <Key />}
      <ul className={css.strips}>
        {quote.ways.map((way) => (
          <li key={way.way}>
            <span className={css.name}>{w.ways[codeOf(way)]}</span>
            <Strip way={way} end={end} />
          </li>
        ))}
      </ul>
    </div>
  );
}

const WIDE = 1000;

function Strip({ way, end }: { readonly way: Way; readonly end: bigint }) {
  const w = useText().quotes;
  const format = useFormat();
  const { materialRange: range, contributionRange, recorded } = way;
  if (range === null || contributionRange === null) {
    return <p className={css.none}>{w.noRange(format.number(String(recorded)))}</p>;
  }
  const at = (amount: string) => drawnShare(micro(amount), end) * WIDE;
  const [p10, p50, p90, planned] = [range.p10, range.p50, range.p90, way.material].map(at);
  const [low, middle, high] = [range.p10, range.p50, range.p90].map(format.money);
  const words = w.range(low ?? '', middle ?? '', high ?? '');
  return (
    <>
      <svg
        role="img"
        aria-label={`${w.ways[codeOf(way)]}: ${words}`}
        className={css.strip}
        viewBox={`0 0 ${WIDE} 28`}
        preserveAspectRatio="none"
      >
        <path className={css.line} d={`M0 14H${WIDE}`} />
        <path className={css.band} d={`M${p10} 6H${p90}V22H${p10}Z`} />
        <path className={css.planned} d={`M${planned} 1V27`} />
        <path className={css.middle} d={`M${p50} 4V24`} />
      </svg>
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
    <p className={css.key}>
      <span>
        <svg viewBox="0 0 28 12" aria-hidden="true">
          <path className={css.band} d="M2 1H26V11H2Z" />
        </svg>
        {key.band}
      </span>
      <span>
        <svg viewBox="0 0 28 12" aria-hidden="true">
          <path className={css.middle} d="M14 0V12" />
        </svg>
        {key.middle}
      </span>
      <span>
        <svg viewBox="0 0 28 12" aria-hidden="true">
          <path className={css.planned} d="M14 0V12" />
        </svg>
        {key.planned}
      </span>
    </p>
  );
}
