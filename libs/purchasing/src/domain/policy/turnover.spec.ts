import { expect, it } from '@jest/globals';
import { money, quantity } from '#lib/measure';
import { carryingValue, stockTurnover } from './turnover.js';

it('turns the stock over', () => {
  // OpenStax, Principles of Accounting, Volume 1 (2019), ch. 10.5: 1.19 times, 306.79 days (the
  // book divides by a rounded daily cost of 19.73; exactly 306.83).
  const { turnover, days } = stockTurnover({
    costOfUse: money('7200'),
    opening: money('3150'),
    closing: money('8955'),
    days: 365,
  });
  expect(turnover).toBeCloseTo(1.1895910780669146, 9);
  expect(days).toBeCloseTo(306.828125, 9);
  expect(Math.abs((days ?? 0) - 306.79)).toBeLessThan(0.05);
});

it('has no turnover without stock and no days without use', () => {
  const zero = money('0');
  const nothing = { costOfUse: zero, opening: zero, closing: zero, days: 30 };
  expect(stockTurnover(nothing)).toEqual({ turnover: null, days: null });
  expect(stockTurnover({ ...nothing, opening: money('5') })).toEqual({ turnover: 0, days: null });
  expect(() => stockTurnover({ ...nothing, days: 0 })).toThrow('days');
  expect(() => stockTurnover({ ...nothing, opening: money('-1') })).toThrow('opening');
});

it('carries each lot at the lower of cost and what it would bring', () => {
  // IAS 2, paragraphs 9 and 28 to 33 (rule; figures computed): 236 carried in all.
  const lots = [
    ['10', '12', '15'],
    ['8', '20', '14.5'],
    ['5', '9', '0'],
    ['5', '9', '-1'],
  ].map(([n = '', cost = '', worth = '']) =>
    carryingValue({ quantity: quantity(n), unitCost: money(cost), netRealisable: money(worth) }),
  );
  expect(lots.map((lot) => lot.carrying)).toEqual(['120', '116', '0', '0'].map(money));
  expect(lots.map((lot) => lot.writeDown)).toEqual(['0', '44', '45', '45'].map(money));
});
