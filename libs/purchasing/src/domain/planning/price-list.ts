import { money } from '#lib/measure';
import type { PresentationTerms } from './planning-settings.js';

/** So many prices a list of one pack has at most. */
export const MOST_PRICES = 20;

/** What is wrong with a price list, at which of its prices; null when nothing is. */
export interface PriceProblem {
  readonly at: number;
  readonly field: 'fromPacks' | 'packPrice';
  readonly message: string;
}

/** A price list starts at one pack, and every step is for more packs at a lower price. */
export function checkPriceList(prices: PresentationTerms['prices']): PriceProblem | null {
  for (const [at, { fromPacks, packPrice }] of prices.entries()) {
    const before = prices[at - 1];
    if (before === undefined) {
      if (fromPacks === 1) continue;
      return { at, field: 'fromPacks', message: 'the first price is from 1 pack on' };
    }
    if (fromPacks <= before.fromPacks) {
      return { at, field: 'fromPacks', message: 'must be for more packs than the price before' };
    }
    if (money(packPrice) >= money(before.packPrice)) {
      return { at, field: 'packPrice', message: 'must be lower than the price before' };
    }
  }
  return null;
}
