import { drawnShare } from '../../ui/drawn.js';

/** Where the marks of a money axis stand, from 0 to just beyond the largest value. */
export interface Axis {
  /** 0, or below it. */
  readonly start: bigint;
  readonly end: bigint;
  readonly marks: readonly bigint[];
}

const UNIT = 1_000_000n;

/** Round steps (1, 2, 5, 10, …), at most `most` of them. */
export function axisTo(largest: bigint, most = 5): Axis {
  let step = UNIT / 100n;
  for (let i = 0; largest > step * BigInt(most); i += 1) {
    step = i % 3 === 1 ? (step * 5n) / 2n : step * 2n;
  }
  const count = largest === 0n ? 1n : (largest + step - 1n) / step;
  const marks = Array.from({ length: Number(count) + 1 }, (_, i) => step * BigInt(i));
  return { start: 0n, end: step * count, marks };
}

/** The same from below 0, where there are losses. */
export function axisBetween(lowest: bigint, highest: bigint, most = 5): Axis {
  const low = lowest < 0n ? lowest : 0n;
  const high = highest > 0n ? highest : 0n;
  const [, step = UNIT] = axisTo(high - low, most).marks;
  const below = (step - 1n - low) / step;
  const above = (high + step - 1n) / step;
  const count = below + above || 1n;
  const start = -below * step;
  const marks = Array.from({ length: Number(count) + 1 }, (_, i) => start + step * BigInt(i));
  return { start, end: marks.at(-1) ?? step, marks };
}

/** Where a value stands on the axis, 0 to 1; only for drawing. */
export function placeOn(axis: Axis, value: bigint): number {
  return drawnShare(value - axis.start, axis.end - axis.start);
}
