import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { micro } from '../drawn.js';
import { axisBetween, axisTo, bareAxis, markText, ONE, placeOn } from './axis.js';

describe('an axis', () => {
  it.each([
    ['0', '1', 6],
    ['0.05', '0.05', 6],
    ['9.99', '10', 6],
    ['40.15', '50', 6],
    ['100', '100', 6],
    ['1234.5', '1500', 4],
    ['0.000001', '0.000001', 2],
  ])('to %s ends at %s', (largest, end, marks) => {
    const axis = axisTo(micro(largest));
    expect(axis.end).toBe(micro(end));
    expect(axis.marks).toHaveLength(marks);
    expect(axis.marks.at(-1)).toBe(axis.end);
  });

  it.each([
    ['-3', '9', '-5', '10'],
    ['0', '9.99', '0', '10'],
    ['-0.5', '0', '-0.5', '0'],
    ['0', '0', '0', '1'],
    ['5', '9.99', '0', '10'],
  ])('from %s to %s stands between %s and %s, with zero among its marks', (...texts) => {
    const [low = 0n, high = 0n, start, end] = texts.map(micro);
    const axis = axisBetween(low, high);
    expect([axis.start, axis.end]).toEqual([start, end]);
    expect(axis.marks).toContain(0n);
    expect([axis.marks[0], axis.marks.at(-1)]).toEqual([start, end]);
    expect([placeOn(axis, axis.start), placeOn(axis, axis.end)]).toEqual([0, 1]);
  });

  it('of what is counted has whole marks', () => {
    expect(axisTo(ONE, { most: 4, finest: ONE }).marks.map(markText)).toEqual(['0', '1']);
    expect(axisTo(3n * ONE, { most: 4, finest: ONE }).marks.map(markText)).toHaveLength(4);
    expect(axisTo(ONE / 2n, { most: 4 }).marks.map(markText)).toEqual(['0', '0.2', '0.4', '0.6']);
  });

  it('without marks leaves a little room beyond the largest value', () => {
    expect(bareAxis([micro('5'), micro('2')])).toEqual({ start: 0n, end: micro('5.2'), marks: [] });
    expect(bareAxis([]).end).toBe(ONE);
  });

  it('holds every value between its ends, on few even round steps', () => {
    const value = fc.bigInt({ min: -(10n ** 15n), max: 10n ** 15n });
    fc.assert(
      fc.property(value, value, fc.integer({ min: 2, max: 8 }), (a, b, most) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        const { start, end, marks } = axisBetween(low, high, { most });
        const [, second = 0n] = marks;
        const step = second - start;
        expect(start <= low && high <= end).toBe(true);
        // The part below zero and the part above it each end on a mark: one step more at most.
        expect(marks.length).toBeLessThanOrEqual(most + 2);
        expect(marks).toEqual(marks.map((_, i) => start + step * BigInt(i)));
        expect(String(step)).toMatch(/^[125]0*$/);
      }),
    );
  });
});
