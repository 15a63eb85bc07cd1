import { describe, expect, it } from '@jest/globals';
import { formatMoney, money } from '#lib/measure';
import { approvalLimits, expectedFreight } from './approval-limits.js';
import { daysLate, expectedDay } from './order-days.js';

const limits = (total: string, upTo: string | null, left: string | null) => {
  const { overLimit, overBudget, inTheWay } = approvalLimits({
    ...{ total: money(total), currency: 'EUR' },
    approveUpTo: upTo === null ? null : money(upTo),
    budgetLeft: left === null ? null : money(left),
  });
  const shown = (amount: typeof overLimit) => (amount === null ? null : formatMoney(amount));
  return [shown(overLimit), shown(overBudget), inTheWay !== null];
};

describe('what may be approved', () => {
  it.each([
    ['100.00', null, null, [null, null, false]],
    ['100.00', '100', '100', [null, null, false]],
    ['100.01', '100', null, ['0.01', null, true]],
    ['100.01', null, '100', [null, '0.01', true]],
    ['250.00', '100', '0', ['150.00', '250.00', true]],
    ['0.00', '0', '0', [null, null, false]],
  ])('%s with up to %s and %s left', (total, upTo, left, expected) => {
    expect(limits(total, upTo, left)).toEqual(expected);
  });

  it('charges freight until the goods are worth enough', () => {
    const freight = (goods: string, from: string | null) =>
      formatMoney(
        expectedFreight(money(goods), {
          ...{ freight: money('7.90'), freeFreightFrom: from === null ? null : money(from) },
        }),
      );
    expect([freight('149.99', '150'), freight('150', '150'), freight('999', null)]).toEqual([
      ...['7.90', '0.00', '7.90'],
    ]);
  });
});

describe('the days of an order', () => {
  const openWeekdays = [true, true, true, true, true, false, false];

  it('goes by working days, over a weekend and a closure', () => {
    const calendar = { openWeekdays, closedDays: new Set<number>() };
    // 2026-05-07 is a Thursday.
    expect(expectedDay('2026-05-07', 2, calendar)).toBe('2026-05-11');
    expect(expectedDay('2026-05-07', 0, calendar)).toBe('2026-05-07');
    const closedDays = new Set([Date.parse('2026-05-11T00:00:00Z') / 86_400_000]);
    expect(expectedDay('2026-05-07', 2, { openWeekdays, closedDays })).toBe('2026-05-12');
  });

  it('is late after more than the days of grace', () => {
    expect(daysLate('2026-05-07', '2026-05-09', 2)).toBeNull();
    expect(daysLate('2026-05-07', '2026-05-10', 2)).toBe(3);
    expect(daysLate('2026-05-07', '2026-05-07', 0)).toBeNull();
    expect(daysLate('2026-05-07', '2026-05-08', 0)).toBe(1);
  });
});
