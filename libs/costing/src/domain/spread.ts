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
const WORTH_COUNTING = 16; // counters for each cost: with more of them, sorting is faster
const SHARES = [0, 0.1, 0.5, 0.9, 1] as const;
const LITTLE_ENDIAN = new Uint8Array(Uint16Array.of(1).buffer)[0] === 1;
const NOTHING: Spread = { min: 0n, p10: 0n, p50: 0n, p90: 0n, max: 0n };

/** What restorations cost: in hundredths, in millionths, or in millionths too large for a number. */
export type Costs = Int16Array | Float64Array | BigInt64Array;

type Numbers = Int16Array | Float64Array;

/** Bytes of one packed cost: 2 or 4 of hundredths, 8 of millionths, the biggest byte first. */
export type Width = 2 | 4 | 8;

const HUNDREDTH = 10_000;

/** Reads the costs of a pack. It may turn the bytes of the pack round and keep them: read it once. */
export function readCosts(pack: Buffer, width: Width): Costs {
  const count = pack.length / width;
  if (width === 2 && pack.byteOffset % 2 === 0 && LITTLE_ENDIAN) {
    pack.swap16();
    return new Int16Array(pack.buffer, pack.byteOffset, count);
  }
  const view = new DataView(pack.buffer, pack.byteOffset, pack.byteLength);
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
 * The spread of all costs of some lists less each of some others. Every figure is a cost that
 * occurred (nearest rank, as percentile_disc has it). `step` is what costs usually are multiples of;
 * it makes this faster.
 */
export function spreadOf(
  lists: readonly Costs[],
  step: bigint,
  removed: readonly Costs[] = [],
): Spread {
  const count = lengthOf(lists) - lengthOf(removed);
  if (count <= 0) return NOTHING;
  const [some, less] = [numbersOf(lists), numbersOf(removed)];
  if (!some || !less) return sortedSpread(without(sortedBig(lists), sortedBig(removed)));
  const counted = countedSpread({ some, less }, count, Number(step));
  return counted ?? sortedSpread(without(sorted(some), sorted(less)));
}

function lengthOf(lists: readonly Costs[]): number {
  return lists.reduce((sum, list) => sum + list.length, 0);
}

/** The lists, if none of them has costs too large for a number. */
function numbersOf(lists: readonly Costs[]): readonly Numbers[] | null {
  const numbers = lists.filter((list) => !(list instanceof BigInt64Array));
  return numbers.length < lists.length ? null : numbers;
}

function sortedBig(lists: readonly Costs[]): BigInt64Array {
  const millionths = lists.flatMap((list) =>
    [...list].map((cost) => BigInt(cost) * BigInt(unitOf(list))),
  );
  return BigInt64Array.from(millionths).sort();
}

function sorted(lists: readonly Numbers[]): Float64Array {
  const all = new Float64Array(lengthOf(lists));
  let at = 0;
  for (const list of lists) {
    const unit = unitOf(list);
    for (let n = 0; n < list.length; n += 1) all[at + n] = unit * (list[n] ?? 0);
    at += list.length;
  }
  return all.sort();
}

/** Millionths in what a list counts in. */
function unitOf(list: Costs): number {
  return list instanceof Int16Array ? HUNDREDTH : 1;
}

/** What is left of sorted costs when each of others, sorted too, is taken away once. */
function without<T extends Float64Array | BigInt64Array>(all: T, removed: T): T {
  if (removed.length === 0) return all;
  let at = 0;
  const left = all.filter((cost: number | bigint) => {
    if (cost !== removed[at]) return true;
    at += 1;
    return false;
  });
  return left as T;
}

/** Position of a share of so many in their order, from 0. */
function rankOf(share: number, count: number): number {
  return Math.max(0, Math.ceil(share * count) - 1);
}

function sortedSpread(costs: Float64Array | BigInt64Array): Spread {
  const at = (share: number) => BigInt(costs[rankOf(share, costs.length)] ?? 0);
  const [min, p10, p50, p90, max] = SHARES.map(at);
  return toSpread(min, p10, p50, p90, max);
}

function toSpread(...found: (bigint | undefined)[]): Spread {
  const [min = 0n, p10 = 0n, p50 = 0n, p90 = 0n, max = 0n] = found;
  return { min, p10, p50, p90, max };
}

/** Counts how often each cost occurs; null where they are few or far apart, or between the steps. */
function countedSpread(
  { some, less }: { some: readonly Numbers[]; less: readonly Numbers[] },
  count: number,
  step: number,
): Spread | null {
  const { least, most } = rangeOf(some);
  const size = (most - least) / step + 1;
  if (size > Math.min(MOST_COUNTERS, WORTH_COUNTING * count)) return null;
  if (!Number.isInteger(size)) return null;
  const counters = emptyCounters(size);
  if (!countInto(counters, some, { least, step, by: 1 })) return null;
  if (!countInto(counters, less, { least, step, by: -1 })) return null;
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

let counted = new Int32Array(0); // kept: a report has thousands of rows

function emptyCounters(size: number): Int32Array {
  if (counted.length < size) counted = new Int32Array(size);
  return counted.fill(0, 0, size);
}

/** False when a cost lies between the steps. */
function countInto(
  counters: Int32Array,
  lists: readonly Numbers[],
  { least, step, by }: { least: number; step: number; by: number },
): boolean {
  const before = least / step;
  for (const list of lists) {
    const steps = unitOf(list) / step;
    const whole = Number.isInteger(steps) && Number.isInteger(before);
    for (let n = 0; n < list.length; n += 1) {
      const cost = list[n] ?? 0;
      const at = whole ? steps * cost - before : (unitOf(list) * cost - least) / step;
      if (!whole && !Number.isInteger(at)) return false;
      counters[at] = (counters[at] ?? 0) + by;
    }
  }
  return true;
}

function rangeOf(lists: readonly Numbers[]): { least: number; most: number } {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const list of lists) {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let n = 0; n < list.length; n += 1) {
      const cost = list[n] ?? 0;
      if (cost < low) low = cost;
      if (cost > high) high = cost;
    }
    const unit = unitOf(list);
    if (unit * low < least) least = unit * low;
    if (unit * high > most) most = unit * high;
  }
  return { least, most };
}
