import {
  formatQuantity,
  type Money,
  type Quantity,
  quantityFromMicro,
  splitLargestRemainder,
} from '#lib/measure';
import type { Take } from '#lib/stock';

/** One of those that draw on the same doses. */
export interface Sharer {
  /** What it took out of them. */
  readonly amount: Quantity;
  /** What of that was placed: what stays in the doses is borne in this proportion. */
  readonly placed: Quantity;
}

export interface Part {
  readonly takes: readonly Take[];
  /** What is charged though the stock had none of it. */
  readonly missing: Quantity;
}

/**
 * Divides what was taken for several among them. Each bears what it took itself and, by what it placed
 * (by what it took, where nothing was placed), its part of what stayed in the doses; every take is
 * divided in that proportion, so that each is traced to every lot. Nothing is lost: quantities and
 * costs of the parts add up to the takes, by largest remainder.
 */
export function divide(
  sharers: readonly Sharer[],
  takes: readonly Take[],
  missing: Quantity,
): Part[] {
  const [only] = sharers;
  if (only && sharers.length === 1) return [{ takes, missing }];
  const left: bigint[] = borne(sharers, takes, missing);
  const parts = sharers.map((): Take[] => []);
  for (const take of takes) {
    const quantities = splitLargestRemainder(take.quantity, left);
    const costs = splitLargestRemainder(take.cost, quantities);
    quantities.forEach((quantity, i) => {
      if (quantity === 0n) return;
      left[i] = (left[i] ?? 0n) - quantity;
      const part = { quantity: quantity as Quantity, cost: (costs[i] ?? 0n) as Money };
      parts[i]?.push({ ...take, ...part });
    });
  }
  return parts.map((part, i) => ({ takes: part, missing: (left[i] ?? 0n) as Quantity }));
}

/** What each bears of all that is charged; never less than it took. */
function borne(sharers: readonly Sharer[], takes: readonly Take[], missing: Quantity): bigint[] {
  const charged = takes.reduce((sum, take) => sum + take.quantity, missing as bigint);
  const used = sharers.reduce((sum, { amount }) => sum + amount, 0n);
  const placed = sharers.map((sharer) => sharer.placed as bigint);
  const weights = placed.some((each) => each > 0n) ? placed : sharers.map(({ amount }) => amount);
  const rest = splitLargestRemainder(charged - used, weights);
  return sharers.map(({ amount }, i) => amount + (rest[i] ?? 0n));
}

interface Sharing {
  readonly dispensed: Quantity;
  readonly charged: Quantity;
}

/** What lines of one consumable that may share doses share; null when nobody shares anything. */
export function sharedDose(lines: readonly Sharing[]): { lines: number; charged: string } | null {
  const taking = lines.filter(({ charged }) => charged > 0n);
  const total = (of: 'charged' | 'dispensed') => taking.reduce((sum, line) => sum + line[of], 0n);
  if (taking.length < 2 || total('charged') === total('dispensed')) return null;
  return { lines: taking.length, charged: formatQuantity(quantityFromMicro(total('charged'))) };
}
