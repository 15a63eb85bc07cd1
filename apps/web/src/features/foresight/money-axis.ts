import { drawnShare } from '../../ui/drawn.js';

/** Marks of an axis from 0 to just beyond the largest value, in millionths. */
export interface Axis {
  readonly end: bigint;
  readonly marks: readonly bigint[];
}

const UNIT = 1_000_000n;
const HUNDREDTH = UNIT / 100n;

/** Round steps (1, 2, 5, 10, …), at most `most` of them. */
export function axisUpTo(largest: bigint, most = 4): Axis {
  if (largest <= 0n) return { end: UNIT, marks: [0n, UNIT] };
  let step = HUNDREDTH;
  for (let i = 0; largest > step * BigInt(most); i += 1) {
    step = i % 3 === 1 ? (step * 5n) / 2n : step * 2n;
  }
  const count = (largest + step - 1n) / step;
  const marks = Array.from({ length: Number(count) + 1 }, (_, i) => step * BigInt(i));
  return { end: step * count, marks };
}

/** Where a value stands on the axis, 0 to 1; only for drawing. */
export const placeOn = ({ end }: Axis, value: bigint): number => drawnShare(value, end);
