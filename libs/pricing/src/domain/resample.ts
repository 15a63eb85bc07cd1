import { type Money, moneyFromMicro } from '#lib/measure';

/** Fewer recorded ones than this give no range. */
export const FEWEST_RECORDED = 5;
const DRAWS = 2000;

export interface Range {
  readonly p10: Money;
  readonly p50: Money;
  readonly p90: Money;
}

/**
 * What the sum of several costs comes to, by resampling: each draw takes one recorded cost of every
 * kind at random, with replacement. The same seed gives the same range. Null where a kind has fewer
 * recorded costs than `FEWEST_RECORDED`.
 */
export function resample(
  recorded: readonly (readonly Money[])[],
  seed: number,
  draws: number = DRAWS,
): Range | null {
  if (recorded.length === 0 || recorded.some((costs) => costs.length < FEWEST_RECORDED))
    return null;
  const next = generator(seed);
  const sums: bigint[] = [];
  for (let draw = 0; draw < draws; draw += 1) {
    let sum = 0n;
    for (const costs of recorded) sum += costs[Math.floor(next() * costs.length)] ?? 0n;
    sums.push(sum);
  }
  sums.sort((a, b) => {
    if (a === b) return 0;
    return a < b ? -1 : 1;
  });
  const at = (percent: number) =>
    moneyFromMicro(sums[Math.ceil((percent * draws) / 100) - 1] ?? 0n);
  return { p10: at(10), p50: at(50), p90: at(90) };
}

/** A small generator of numbers from 0 to below 1 (mulberry32): even enough, and repeatable. */
function generator(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
