import { splitLargestRemainder } from '#lib/measure';

/**
 * Sharing the cost of something set up once for several, e.g. a dam over two teeth. `alone` is what
 * each would cost by itself, in micro units. Every rule shares out the whole cost, to `step`.
 */

/** In proportion to what each would cost alone. */
export function proportionalShares(
  total: bigint,
  alone: readonly bigint[],
  step: bigint = 1n,
): bigint[] {
  return splitLargestRemainder(total, alone, step);
}

/** The same for each, also where that is more than it would cost alone. */
export function equalShares(total: bigint, count: number, step: bigint = 1n): bigint[] {
  return splitLargestRemainder(total, new Array<bigint>(count).fill(1n), step);
}

/** The same for each, but nobody more than alone: what that leaves open, the others share equally. */
export function cappedEqualShares(
  total: bigint,
  alone: readonly bigint[],
  step: bigint = 1n,
): bigint[] {
  const most = alone.reduce((a, b) => a + b, 0n);
  if (total > most) throw new RangeError('The joint cost is more than all would cost alone.');
  const cheapest = [...alone.keys()].sort((a, b) => compareBig(alone[a], alone[b]) || a - b);
  const shares = alone.map(() => 0n);
  let open = total;
  for (const [served, i] of cheapest.entries()) {
    const rest = cheapest.length - served;
    const limit = alone[i] ?? 0n;
    if (limit * BigInt(rest) >= open) {
      const others = cheapest.slice(served).sort((a, b) => a - b);
      const even = equalShares(open, rest, step);
      others.forEach((at, n) => {
        shares[at] = even[n] ?? 0n;
      });
      break;
    }
    shares[i] = limit;
    open -= limit;
  }
  return shares;
}

/**
 * The Shapley value where the joint cost is that of the dearest (Littlechild & Owen, 1973): each
 * increment of cost is shared equally by those who need it.
 */
export function incrementShares(alone: readonly bigint[], step: bigint = 1n): bigint[] {
  const order = [...alone.keys()].sort((a, b) => compareBig(alone[a], alone[b]) || a - b);
  // Counted in parts of the factorial, every increment can be divided without a remainder.
  const parts = factorial(alone.length);
  const exact = alone.map(() => 0n);
  let paid = 0n;
  let before = 0n;
  for (const [served, i] of order.entries()) {
    const cost = alone[i] ?? 0n;
    paid += ((cost - before) * parts) / BigInt(order.length - served);
    before = cost;
    exact[i] = paid;
  }
  return alone.length === 0 ? [] : splitLargestRemainder(before, exact, step);
}

const MOST_PLAYERS = 12;

/**
 * The Shapley value of any joint cost: what each adds on average over all orders of joining.
 * `costOf` gives the cost of a group of positions; of nobody it is taken to be 0.
 */
export function shapleyShares(
  count: number,
  costOf: (group: readonly number[]) => bigint,
  step: bigint = 1n,
): bigint[] {
  if (count > MOST_PLAYERS) throw new RangeError(`At most ${MOST_PLAYERS} can share a cost.`);
  const groups = 2 ** count;
  const members = (mask: number) =>
    [...new Array(count).keys()].filter((i) => Math.floor(mask / 2 ** i) % 2 === 1);
  const costs = [...new Array(groups).keys()].map((mask) =>
    mask === 0 ? 0n : costOf(members(mask)),
  );
  const exact = new Array<bigint>(count).fill(0n);
  for (let mask = 0; mask < groups; mask += 1) {
    const inside = members(mask);
    const weight = factorial(inside.length) * factorial(count - inside.length - 1);
    for (let i = 0; i < count; i += 1) {
      if (inside.includes(i)) continue;
      const added = (costs[mask + 2 ** i] ?? 0n) - (costs[mask] ?? 0n);
      exact[i] = (exact[i] ?? 0n) + weight * added;
    }
  }
  return count === 0 ? [] : splitLargestRemainder(costs[groups - 1] ?? 0n, exact, step);
}

/** Positions that would pay more together than alone, and so would rather not share. */
export function worseOffThanAlone(shares: readonly bigint[], alone: readonly bigint[]): number[] {
  return [...shares.keys()].filter((i) => (shares[i] ?? 0n) > (alone[i] ?? 0n));
}

function factorial(n: number): bigint {
  let product = 1n;
  for (let i = 2; i <= n; i += 1) product *= BigInt(i);
  return product;
}

function compareBig(a: bigint | undefined, b: bigint | undefined): number {
  const [left, right] = [a ?? 0n, b ?? 0n];
  if (left === right) return 0;
  return left < right ? -1 : 1;
}
