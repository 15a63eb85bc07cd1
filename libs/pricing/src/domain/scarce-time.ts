import {
  type Money,
  min,
  moneyFromMicro,
  multiplyRatio,
  type Quantity,
  quantityFromMicro,
  subtract,
} from '#lib/measure';

const ONE = 1_000_000n;

/** A kind of work that competes for the same scarce hours. */
export interface Work {
  readonly name: string;
  readonly price: Money;
  readonly variable: Money;
  /** Of the scarce resource, for one; more than 0. */
  readonly hours: Quantity;
  /** How many are asked for at most. */
  readonly demand: Quantity;
}

export interface RankedWork {
  readonly name: string;
  readonly perHour: Money;
  /** How many of it fit when the better paid ones go first. */
  readonly made: Quantity;
}

/** What a scarce hour earns: contribution divided by the hours it takes. */
function perHour(contribution: Money, hours: Quantity): Money {
  return moneyFromMicro(multiplyRatio(contribution, ONE, hours, 'half-up'));
}

/**
 * Fills scarce hours with the work that earns most an hour, best first, those of equal earnings in
 * the order given. Work that earns nothing is not done.
 */
export function rankByScarceHours(capacity: Quantity, works: readonly Work[]): RankedWork[] {
  const ranked = works
    .map((work, index) => {
      const margin = subtract(work.price, work.variable);
      return { work, index, margin, perHour: perHour(margin, work.hours) };
    })
    .sort((a, b) => byEarnings(a, b) || a.index - b.index);
  let left = capacity;
  return ranked.map((entry) => {
    const { name, hours, demand } = entry.work;
    const fits = quantityFromMicro(multiplyRatio(left, ONE, hours, 'down'));
    const made = entry.margin > 0n ? min(demand, fits) : quantityFromMicro(0n);
    left = subtract(left, quantityFromMicro(multiplyRatio(made, hours, ONE, 'up')));
    return { name, perHour: entry.perHour, made };
  });
}

interface Earning {
  readonly margin: Money;
  readonly work: Work;
}

/** Compares the exact ratios, not the rounded figures. */
function byEarnings(a: Earning, b: Earning): number {
  const [left, right] = [a.margin * b.work.hours, b.margin * a.work.hours];
  if (left === right) return 0;
  return left > right ? -1 : 1;
}
