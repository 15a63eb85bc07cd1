import { type Money, moneyFromMicro, multiplyQuantity, type Quantity } from '#lib/measure';

export interface VarianceAmounts {
  /** What was really paid for what was used. */
  readonly actual: Money;
  /** What was used, at the standard price. */
  readonly atStandardPrice: Money;
  /** What the standard recipe uses, at the standard price. */
  readonly standard: Money;
}

export type Sense = 'favourable' | 'unfavourable' | 'none';

/** Less than nothing is favourable: it cost less than it should. */
export interface Variance {
  readonly price: Money;
  readonly usage: Money;
  readonly total: Money;
  readonly sense: Sense;
}

/** Why the actual cost is not the standard one: the price, and the quantity used. */
export function varianceOf({ actual, atStandardPrice, standard }: VarianceAmounts): Variance {
  const total = moneyFromMicro(actual - standard);
  return {
    price: moneyFromMicro(actual - atStandardPrice),
    usage: moneyFromMicro(atStandardPrice - standard),
    total,
    sense: senseOf(total),
  };
}

function senseOf(total: Money): Sense {
  if (total === 0n) return 'none';
  return total < 0n ? 'favourable' : 'unfavourable';
}

export interface UsedMaterial {
  readonly standardQuantity: Quantity;
  /** Per stock unit. */
  readonly standardPrice: Money;
  readonly actualQuantity: Quantity;
  readonly actualCost: Money;
}

/** The amounts of one use; each is rounded by itself, so that the variances add up exactly. */
export function amountsOf(used: UsedMaterial): VarianceAmounts {
  const atPrice = (quantity: Quantity) => times(quantity, used.standardPrice);
  return {
    actual: used.actualCost,
    atStandardPrice: atPrice(used.actualQuantity),
    standard: atPrice(used.standardQuantity),
  };
}

function times(quantity: Quantity, price: Money): Money {
  const cost: bigint = multiplyQuantity(quantity, price as bigint as Quantity, 'half-up');
  return moneyFromMicro(cost);
}

/** A part of a whole with four digits after the point, as text; null of nothing. */
export function shareOf(part: bigint, whole: bigint): bigint | null {
  if (whole === 0n) return null;
  const scaled = (part * 2n * 10_000n + whole) / (2n * whole);
  return scaled * 100n;
}
