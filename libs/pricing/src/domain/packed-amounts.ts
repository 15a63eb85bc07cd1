/** Amounts packed one after the other, the biggest byte first: 2 or 4 of hundredths, 8 of millionths. */
export interface Pack {
  readonly width: 2 | 4 | 8;
  readonly bytes: Uint8Array;
}

/** Amounts that really occurred: so many percent are not above them (nearest rank). */
export interface Percentiles {
  readonly p10: bigint;
  readonly p50: bigint;
  readonly p90: bigint;
}

const HUNDREDTH = 10_000n;
const WORTH_COUNTING = 4096;
const MOST_COUNTERS = 1 << 22;

/** In millionths; null of nothing. */
export function percentilesOf(packs: readonly Pack[]): Percentiles | null {
  const count = packs.reduce((sum, { width, bytes }) => sum + bytes.length / width, 0);
  if (count === 0) return null;
  const at = packs.some(({ width }) => width === 8)
    ? sortedWide(packs, count)
    : sortedHundredths(packs, count);
  const ranked = (percent: number) => at(Math.ceil((percent * count) / 100) - 1);
  return { p10: ranked(10), p50: ranked(50), p90: ranked(90) };
}

type At = (rank: number) => bigint;

function sortedHundredths(packs: readonly Pack[], count: number): At {
  const all = new Int32Array(count);
  let end = 0;
  for (const { width, bytes } of packs) {
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    for (let from = 0; from < bytes.length; from += width) {
      all[end] = width === 2 ? view.getInt16(from) : view.getInt32(from);
      end += 1;
    }
  }
  sort(all);
  return (rank) => BigInt(all[rank] ?? 0) * HUNDREDTH;
}

/** Amounts lie close together, so that counting how often each occurs is faster than comparing. */
function sort(all: Int32Array): void {
  let [least, most] = [0x7fff_ffff, -0x8000_0000];
  for (const amount of all) {
    if (amount < least) least = amount;
    if (amount > most) most = amount;
  }
  if (all.length < WORTH_COUNTING || most - least >= MOST_COUNTERS) {
    all.sort();
    return;
  }
  const counters = new Uint32Array(most - least + 1);
  for (const amount of all) counters[amount - least] = (counters[amount - least] ?? 0) + 1;
  let end = 0;
  counters.forEach((often, above) => {
    all.fill(least + above, end, end + often);
    end += often;
  });
}

function sortedWide(packs: readonly Pack[], count: number): At {
  const all = new BigInt64Array(count);
  let end = 0;
  for (const { width, bytes } of packs) {
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    for (let from = 0; from < bytes.length; from += width) {
      all[end] = readMicro(view, from, width);
      end += 1;
    }
  }
  all.sort();
  return (rank) => all[rank] ?? 0n;
}

function readMicro(view: DataView, from: number, width: Pack['width']): bigint {
  if (width === 8) return view.getBigInt64(from);
  return BigInt(width === 2 ? view.getInt16(from) : view.getInt32(from)) * HUNDREDTH;
}
