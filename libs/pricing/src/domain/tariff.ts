import { type Money, moneyFromMicro, multiplyRatio, type Quantity } from '#lib/measure';

/** A fee as a tariff writes it: so many points, each worth so much, times a factor. */
export interface PointsFee {
  readonly points: Quantity;
  /** In hundred-millionths of the currency: a point is often worth a fraction of a cent. */
  readonly pointValue: bigint;
  readonly factor: Quantity;
}

const POINT_VALUE_ONE = 100_000_000n;
const ONE = 1_000_000n;

/** Points x value of a point x factor, rounded once, half up, to the smallest coin at the end. */
export function feeByPoints({ points, pointValue, factor }: PointsFee, step: bigint): Money {
  const exact = points * factor * pointValue;
  const coins = multiplyRatio(exact, ONE, ONE * ONE * POINT_VALUE_ONE * step, 'half-up');
  return moneyFromMicro(coins * step);
}
