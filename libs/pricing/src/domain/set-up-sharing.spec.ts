import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  cappedEqualShares,
  equalShares,
  incrementShares,
  proportionalShares,
  shapleyShares,
  worseOffThanAlone,
} from './set-up-sharing.js';

const dearest = (alone: readonly bigint[]) => alone.reduce((a, b) => (a > b ? a : b), 0n);
const total = (shares: readonly bigint[]) => shares.reduce((a, b) => a + b, 0n);

describe('a joint set-up cost', () => {
  // Rule of Littlechild & Owen (1973), Management Science 20(3): costs 6, 12 and 42 are shared
  // 2, 5 and 35.
  it('is shared by increments', () => {
    expect(incrementShares([6n, 12n, 42n])).toEqual([2n, 5n, 35n]);
    expect(incrementShares([42n, 6n, 12n])).toEqual([35n, 2n, 5n]);
  });

  it('is shared in proportion, or equally', () => {
    expect(proportionalShares(420n, [60n, 120n, 420n])).toEqual([42n, 84n, 294n]);
    expect(equalShares(42n, 3)).toEqual([14n, 14n, 14n]);
    expect(worseOffThanAlone(equalShares(42n, 3), [6n, 12n, 42n])).toEqual([0, 1]);
    expect(cappedEqualShares(42n, [6n, 12n, 42n])).toEqual([6n, 12n, 24n]);
    expect(cappedEqualShares(15n, [6n, 12n, 42n])).toEqual([5n, 5n, 5n]);
    expect(() => cappedEqualShares(61n, [6n, 12n, 42n])).toThrow(RangeError);
  });

  it('of any kind has a Shapley value', () => {
    // Three who need a pair of gloves each (2) and together one dam (9).
    const costOf = (group: readonly number[]) => BigInt(group.length * 2 + 9);
    expect(shapleyShares(3, costOf)).toEqual([5n, 5n, 5n]);
    expect(shapleyShares(0, costOf)).toEqual([]);
    expect(() => shapleyShares(13, costOf)).toThrow(RangeError);
  });

  const amounts = fc.array(fc.bigInt({ min: 0n, max: 10_000_000n }), {
    minLength: 1,
    maxLength: 6,
  });

  it('is shared out in full, and nobody would rather be alone', () => {
    fc.assert(
      fc.property(amounts, fc.bigInt({ min: 0n, max: 100n }), (alone, percent) => {
        const least = dearest(alone);
        const joint = least + ((total(alone) - least) * percent) / 100n;
        for (const shares of [proportionalShares(joint, alone), cappedEqualShares(joint, alone)]) {
          expect(total(shares)).toBe(joint);
          expect(worseOffThanAlone(shares, alone)).toEqual([]);
        }
        expect(total(equalShares(joint, alone.length))).toBe(joint);
        expect(total(incrementShares(alone))).toBe(least);
        expect(worseOffThanAlone(incrementShares(alone), alone)).toEqual([]);
      }),
    );
  });

  it('is shared by increments as all orders of joining would share it', () => {
    fc.assert(
      fc.property(amounts, (alone) => {
        const costOf = (group: readonly number[]) => dearest(group.map((i) => alone[i] ?? 0n));
        expect(shapleyShares(alone.length, costOf)).toEqual(incrementShares(alone));
      }),
    );
  });
});
