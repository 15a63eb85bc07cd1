import {
  type Money,
  moneyFromMicro,
  multiplyRatio,
  type Quantity,
  quantityFromMicro,
  roundTo,
  subtract,
} from '#lib/measure';
import { breakEvenOfMix, contributionOf } from './contribution.js';
import { rankByScarceHours } from './scarce-time.js';

const ONE = 1_000_000n;

/** One kind of work of a month. */
export interface KindOfWork {
  readonly price: Money;
  /** What one more costs. */
  readonly variable: Money;
  /** How many a month are planned; they are also the most that are asked for. */
  readonly number: bigint;
  /** Chair time of one; null: not known. */
  readonly minutes: Quantity | null;
}

export interface MonthQuestion {
  readonly kinds: readonly KindOfWork[];
  readonly fixed: Money;
  readonly targetProfit: Money;
  /** Chair time there is; null: not asked about. Then every kind needs minutes above 0. */
  readonly minutes: Quantity | null;
  readonly step: bigint;
}

interface MonthOfKind {
  readonly unit: Money;
  readonly ratio: Quantity | null;
  readonly total: Money;
  readonly perHour: Money | null;
  /** How many it takes when the kinds stay in proportion; null: no number of them earns it. */
  readonly needed: Quantity | null;
  readonly neededWhole: bigint | null;
  /** How many fit when the best paid hour goes first, and its place in that order from 1. */
  readonly fits: Quantity | null;
  readonly rank: number | null;
}

export interface MonthOfWork {
  readonly kinds: readonly MonthOfKind[];
  readonly revenue: Money;
  readonly contribution: Money;
  /** After fixed cost. */
  readonly income: Money;
  /** By how many times a change of the number of all work changes what is left; null: nothing is. */
  readonly leverage: Quantity | null;
  readonly breakEvenRevenue: Money | null;
  /** By how much revenue may fall before the fixed cost and the wished profit are not earned. */
  readonly safety: Money | null;
  readonly safetyShare: Quantity | null;
  readonly minutes: Quantity | null;
}

/** What a month of work leaves, how many of each pay for the fixed cost, what goes first. */
export function monthOfWork(question: MonthQuestion): MonthOfWork {
  const { kinds, fixed, step, targetProfit } = question;
  const coins = (amount: bigint) => moneyFromMicro(roundTo(amount, step, 'half-up'));
  const revenue = total(kinds, (kind) => kind.price);
  const contribution = total(kinds, (kind) => kind.price - kind.variable);
  const income = subtract(contribution, fixed);
  const mixed = breakEvenOfMix(
    kinds.map(({ number, ...kind }) => ({ ...kind, parts: number })),
    fixed,
    targetProfit,
  );
  const safety = mixed && subtract(revenue, mixed.revenue);
  const places = placesOf(question);
  return {
    kinds: kinds.map((kind, i) => ofKind(kind, mixed?.bundleMargin, question, places[i])),
    revenue: coins(revenue),
    contribution: coins(contribution),
    income: coins(income),
    leverage: income > 0n ? share(contribution, income) : null,
    breakEvenRevenue: mixed && coins(mixed.revenue),
    safety: safety && coins(safety),
    safetyShare: safety === null || revenue === 0n ? null : share(safety, revenue),
    minutes: minutesOf(kinds),
  };
}

interface Place {
  readonly rank: number;
  readonly fits: Quantity;
}

function ofKind(
  kind: KindOfWork,
  bundleMargin: Money | undefined,
  { fixed, targetProfit, step }: MonthQuestion,
  place: Place | undefined,
): MonthOfKind {
  const { price, variable, number, minutes } = kind;
  const units = quantityFromMicro(number * ONE);
  const { unit, ratio, total: all } = contributionOf({ price, variable, units, fixed });
  const wanted = fixed + targetProfit;
  const each = (mode: 'half-up' | 'up', scale: bigint) =>
    bundleMargin === undefined ? null : multiplyRatio(wanted, number * scale, bundleMargin, mode);
  const needed = each('half-up', ONE);
  return {
    unit,
    ratio,
    total: all,
    perHour: minutes === null ? null : perHour(unit, minutes, step),
    needed: needed === null ? null : quantityFromMicro(needed),
    neededWhole: each('up', 1n),
    fits: place?.fits ?? null,
    rank: place?.rank ?? null,
  };
}

function placesOf({ kinds, minutes }: MonthQuestion): (Place | undefined)[] {
  if (minutes === null) return [];
  const ranked = rankByScarceHours(
    minutes,
    kinds.map(({ price, variable, number, minutes: hours }, i) => {
      if (hours === null || hours <= 0n) throw new RangeError('Scarce time needs minutes.');
      const demand = quantityFromMicro(number * ONE);
      return { name: String(i), price, variable, hours, demand };
    }),
  );
  const places = new Map(ranked.map(({ name, made }, i) => [name, { rank: i + 1, fits: made }]));
  return kinds.map((_, i) => places.get(String(i)));
}

function minutesOf(kinds: readonly KindOfWork[]): Quantity | null {
  let sum = 0n;
  for (const { minutes, number } of kinds) {
    if (minutes === null) return null;
    sum += minutes * number;
  }
  return quantityFromMicro(sum);
}

function total(kinds: readonly KindOfWork[], of: (kind: KindOfWork) => bigint): Money {
  return moneyFromMicro(kinds.reduce((sum, kind) => sum + of(kind) * kind.number, 0n));
}

function perHour(unit: Money, minutes: Quantity, step: bigint): Money | null {
  if (minutes === 0n) return null;
  return moneyFromMicro(multiplyRatio(unit, 60n * ONE, minutes * step, 'half-up') * step);
}

function share(part: bigint, whole: bigint): Quantity {
  return quantityFromMicro(multiplyRatio(part, ONE, whole, 'half-up'));
}
