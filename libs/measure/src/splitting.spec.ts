import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { minorStep, roundKeepingSum, roundTo, splitLargestRemainder } from './index.js';

const total = (list: readonly bigint[]) => list.reduce((a, b) => a + b, 0n);
const size = (n: bigint) => (n < 0n ? -n : n);

const step = fc.constantFrom(1n, 10n, 1_000n, 10_000n, 1_000_000n);
const steps = fc.bigInt({ min: -(10n ** 9n), max: 10n ** 9n });
const weights = fc.array(fc.oneof(fc.constant(0n), fc.bigInt({ min: 0n, max: 10n ** 12n })), {
  minLength: 1,
  maxLength: 12,
});
const values = fc.array(fc.bigInt({ min: -(10n ** 9n), max: 10n ** 9n }), { maxLength: 12 });

describe('splitting by largest remainder', () => {
  it.each<[bigint, bigint[], bigint[]]>([
    [10n, [1n, 1n, 1n], [4n, 3n, 3n]],
    [11n, [1n, 1n, 1n], [4n, 4n, 3n]],
    [10n, [3n, 3n, 1n], [4n, 4n, 2n]],
    [100n, [1n, 2n], [33n, 67n]],
    [1n, [1n, 1n], [1n, 0n]],
    [1n, [1n, 2n], [0n, 1n]],
    [0n, [1n, 2n], [0n, 0n]],
    [7n, [5n], [7n]],
    [7n, [0n], [7n]],
    [5n, [0n, 0n], [3n, 2n]],
    [5n, [0n, 1n, 0n, 1n], [0n, 3n, 0n, 2n]],
    [-10n, [1n, 1n, 1n], [-4n, -3n, -3n]],
    [-1n, [1n, 2n], [0n, -1n]],
    [0n, [], []],
  ])('splits %s over %p', (amount, over, shares) => {
    expect(splitLargestRemainder(amount, over)).toEqual(shares);
  });

  it('splits in whole steps', () => {
    expect(splitLargestRemainder(10_000_000n, [1n, 1n, 1n], minorStep(2))).toEqual([
      3_340_000n,
      3_330_000n,
      3_330_000n,
    ]);
  });

  it('refuses what cannot be split', () => {
    expect(() => splitLargestRemainder(1n, [])).toThrow(RangeError);
    expect(() => splitLargestRemainder(1n, [2n, -1n])).toThrow(RangeError);
    expect(() => splitLargestRemainder(15n, [1n], 10n)).toThrow(RangeError);
    expect(() => splitLargestRemainder(1n, [1n], 0n)).toThrow(RangeError);
    expect(() => splitLargestRemainder(1n, [1n], -1n)).toThrow(RangeError);
  });

  it('adds up to the total, by whole steps, with its sign', () => {
    fc.assert(
      fc.property(steps, weights, step, (n, over, by) => {
        const shares = splitLargestRemainder(n * by, over, by);
        expect(total(shares)).toBe(n * by);
        for (const share of shares) {
          expect(share % by).toBe(0n);
          expect(share * n >= 0n).toBe(true);
        }
      }),
    );
  });

  it('puts no share off its exact part by a whole step', () => {
    fc.assert(
      fc.property(steps, weights, step, (n, over, by) => {
        const parts = total(over) === 0n ? over.map(() => 1n) : over;
        const whole = total(parts);
        splitLargestRemainder(n * by, over, by).forEach((share, i) => {
          expect(size(share * whole - n * by * (parts[i] ?? 0n)) < by * whole).toBe(true);
        });
      }),
    );
  });

  it('gives nothing to a zero weight beside others, and never less to a larger weight', () => {
    fc.assert(
      fc.property(steps, weights, (n, over) => {
        fc.pre(total(over) > 0n);
        const shares = splitLargestRemainder(size(n), over).map((share, i) => ({
          share,
          weight: over[i] ?? 0n,
        }));
        for (const a of shares) {
          if (a.weight === 0n) expect(a.share).toBe(0n);
          for (const b of shares) if (a.weight > b.weight) expect(a.share >= b.share).toBe(true);
        }
      }),
    );
  });

  it('splits a negative total like the positive one', () => {
    fc.assert(
      fc.property(steps, weights, step, (n, over, by) => {
        const mirrored = splitLargestRemainder(-n * by, over, by).map((share) => -share);
        expect(mirrored).toEqual(splitLargestRemainder(n * by, over, by));
      }),
    );
  });

  it('does not care for the order of the weights where no two lost the same', () => {
    const shuffledWeights = weights.chain((list) =>
      fc.tuple(
        fc.constant(list),
        fc.shuffledSubarray(
          list.map((_, i) => i),
          { minLength: list.length, maxLength: list.length },
        ),
      ),
    );
    fc.assert(
      fc.property(steps, shuffledWeights, (n, [over, order]) => {
        const whole = total(over);
        fc.pre(whole > 0n);
        const lost = over.map((weight) => (size(n) * weight) % whole).filter((rest) => rest > 0n);
        fc.pre(new Set(lost).size === lost.length);
        const shares = splitLargestRemainder(n, over);
        const shuffled = splitLargestRemainder(
          n,
          order.map((i) => over[i] ?? 0n),
        );
        expect(shuffled).toEqual(order.map((i) => shares[i]));
      }),
    );
  });
});

