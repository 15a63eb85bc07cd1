import type { Distribution } from './demand.js';

/** What one count too few and one too many cost. */
export interface MismatchCosts {
  readonly underage: number;
  readonly overage: number;
}

/** What a one-off purchase brings in and costs, per count. */
export interface OneOffPrices {
  readonly price: number;
  readonly cost: number;
  /** What a count left over is still worth. */
  readonly salvage: number;
  /** Lost on top of the margin when one is missing. */
  readonly goodwill?: number;
}

export function mismatchCosts(prices: OneOffPrices): MismatchCosts {
  return {
    underage: prices.price - prices.cost + (prices.goodwill ?? 0),
    overage: prices.cost - prices.salvage,
  };
}

/** The service that balances the two: cu / (cu + co). RangeError unless both are more than 0. */
export function criticalRatio(costs: MismatchCosts): number {
  if (!(costs.underage > 0)) throw new RangeError('underage: the cost is more than zero.');
  if (!(costs.overage > 0)) throw new RangeError('overage: the cost is more than zero.');
  return costs.underage / (costs.underage + costs.overage);
}

/**
 * The best size of a purchase that cannot be repeated: the critical quantile of the use (for use in
 * counts, the smallest q with P(D <= q) >= ratio). The same rule says how many visits to take on
 * beyond the chairs when the distribution is that of patients who do not come.
 */
export function bestOneOff(costs: MismatchCosts, use: Distribution): number {
  return use.quantile(criticalRatio(costs));
}

export interface OneOffOutcome {
  readonly lost: number;
  readonly left: number;
  readonly used: number;
  readonly profit: number;
}

/** What is expected of a purchase of `size`. */
export function oneOffOutcome(
  prices: OneOffPrices,
  use: Distribution,
  size: number,
): OneOffOutcome {
  const lost = use.loss(size);
  const used = use.mean - lost;
  const left = size - used;
  const margin = prices.price * used + prices.salvage * left - prices.cost * size;
  return { lost, left, used, profit: margin - (prices.goodwill ?? 0) * lost };
}
