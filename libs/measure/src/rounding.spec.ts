import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  formatMoney,
  minorStep,
  money,
  moneyFromMicro,
  multiplyQuantity,
  multiplyRatio,
  quantity,
  type RoundingMode,
  roundTo,
} from './index.js';

const MODES: readonly RoundingMode[] = ['half-up', 'half-even', 'down', 'up'];
const mode = fc.constantFrom(...MODES);
const whole = fc.bigInt({ min: -(10n ** 18n), max: 10n ** 18n });
const positive = fc.bigInt({ min: 1n, max: 10n ** 12n });

const size = (n: bigint) => (n < 0n ? -n : n);

describe('rounding a ratio', () => {
  // In the order of MODES.
  it.each<[bigint, bigint, bigint[]]>([
    [5n, 2n, [3n, 2n, 2n, 3n]],
    [7n, 2n, [4n, 4n, 3n, 4n]],
    [-5n, 2n, [-3n, -2n, -2n, -3n]],
    [-7n, 2n, [-4n, -4n, -3n, -4n]],
    [1n, 2n, [1n, 0n, 0n, 1n]],
    [-1n, 2n, [-1n, 0n, 0n, -1n]],
    [7n, 3n, [2n, 2n, 2n, 3n]],
    [8n, 3n, [3n, 3n, 2n, 3n]],
    [6n, 3n, [2n, 2n, 2n, 2n]],
    [0n, 3n, [0n, 0n, 0n, 0n]],
    [5n, -2n, [-3n, -2n, -2n, -3n]],
    [-5n, -2n, [3n, 2n, 2n, 3n]],
    [0n, -2n, [0n, 0n, 0n, 0n]],
  ])('rounds %s/%s in each mode', (value, denominator, expected) => {
    expect(MODES.map((m) => multiplyRatio(value, 1n, denominator, m))).toEqual(expected);
  });

  it('rounds once, after multiplying', () => {
    expect(multiplyRatio(1n, 3n, 2n, 'half-up')).toBe(2n);
    expect(multiplyRatio(10n ** 17n + 1n, 10n ** 17n, 10n ** 17n, 'down')).toBe(10n ** 17n + 1n);
  });

  it('refuses to divide by zero', () => {
    expect(() => multiplyRatio(1n, 1n, 0n, 'down')).toThrow(RangeError);
  });
});

describe('rounding to a step', () => {
  // GOZ (German federal ordinance, BGBl. 1987 I 2316, as of 2011), s. 5(1): number 2090, 297 points
  // of 5.62421 cents, times 3.5, is 58.46; rounded before the factor it would be 58.45.
  it('rounds a fee once, at the end', () => {
    const fee = multiplyRatio(297n, 562_421n * 35n, 100n, 'half-up');
    expect(formatMoney(moneyFromMicro(fee), 2)).toBe('58.46');
    const simple = roundTo(multiplyRatio(297n, 562_421n, 10n, 'half-up'), minorStep(2), 'half-up');
    expect(formatMoney(moneyFromMicro(multiplyRatio(simple, 35n, 10n, 'half-up')), 2)).toBe(
      '58.45',
    );
  });

  // Scotland, dental charges regulations 2003: the patient pays 80 % rounded down to the penny. The
  // fee of 15.90 and its share are published (medium confidence); 15.99 is computed.
  it('rounds a share down to the penny', () => {
    const share = multiplyRatio(money('15.90'), 80n, 100n, 'down');
    expect(roundTo(share, minorStep(2), 'down')).toBe(money('12.72'));
    const odd = multiplyRatio(money('15.99'), 80n, 100n, 'down');
    expect(roundTo(odd, minorStep(2), 'down')).toBe(money('12.79'));
  });

  it.each<[string, RoundingMode, string]>([
    ['0.125', 'half-up', '0.13'],
    ['0.125', 'half-even', '0.12'],
    ['0.135', 'half-even', '0.14'],
    ['-0.125', 'half-up', '-0.13'],
    ['0.129999', 'down', '0.12'],
    ['0.120001', 'up', '0.13'],
    ['-0.120001', 'up', '-0.13'],
  ])('rounds %s %s to the cent', (from, how, to) => {
    expect(roundTo(money(from), minorStep(2), how)).toBe(money(to));
  });

  it('has a step for every number of digits a currency is paid in', () => {
    expect(([0, 1, 2, 3] as const).map(minorStep)).toEqual([1_000_000n, 100_000n, 10_000n, 1_000n]);
  });

  it.each([0n, -1n])('refuses the step %s', (step) => {
    expect(() => roundTo(1n, step, 'down')).toThrow(RangeError);
  });
});

describe('multiplying quantities', () => {
  it.each<[string, string, RoundingMode, string]>([
    ['0.06', '1.5', 'half-up', '0.09'],
    ['0.001', '0.0005', 'half-up', '0.000001'],
    ['0.001', '0.0005', 'half-even', '0'],
    ['0.001', '0.0015', 'half-even', '0.000002'],
    ['-0.001', '0.0005', 'half-up', '-0.000001'],
    ['0.333333', '3', 'down', '0.999999'],
    ['4', '0.97', 'half-up', '3.88'],
  ])('%s times %s, %s', (a, b, how, product) => {
    expect(multiplyQuantity(quantity(a), quantity(b), how)).toBe(quantity(product));
  });
});

describe('rounding anything', () => {
  it('stays within one of the exact ratio, and within a half when to the nearest', () => {
    fc.assert(
      fc.property(whole, whole, positive, mode, (value, numerator, denominator, how) => {
        const error = size(
          multiplyRatio(value, numerator, denominator, how) * denominator - value * numerator,
        );
        expect(error < denominator).toBe(true);
        if (how === 'half-up' || how === 'half-even') {
          expect(2n * error <= denominator).toBe(true);
        }
      }),
    );
  });

  it('treats an amount owed back like the same amount owed', () => {
    fc.assert(
      fc.property(whole, whole, positive, mode, (value, numerator, denominator, how) => {
        const there = multiplyRatio(value, numerator, denominator, how);
        expect(multiplyRatio(-value, numerator, denominator, how)).toBe(-there);
        expect(multiplyRatio(value, -numerator, -denominator, how)).toBe(there);
      }),
    );
  });

  it('gives a multiple of the step and leaves one alone', () => {
    fc.assert(
      fc.property(whole, positive, mode, (value, step, how) => {
        const rounded = roundTo(value, step, how);
        expect(rounded % step).toBe(0n);
        expect(roundTo(rounded, step, how)).toBe(rounded);
        expect(size(roundTo(value, step, 'down')) <= size(value)).toBe(true);
        expect(size(roundTo(value, step, 'up')) >= size(value)).toBe(true);
      }),
    );
  });

  it('keeps the order of two values', () => {
    fc.assert(
      fc.property(whole, whole, positive, mode, (a, b, step, how) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        expect(roundTo(low, step, how) <= roundTo(high, step, how)).toBe(true);
      }),
    );
  });
});
