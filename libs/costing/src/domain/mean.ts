import { type Money, moneyFromMicro, multiplyRatio } from '#lib/measure';

/** The average in whole steps of the currency (cents), a half up; nothing of nothing is nothing. */
export function meanMoney(total: bigint, count: number, step: bigint): Money {
  if (count === 0) return moneyFromMicro(0n);
  return moneyFromMicro(multiplyRatio(total, 1n, BigInt(count) * step, 'half-up') * step);
}
