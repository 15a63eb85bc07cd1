/** Where the marks of a money axis stand, from 0 to just beyond the largest value. */
export interface Axis {
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
  return { end: step * count, marks };
}
