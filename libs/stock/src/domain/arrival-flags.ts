import type { Quantity } from '#lib/measure';
import type { Day } from './candidate.js';

export const FLAG_KINDS = ['expired', 'short-dated', 'not used in time'] as const;
export type FlagKind = (typeof FLAG_KINDS)[number];

/** Something about the shelf life of goods that arrive, with the figures of the rule that says so. */
export interface ArrivalFlag {
  readonly kind: FlagKind;
  /** From the day of arrival to the last day of use; less than 0 when that has passed. */
  readonly daysLeft: number;
  /** What the rule asks for: 0, the practice's days of warning, or the days needed to use it up. */
  readonly limitDays: number;
}

/** Usable goods of the same consumable that are there already, or come on other lines. */
export interface Waiting {
  readonly expiresOn: Day | null;
  readonly quantity: Quantity;
}

export interface ArrivingGoods {
  readonly quantity: Quantity;
  readonly expiresOn: Day | null;
  readonly daysLeft: number;
  readonly warningDays: number;
  readonly waiting: readonly Waiting[];
  /** Used in visits during the last `usedDays` days. */
  readonly used: Quantity;
  readonly usedDays: number;
}

/**
 * What to know about the expiry of goods on arrival: they are past it; they have fewer days left than
 * the practice wants to be warned of; or, at the pace at which it was used of late and with what expires
 * no later used first, they take longer to use up than they last. A pace of nothing says nothing.
 */
export function arrivalFlags(goods: ArrivingGoods): ArrivalFlag[] {
  const { expiresOn, daysLeft, warningDays } = goods;
  if (expiresOn === null) return [];
  if (daysLeft < 0) return [{ kind: 'expired', daysLeft, limitDays: 0 }];
  const flags: ArrivalFlag[] = [];
  if (daysLeft < warningDays) {
    flags.push({ kind: 'short-dated', daysLeft, limitDays: warningDays });
  }
  if (goods.used > 0n) {
    const first = goods.waiting
      .filter((one) => one.expiresOn !== null && one.expiresOn <= expiresOn)
      .reduce((sum, one) => sum + one.quantity, 0n);
    const needed = ceilDivide((first + goods.quantity) * BigInt(goods.usedDays), goods.used);
    if (BigInt(daysLeft) < needed) {
      const limitDays = Number(needed > MOST_DAYS ? MOST_DAYS : needed);
      flags.push({ kind: 'not used in time', daysLeft, limitDays });
    }
  }
  return flags;
}

const MOST_DAYS = 99_999n;

function ceilDivide(a: bigint, b: bigint): bigint {
  return (a + b - 1n) / b;
}
