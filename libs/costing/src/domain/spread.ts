/** What restorations cost: the smallest, P10, P50, P90 and the largest, in millionths. */
export interface Spread {
  readonly min: bigint;
  readonly p10: bigint;
  readonly p50: bigint;
  readonly p90: bigint;
  readonly max: bigint;
}

const LARGEST_EXACT_HIGH = 0x20_0000; // times 2^32 is 2^53, up to which a number is exact
const MOST_COUNTERS = 1 << 22;
const WORTH_COUNTING = 4096;
const SHARES = [0, 0.1, 0.5, 0.9, 1] as const;
const NOTHING: Spread = { min: 0n, p10: 0n, p50: 0n, p90: 0n, max: 0n };

/** What restorations cost, in millionths; big integers where one is too large for a number. */
export type Costs = Float64Array | BigInt64Array;

/** Bytes of one packed cost: 2 or 4 of hundredths, 8 of millionths, the biggest byte first. */
export type Width = 2 | 4 | 8;

const HUNDREDTH = 10_000;

/** Reads the costs of a pack in millionths. */
export function readCosts(pack: Uint8Array, width: Width): Costs {
  const view = new DataView(pack.buffer, pack.byteOffset, pack.byteLength);
  const count = pack.length / width;
  if (width === 8) return readWide(view, count);
  const costs = new Float64Array(count);
  for (let at = 0; at < count; at += 1) {
    costs[at] = HUNDREDTH * (width === 2 ? view.getInt16(2 * at) : view.getInt32(4 * at));
  }
  return costs;
}

function readWide(view: DataView, count: number): Costs {
  const costs = new Float64Array(count);
  for (let at = 0; at < count; at += 1) {
    const high = view.getUint32(8 * at);
    if (high >= LARGEST_EXACT_HIGH) {
      return BigInt64Array.from({ length: count }, (_, i) => view.getBigInt64(8 * i));
    }
    costs[at] = high * 0x1_0000_0000 + view.getUint32(8 * at + 4);
  }
  return costs;
}

/**
 * The spread of all costs of some lists. Every figure is a cost that occurred (nearest rank, as
 * percentile_disc has it). `step` is what costs usually are multiples of; it makes this faster.
 */
export function spreadOf(lists: readonly Costs[], step: bigint): Spread {
  const count = lists.reduce((sum, list) => sum + list.length, 0);
  if (count === 0) return NOTHING;
  const numbers = lists.filter((list) => list instanceof Float64Array);
  if (numbers.length < lists.length) return sortedSpread(allBig(lists).sort());
  const counted = count < WORTH_COUNTING ? null : countedSpread(numbers, count, Number(step));
  return counted ?? sortedSpread(allNumbers(numbers, count).sort());
}

function allBig(lists: readonly Costs[]): BigInt64Array {
  return BigInt64Array.from(lists.flatMap((list) => [...list].map(BigInt)));
}

function allNumbers(lists: readonly Float64Array[], count: number): Float64Array {
  const all = new Float64Array(count);
  let at = 0;
  for (const list of lists) {
    all.set(list, at);
    at += list.length;
  }
  return all;
}

/** Position of a share of so many in their order, from 0. */
function rankOf(share: number, count: number): number {
  return Math.max(0, Math.ceil(share * count) - 1);
}

function sortedSpread(sorted: Float64Array | BigInt64Array): Spread {
  const at = (share: number) => BigInt(sorted[rankOf(share, sorted.length)] ?? 0);
  const [min, p10, p50, p90, max] = SHARES.map(at);
  return toSpread(min, p10, p50, p90, max);
}

function toSpread(...found: (bigint | undefined)[]): Spread {
  const [min = 0n, p10 = 0n, p50 = 0n, p90 = 0n, max = 0n] = found;
  return { min, p10, p50, p90, max };
}

/** Counts how often each cost occurs; null when they lie too far apart or between the steps. */
function countedSpread(lists: readonly Float64Array[], count: number, step: number): Spread | null {
  const { least, most } = rangeOf(lists);
  const size = (most - least) / step + 1;
  if (size > MOST_COUNTERS || !Number.isInteger(size)) return null;
  const counters = new Uint32Array(size);
  for (const list of lists) {
    for (const cost of list) {
      const at = (cost - least) / step;
      if (!Number.isInteger(at)) return null;
      counters[at] = (counters[at] ?? 0) + 1;
    }
  }
  const found: bigint[] = [];
  let passed = 0;
  let at = -1;
  for (const share of SHARES) {
    const rank = rankOf(share, count);
    while (passed <= rank) {
      at += 1;
      passed += counters[at] ?? 0;
    }
    found.push(BigInt(least + at * step));
  }
  return toSpread(...found);
}

function rangeOf(lists: readonly Float64Array[]): { least: number; most: number } {
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (const list of lists) {
    for (const cost of list) {
      if (cost < least) least = cost;
      if (cost > most) most = cost;
    }
  }
  return { least, most };
}
