import { type Money, moneyFromMicro, multiplyRatio, type Quantity } from '#lib/measure';

/** A pack at a price: what is in it, in stock units, and what was paid for it. */
export interface PricedPack {
  readonly packPrice: Money;
  readonly content: Quantity;
}

export interface PriceComparison {
  /** Per stock unit, in millionths of the currency. */
  readonly unitPrice: Money;
  readonly lastUnitPrice: Money;
  /** As millionths of the last price: 120000n is 12 % more; null when the last one was free. */
  readonly packChange: bigint | null;
  readonly unitChange: bigint | null;
  /** A pack holds another quantity than last time: only the price per unit says what changed. */
  readonly contentChanged: boolean;
}

/** A price against the last one, per pack and per stock unit, so that a smaller pack is seen. */
export function comparePrice(now: PricedPack, last: PricedPack): PriceComparison {
  return {
    unitPrice: unitPriceOf(now),
    lastUnitPrice: unitPriceOf(last),
    packChange: changeOf(now.packPrice, last.packPrice),
    // Cross-multiplied, so that no rounding of unit prices shows as a change.
    unitChange: changeOf(now.packPrice * last.content, last.packPrice * now.content),
    contentChanged: now.content !== last.content,
  };
}

function unitPriceOf({ packPrice, content }: PricedPack): Money {
  return moneyFromMicro(multiplyRatio(packPrice, 1_000_000n, content, 'half-up'));
}

function changeOf(now: bigint, before: bigint): bigint | null {
  if (before === 0n) return null;
  const size = multiplyRatio(
    now > before ? now - before : before - now,
    1_000_000n,
    before,
    'half-up',
  );
  return now < before ? -size : size;
}