describe('rounding figures so that they add up', () => {
  it.each<[bigint[], bigint[]]>([
    [[], []],
    [[14n], [10n]],
    [[15n], [20n]],
    [
      [33n, 33n, 34n],
      [30n, 30n, 40n],
    ],
    [
      [4n, 4n, 4n],
      [10n, 0n, 0n],
    ],
    [
      [5n, 5n],
      [10n, 0n],
    ],
    [
      [4n, 6n],
      [0n, 10n],
    ],
    [
      [10n, 20n, 30n],
      [10n, 20n, 30n],
    ],
    [
      [-33n, -33n, -34n],
      [-30n, -30n, -40n],
    ],
    [
      [-4n, -4n, -4n],
      [-10n, 0n, 0n],
    ],
    [
      [-12n, 15n],
      [-10n, 10n],
    ],
    [
      [4n, -4n],
      [0n, 0n],
    ],
    [[-15n], [-20n]],
  ])('rounds %p to tens', (exact, rounded) => {
    expect(roundKeepingSum(exact, 10n)).toEqual(rounded);
  });

  it('refuses a step that is not positive', () => {
    expect(() => roundKeepingSum([1n], 0n)).toThrow(RangeError);
    expect(() => roundKeepingSum([1n], -10n)).toThrow(RangeError);
  });

  it('adds up to the rounded sum, with no value off by a step or changed in sign', () => {
    fc.assert(
      fc.property(values, step, (exact, by) => {
        const rounded = roundKeepingSum(exact, by);
        expect(total(rounded)).toBe(roundTo(total(exact), by, 'half-up'));
        expect(rounded).toHaveLength(exact.length);
        rounded.forEach((value, i) => {
          const before = exact[i] ?? 0n;
          expect(value % by).toBe(0n);
          expect(size(value - before) < by).toBe(true);
          expect(value * before >= 0n).toBe(true);
        });
      }),
    );
  });

  it('leaves what is rounded already alone', () => {
    fc.assert(
      fc.property(values, step, (exact, by) => {
        const rounded = roundKeepingSum(exact, by);
        expect(roundKeepingSum(rounded, by)).toEqual(rounded);
      }),
    );
  });

  it('rounds amounts owed back like the same amounts owed', () => {
    fc.assert(
      fc.property(values, step, (exact, by) => {
        fc.pre(total(exact) !== 0n);
        const mirrored = roundKeepingSum(
          exact.map((value) => -value),
          by,
        );
        expect(mirrored.map((value) => -value)).toEqual(roundKeepingSum(exact, by));
      }),
    );
  });
});
