import { describe, expect, it } from '@jest/globals';
import { formatMoney, minorStep, ZERO_MONEY } from '#lib/measure';
import { feeByPoints, roundedTooEarly } from './points.js';

const CENT = minorStep(2);
/** 5.62421 cents a point. */
const POINT = '0.0562421';

const made = (points: string, factor: string) =>
  feeByPoints({ points, factor, pointValue: POINT }, CENT);

// Gebuehrenordnung fuer Zahnaerzte (German federal ordinance, BGBl. 1987 I 2316, as of 2011), annex
// and s. 5(1): value of a point 5.62421 ct; the product with the factor is rounded, half up, once.
const PUBLISHED: readonly (readonly [string, string, string, string])[] = [
  ['65', '3.66', '8.41', '12.80'],
  ['297', '16.70', '38.42', '58.46'],
  ['527', '29.64', '68.17', '103.74'],
  ['770', '43.31', '99.60', '151.57'],
];

describe('a fee by points, while it is typed', () => {
  it.each(PUBLISHED)('of %s points is what the ordinance gives', (points, once, usual, most) => {
    const fees = ['1', '2.3', '3.5'].map((factor) =>
      formatMoney(made(points, factor)?.fee ?? ZERO_MONEY),
    );
    expect(fees).toEqual([once, usual, most]);
  });

  it('shows every digit of the product, and that it is rounded', () => {
    expect(made('297', '3.5')).toMatchObject({ exact: '58.46366295', rounded: true });
    expect(feeByPoints({ points: '41', factor: '1', pointValue: '1.2' }, CENT)).toMatchObject({
      exact: '49.2',
      rounded: false,
    });
  });

  it('says what rounding before the factor would give: 3.5 x 16.70', () => {
    const early = roundedTooEarly({ points: '297', factor: '3.5', pointValue: POINT }, CENT);
    expect(early === undefined ? early : formatMoney(early)).toBe('58.45');
  });

  it.each([
    ['', '1', '1'],
    ['1', 'x', '1'],
    ['1', '0.000000001', '1'],
    ['0', '1', '1'],
  ])('is nothing as long as a part is missing (%s, %s, %s)', (points, pointValue, factor) => {
    expect(feeByPoints({ points, pointValue, factor }, CENT)).toBeUndefined();
  });
});
