import { type Money, moneyFromMicro, multiplyRatio } from '#lib/measure';

export const HABITS = [
  'retakes',
  'wrong shade opened',
  'after-opening limit',
  'expired',
  'other write-offs',
  'residue of single doses',
  'more than the template',
] as const;

export type HabitKind = (typeof HABITS)[number];

const DAYS_OF_YEAR = 365n;

/** What would be saved in a year of 365 days if it went on as in the days of a period. */
export function savedPerYear(cost: bigint, days: number): Money {
  if (days <= 0) return moneyFromMicro(0n);
  return moneyFromMicro(multiplyRatio(cost, DAYS_OF_YEAR, BigInt(days), 'half-up'));
}

interface Costed {
  readonly cost: bigint;
}

/** The costliest ones first, and no more than wanted; what costs nothing is no habit. */
export function costliest<T extends Costed>(habits: readonly T[], limit: number): T[] {
  return habits
    .filter((habit) => habit.cost > 0n)
    .sort((a, b) => (a.cost > b.cost ? -1 : a.cost < b.cost ? 1 : 0))
    .slice(0, limit);
}
