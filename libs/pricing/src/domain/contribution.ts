import {
  type Money,
  moneyFromMicro,
  multiplyRatio,
  type Quantity,
  quantityFromMicro,
  roundTo,
  subtract,
  ZERO_MONEY,
} from '#lib/measure';

const ONE = 1_000_000n;

interface UnitPrice {
  readonly price: Money;
  /** What one more costs: material, not the chair or the rent. */
  readonly variable: Money;
}

interface Contribution {
  /** Of one. */
  readonly unit: Money;
  /** Share of the price, null where the price is 0. */
  readonly ratio: Quantity | null;
  readonly total: Money;
  /** What is left after fixed cost. */
  readonly income: Money;
}

export function contributionOf(
  sale: UnitPrice & { readonly units: Quantity; readonly fixed: Money },
): Contribution {
  const unit = subtract(sale.price, sale.variable);
  const total = moneyFromMicro(multiplyRatio(unit, sale.units, ONE, 'half-up'));
  const ratio =
    sale.price === 0n ? null : quantityFromMicro(multiplyRatio(unit, ONE, sale.price, 'half-up'));
  return { unit, ratio, total, income: subtract(total, sale.fixed) };
}

interface BreakEven {
  /** To six digits. */
  readonly units: Quantity;
  /** As many whole ones as it takes. */
  readonly wholeUnits: bigint;
  readonly revenue: Money;
}

/** How many it takes to earn the fixed cost and the wished profit; null: it cannot be earned. */
export function breakEven(
  sale: UnitPrice & { readonly fixed: Money; readonly targetProfit?: Money },
): BreakEven | null {
  const unit = subtract(sale.price, sale.variable);
  const wanted = moneyFromMicro(sale.fixed + (sale.targetProfit ?? ZERO_MONEY));
  return unit > 0n ? unitsFor(wanted, unit, sale.price) : null;
}

interface MixedBreakEven extends BreakEven {
  /** Contribution of one bundle of the mix; `units` counts bundles. */
  readonly bundleMargin: Money;
  /** How many of each, to the nearest whole one. */
  readonly each: readonly bigint[];
}

/** The same for kinds that are sold in a fixed proportion; null: it cannot be earned. */
export function breakEvenOfMix(
  kinds: readonly (UnitPrice & { readonly parts: bigint })[],
  fixed: Money,
  targetProfit: Money = ZERO_MONEY,
): MixedBreakEven | null {
  const bundle = (of: (kind: UnitPrice) => bigint) =>
    moneyFromMicro(kinds.reduce((total, kind) => total + of(kind) * kind.parts, 0n));
  const bundleMargin = bundle((kind) => kind.price - kind.variable);
  if (bundleMargin <= 0n) return null;
  const wanted = moneyFromMicro(fixed + targetProfit);
  const each = kinds.map(({ parts }) => multiplyRatio(wanted, parts, bundleMargin, 'half-up'));
  return {
    ...unitsFor(
      wanted,
      bundleMargin,
      bundle((kind) => kind.price),
    ),
    bundleMargin,
    each,
  };
}

function unitsFor(wanted: Money, margin: Money, price: Money): BreakEven {
  const units = quantityFromMicro(multiplyRatio(wanted, ONE, margin, 'half-up'));
  const revenue = moneyFromMicro(multiplyRatio(wanted, price, margin, 'half-up'));
  return { units, wholeUnits: roundTo(multiplyRatio(wanted, 1n, margin, 'up'), 1n, 'up'), revenue };
}

interface SafetyMargin {
  readonly breakEven: BreakEven;
  /** By how much revenue may fall before nothing is earned. */
  readonly margin: Money;
  /** The same as a share of revenue; null without any. */
  readonly share: Quantity | null;
}

export function marginOfSafety(
  sale: UnitPrice & { readonly units: Quantity; readonly fixed: Money },
): SafetyMargin | null {
  const needed = breakEven(sale);
  if (!needed) return null;
  const revenue = moneyFromMicro(multiplyRatio(sale.price, sale.units, ONE, 'half-up'));
  const margin = subtract(revenue, needed.revenue);
  const share =
    revenue === 0n ? null : quantityFromMicro(multiplyRatio(margin, ONE, revenue, 'half-up'));
  return { breakEven: needed, margin, share };
}

interface SpecialPrice {
  readonly variable: Money;
  readonly gainPerUnit: Money;
  readonly gain: Money;
  readonly accept: boolean;
}

/**
 * Whether to take work at a special price: where it pays more than its variable cost and the time
 * for it would stand idle. What it would push out is not counted, so without room it is refused.
 */
export function specialPrice(offer: {
  readonly price: Money;
  readonly variable: readonly Money[];
  readonly order: Quantity;
  readonly freeCapacity: Quantity;
}): SpecialPrice {
  const variable = moneyFromMicro(offer.variable.reduce((a: bigint, b) => a + b, 0n));
  const gainPerUnit = subtract(offer.price, variable);
  const gain = moneyFromMicro(multiplyRatio(gainPerUnit, offer.order, ONE, 'half-up'));
  const accept = gainPerUnit > 0n && offer.order <= offer.freeCapacity;
  return { variable, gainPerUnit, gain, accept };
}
