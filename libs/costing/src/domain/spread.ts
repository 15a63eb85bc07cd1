/** What restorations cost: the smallest, P10, P50, P90 and the largest, in millionths. */
export interface Spread {
  readonly min: bigint;
  readonly p10: bigint;
  readonly p50: bigint;
  readonly p90: bigint;
  readonly max: bigint;
}

const BYTES = 8;
const LARGEST_EXACT_HIGH = 0x20_0000; // times 2^32 is 2^53, up to which a number is exact
const MOST_COUNTERS = 1 << 22;
const WORTH_COUNTING = 4096;
const SHARES = [0, 0.1, 0.5, 0.9, 1] as const;
const NOTHING: Spread = { min: 0n, p10: 0n, p50: 0n, p90: 0n, max: 0n };

/**
 * The spread of costs that come packed as eight bytes each, in millionths, biggest byte first. Every
 * figure is a cost that occurred (nearest rank, as percentile_disc has it). `step` is what costs
 * usually are multiples of; it only makes this faster.
 */
export function spreadOf(packs: readonly Uint8Array[], step: bigint): Spread {
  const count = packs.reduce((sum, pack) => sum + pack.length / BYTES, 0);
  if (count === 0) return NOTHING;
  const numbers = readNumbers(packs, count);
  if (!numbers) return sortedSpread(readBig(packs, count).sort());
  const counted = count < WORTH_COUNTING ? null : countedSpread(numbers, Number(step));
  return counted ?? sortedSpread(numbers.sort());
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
function countedSpread(costs: Float64Array, step: number): Spread | null {
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (const cost of costs) {
    if (cost < least) least = cost;
    if (cost > most) most = cost;
  }
  const size = (most - least) / step + 1;
  if (size > MOST_COUNTERS || !Number.isInteger(size)) return null;
  const counters = new Uint32Array(size);
  for (const cost of costs) {
    const at = (cost - least) / step;
    if (!Number.isInteger(at)) return null;
    counters[at] = (counters[at] ?? 0) + 1;
  }
  const found: bigint[] = [];
  let passed = 0;
  let at = -1;
  for (const share of SHARES) {
    const rank = rankOf(share, costs.length);
    while (passed <= rank) {
      at += 1;
      passed += counters[at] ?? 0;
    }
    found.push(BigInt(least + at * step));
  }
  return toSpread(...found);
}

function viewOf(pack: Uint8Array): DataView {
  return new DataView(pack.buffer, pack.byteOffset, pack.byteLength);
}

/** Null when a cost is too large to be exact as a number. */
function readNumbers(packs: readonly Uint8Array[], count: number): Float64Array | null {
  const costs = new Float64Array(count);
  let at = 0;
  for (const pack of packs) {
    const view = viewOf(pack);
    for (let offset = 0; offset < pack.length; offset += BYTES) {
      const high = view.getUint32(offset);
      if (high >= LARGEST_EXACT_HIGH) return null;
      costs[at] = high * 0x1_0000_0000 + view.getUint32(offset + 4);
      at += 1;
    }
  }
  return costs;
}

function readBig(packs: readonly Uint8Array[], count: number): BigInt64Array {
  const costs = new BigInt64Array(count);
  let at = 0;
  for (const pack of packs) {
    const view = viewOf(pack);
    for (let offset = 0; offset < pack.length; offset += BYTES) {
      costs[at] = view.getBigInt64(offset);
      at += 1;
    }
  }
  return costs;
}
