import {
  type Money,
  moneyFromMicro,
  type Quantity,
  quantityFromMicro,
  splitLargestRemainder,
} from '#lib/measure';

export interface DeliveryLineInput {
  readonly packs: number;
  readonly packPrice: Money;
  readonly containersPerPack: number;
  readonly contentPerContainer: Quantity;
}

export interface DeliveryInput {
  readonly lines: readonly DeliveryLineInput[];
  readonly freight: Money;
  readonly discount: Money;
  readonly spreadKey: 'value' | 'quantity';
  /** Smallest amount that is paid (a cent), in micro units. */
  readonly step: bigint;
}

export interface LandedLine {
  readonly quantity: Quantity;
  readonly goods: Money;
  readonly landedCost: Money;
}

export interface LandedDelivery {
  readonly lines: readonly LandedLine[];
  readonly goodsTotal: Money;
  readonly landedTotal: Money;
}

/**
 * What each line of a delivery cost to get here: its goods, plus freight, less discount, both spread
 * by the key and rounded to the cent by largest remainder, so that the lines add up to the invoice.
 * Undefined when the discount exceeds what it is spread over.
 */
export function landDelivery(input: DeliveryInput): LandedDelivery | undefined {
  const goods = input.lines.map((line) => BigInt(line.packs) * line.packPrice);
  const quantities = input.lines.map(
    (line) => BigInt(line.packs) * BigInt(line.containersPerPack) * line.contentPerContainer,
  );
  const goodsTotal = goods.reduce((a, b) => a + b, 0n);
  if (input.discount > goodsTotal) return undefined;
  const key = input.spreadKey === 'value' ? goods : quantities;
  const freight = splitLargestRemainder(input.freight, key, stepFor(input.freight, input.step));
  // A discount never makes a line negative: it follows the value of the goods.
  const discount = splitLargestRemainder(
    input.discount,
    goods,
    stepFor(input.discount, input.step),
  );
  const lines = input.lines.map((_, i) => ({
    quantity: quantityFromMicro(quantities[i] ?? 0n),
    goods: moneyFromMicro(goods[i] ?? 0n),
    landedCost: moneyFromMicro((goods[i] ?? 0n) + (freight[i] ?? 0n) - (discount[i] ?? 0n)),
  }));
  if (lines.some((line) => line.landedCost < 0n)) return undefined;
  return {
    lines,
    goodsTotal: moneyFromMicro(goodsTotal),
    landedTotal: moneyFromMicro(goodsTotal + input.freight - input.discount),
  };
}

/** Amounts finer than a cent are spread as finely as they were given. */
function stepFor(amount: bigint, step: bigint): bigint {
  return amount % step === 0n ? step : 1n;
}
