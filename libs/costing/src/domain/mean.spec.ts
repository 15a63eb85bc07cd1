import { describe, expect, it } from '@jest/globals';
import { formatMoney, money } from '#lib/measure';
import { meanMoney } from './mean.js';

describe('the average of costs', () => {
  it.each([
    ['10.00', 3, 10_000n, '3.33'],
    ['0.05', 2, 10_000n, '0.03'],
    ['101', 2, 1_000_000n, '51.00'],
    ['0', 4, 10_000n, '0.00'],
    ['0', 0, 10_000n, '0.00'],
  ])('of %s over %d is %s steps', (total, count, step, mean) => {
    expect(formatMoney(meanMoney(money(total), count, step))).toBe(mean);
  });
});
