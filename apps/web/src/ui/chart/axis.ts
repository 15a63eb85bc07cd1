import { formatQuantity, quantityFromMicro } from '#lib/measure';
import { drawnShare } from '../drawn.js';

/** An axis with marks at round values, in millionths of whatever it measures. */
export interface Axis {
  /** 0, or below it. */
  readonly start: bigint;
  readonly end: bigint;
  readonly marks: readonly bigint[];
}

export const ONE = 1_000_000n;

/** What an axis may look like: at most `most` steps, none finer than `finest`. */
interface Steps {
  readonly most?: number;
  /** `ONE` for what is counted in whole numbers. */
  readonly finest?: bigint;
}

/** From 0 to just beyond the largest value, in steps of 1, 2, 5, 10, …; to 1 when it is 0. */
export function axisTo(largest: bigint, steps: Steps = {}): Axis {
  return axisBetween(0n, largest > 0n ? largest : ONE, steps);
}

/** The same from below 0, where there are losses. */
export function axisBetween(lowest: bigint, highest: bigint, steps: Steps = {}): Axis {
  const low = lowest < 0n ? lowest : 0n;
  const high = highest > 0n || low < 0n ? highest : ONE;
  const above = high > 0n ? high : 0n;
  const step = stepFor(above - low, steps);
  const first = -((step - 1n - low) / step);
  const last = (above + step - 1n) / step;
  const marks = Array.from(
    { length: Number(last - first) + 1 },
    (_, i) => (first + BigInt(i)) * step,
  );
  return { start: first * step, end: last * step, marks };
}

function stepFor(width: bigint, { most = 5, finest = 1n }: Steps): bigint {
  let step = finest;
  for (let i = 0; width > step * BigInt(most); i += 1) {
    step = i % 3 === 1 ? (step * 5n) / 2n : step * 2n;
  }
  return step;
}

/** The largest of some values; 0 when there are none, or none is above it. */
export function largestOf(values: readonly bigint[]): bigint {
  return values.reduce((most, value) => (value > most ? value : most), 0n);
}

/** Without marks: from 0 to a little beyond the largest, so that what stands there is not cut off. */
export function bareAxis(values: readonly bigint[]): Axis {
  return { start: 0n, end: (largestOf(values) * 104n) / 100n || ONE, marks: [] };
}

/** Where a value stands on the axis, 0 to 1; only for drawing. */
export function placeOn(axis: Axis, value: bigint): number {
  return drawnShare(value - axis.start, axis.end - axis.start);
}

/** A mark as a plain decimal: '0.5', '20'. */
export function markText(mark: bigint): string {
  return formatQuantity(quantityFromMicro(mark));
}
