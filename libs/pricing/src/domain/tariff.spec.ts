import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { formatMoney, minorStep, quantity, quantityFromMicro } from '#lib/measure';
import { feeByPoints } from './tariff.js';

const CENT = minorStep(2);
/** 5.62421 cents a point. */
const POINT = 5_624_210n;

function fee(points: string, factor: string, pointValue = POINT): string {
  return formatMoney(
    feeByPoints({ points: quantity(points), pointValue, factor: quantity(factor) }, CENT),
  );
}

// Gebuehrenordnung fuer Zahnaerzte (German federal ordinance, BGBl. 1987 I 2316, as of 2011), annex
// and s. 5(1): value of a point 5.62421 ct; the product with the factor is rounded, half up, once.
const PUBLISHED: readonly (readonly [string, string, string, string])[] = [
  ['30', '1.69', '3.88', '5.91'],
  ['60', '3.37', '7.76', '11.81'],
  ['65', '3.66', '8.41', '12.80'],
  ['213', '11.98', '27.55', '41.93'],
  ['242', '13.61', '31.30', '47.64'],
  ['297', '16.70', '38.42', '58.46'],
  ['319', '17.94', '41.26', '62.79'],
  ['527', '29.64', '68.17', '103.74'],
  ['556', '31.27', '71.92', '109.45'],
  ['642', '36.11', '83.05', '126.38'],
  ['770', '43.31', '99.60', '151.57'],
  ['104', '5.85', '13.45', '20.47'],
  ['130', '7.31', '16.82', '25.59'],
];

describe('a fee by points', () => {
  it.each(PUBLISHED)('of %s points is what the ordinance gives', (points, once, usual, most) => {
    expect([fee(points, '1'), fee(points, '2.3'), fee(points, '3.5')]).toEqual([once, usual, most]);
  });

  it('is rounded after the factor only: 297 points at 3.5 are 58.46, not 3.5 x 16.70', () => {
    expect(fee('297', '3.5')).toBe('58.46');
  });

  it('takes any value of a point and any coin', () => {
    expect(fee('41', '1', 120_000_000n)).toBe('49.20');
    const yen = { points: quantity('297'), pointValue: 700_000_000n, factor: quantity('1.5') };
    expect(formatMoney(feeByPoints(yen, minorStep(0)), 0)).toBe('3119');
  });

  it('is off the exact product by half a cent at most', () => {
    const micro = fc.bigInt({ min: 1n, max: 10_000_000_000n }).map(quantityFromMicro);
    fc.assert(
      fc.property(micro, micro, fc.bigInt({ min: 1n, max: 10n ** 9n }), (points, factor, value) => {
        const made = feeByPoints({ points, factor, pointValue: value }, CENT);
        const exact = points * factor * value;
        const off = made * 10n ** 14n - exact;
        expect(2n * (off < 0n ? -off : off) <= CENT * 10n ** 14n).toBe(true);
        expect(made % CENT).toBe(0n);
      }),
    );
  });
});
