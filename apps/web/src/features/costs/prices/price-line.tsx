import { drawnShare, micro } from '../../../ui/drawn.js';
import type { PriceReport, Repriced } from '../api/report-prices.js';
import css from './price-line.module.css';

const [WIDE, HIGH, EDGE] = [120, 26, 3];

const dayNumber = (iso: string) => BigInt(Date.parse(iso)) / 86_400_000n;

/** The price of one consumable over the period, in steps; the figures stand beside it. */
export function PriceLine({ of, report }: { readonly of: Repriced; readonly report: PriceReport }) {
  const prices = [of.priceBefore, ...of.changes.map((change) => change.price)].map(micro);
  const low = prices.reduce((a, b) => (b < a ? b : a));
  const high = prices.reduce((a, b) => (b > a ? b : a));
  const [first, last] = [dayNumber(report.from), dayNumber(report.to)];
  const x = (day: string) => drawnShare(dayNumber(day) - first, last - first || 1n) * WIDE;
  const y = (price: bigint) =>
    HIGH - EDGE - drawnShare(price - low, high - low || 1n) * (HIGH - 2 * EDGE);
  const steps = of.changes.map(
    (change) => `H${x(change.receivedOn).toFixed(1)}V${y(micro(change.price)).toFixed(1)}`,
  );
  const end = prices.at(-1) ?? low;
  return (
    <svg aria-hidden="true" className={css.picture} viewBox={`0 0 ${WIDE + 4} ${HIGH}`}>
      <path
        className={css.line}
        d={`M0 ${y(micro(of.priceBefore)).toFixed(1)}${steps.join('')}H${WIDE}`}
      />
      <path className={css.now} d={`M${WIDE} ${y(end).toFixed(1)}h0`} />
    </svg>
  );
}
