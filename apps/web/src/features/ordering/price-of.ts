import { formatMoney, type Money, moneyFromMicro, multiplyRatio } from '#lib/measure';
import { micro } from '../../ui/drawn.js';
import type { Basket, Offer } from './api/list-proposals.js';

/** What so many packs cost, exactly as the service reckons it; null without a price. */
export function packsPrice(
  { prices, discount }: Pick<Offer, 'prices' | 'discount'>,
  packs: number,
): Money | null {
  if (prices.length === 0) return null;
  if (discount === 'all units') {
    const reached = prices.filter((step) => step.fromPacks <= packs).at(-1) ?? prices[0];
    return reached ? moneyFromMicro(micro(reached.packPrice) * BigInt(packs)) : null;
  }
  let total = 0n;
  for (const [i, step] of prices.entries()) {
    const next = prices[i + 1];
    const last = Math.min(packs, next ? next.fromPacks - 1 : packs);
    const first = i === 0 ? 0 : step.fromPacks - 1;
    if (last > first) total += BigInt(last - first) * micro(step.packPrice);
  }
  return moneyFromMicro(total);
}

/** The mean price of a pack, as it stands in the line of an order; null without a price. */
export function meanPackPrice(offer: Offer, packs: number): string | null {
  const total = packsPrice(offer, packs);
  if (total === null || packs === 0) return null;
  return formatMoney(moneyFromMicro(multiplyRatio(total, 1n, BigInt(packs), 'half-up')));
}

export interface BasketSums {
  readonly goods: Money;
  readonly freight: Money;
  readonly total: Money;
  /** What is missing to the least value that the supplier asks for; 0 when nothing is. */
  readonly missing: Money;
}

/** What an order comes to with the packs that somebody typed, by presentation. */
export function basketSums(basket: Basket, packsOf: (line: number) => number): BasketSums {
  let goods = 0n;
  for (const [i, { presentation }] of basket.lines.entries()) {
    if (presentation !== null) goods += packsPrice(presentation, packsOf(i)) ?? 0n;
  }
  const free = basket.freeFreightFrom !== null && goods >= micro(basket.freeFreightFrom);
  const freight = free || goods === 0n ? 0n : micro(basket.usualFreight);
  const least = basket.minimumOrder === null ? 0n : micro(basket.minimumOrder);
  return {
    goods: moneyFromMicro(goods),
    freight: moneyFromMicro(freight),
    total: moneyFromMicro(goods + freight),
    missing: moneyFromMicro(goods < least ? least - goods : 0n),
  };
}

/** A sum of millionths as it is shown. */
export function formatSum(sum: bigint): string {
  return formatMoney(moneyFromMicro(sum));
}
