import { type Money, moneyFromMicro, multiplyRatio } from '#lib/measure';

interface Wanted {
  /** What the work uses. */
  readonly material: Money;
  /** Chair time, in millionths of a minute. */
  readonly time: bigint;
  /** What an hour at the chair shall leave after material. */
  readonly perHour: Money;
  /** The most that plan and patient together may be asked; null: no limit. */
  readonly limit: Money | null;
  readonly step: bigint;
}

/** Null: no fee reaches it, because a contract limits what may be asked. */
export type LowestFee = Money | null;

const HOUR = 60n * 1_000_000n;

/**
 * The lowest fee that leaves the wished contribution per hour: exact, rounded up to the smallest
 * coin, never below 0.
 */
export function lowestFee({ material, time, perHour, limit, step }: Wanted): LowestFee {
  const exact = material * HOUR + perHour * time;
  const fee = moneyFromMicro(multiplyRatio(exact, 1n, HOUR * step, 'up') * step);
  return limit !== null && fee > limit ? null : fee;
}
