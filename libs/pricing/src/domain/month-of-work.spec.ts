import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  type Money,
  minorStep,
  money,
  moneyFromMicro,
  quantity,
  quantityFromMicro,
} from '#lib/measure';
import { type KindOfWork, type MonthQuestion, monthOfWork } from './month-of-work.js';

// Numbers of OpenStax, Principles of Accounting, Volume 2: Managerial Accounting (2019).

const CENT = minorStep(2);

function kind(price: string, variable: string, number: bigint, minutes?: string): KindOfWork {
  return {
    price: money(price),
    variable: money(variable),
    number,
    minutes: minutes === undefined ? null : quantity(minutes),
  };
}

function month(fixed: string, kinds: readonly KindOfWork[], more: Partial<MonthQuestion> = {}) {
  const none = { targetProfit: money('0'), minutes: null, step: CENT };
  return monthOfWork({ kinds, fixed: money(fixed), ...none, ...more });
}

describe('a month of work', () => {
  it('leaves its contribution less fixed cost (ch. 3.1: 100 less 20, 500 units, 23,000)', () => {
    const found = month('23000', [kind('100', '20', 500n)]);
    expect(found.kinds[0]).toMatchObject({
      unit: money('80'),
      ratio: quantity('0.8'),
      total: money('40000'),
    });
    expect([found.contribution, found.income]).toEqual([money('40000'), money('17000')]);
  });

  it('needs so many for its fixed cost and a wished profit (ch. 3.2: 225 and 425)', () => {
    const sold = [kind('100', '20', 300n)];
    const found = month('18000', sold);
    expect([found.kinds[0]?.neededWhole, found.breakEvenRevenue]).toEqual([225n, money('22500')]);
    expect(found.income).toBe(money('6000'));
    expect(month('18000', [kind('100', '20', 175n)]).income).toBe(money('-4000'));
    const wished = month('18000', sold, { targetProfit: money('16000') });
    expect([wished.kinds[0]?.neededWhole, wished.breakEvenRevenue]).toEqual([425n, money('42500')]);
  });

  it('needs a mix in its proportions (ch. 3.4: 5, 3 and 2 of each bundle, 145,000)', () => {
    const mix = [kind('6.25', '3.25', 5n), kind('7.75', '4.5', 3n), kind('9.25', '6.25', 2n)];
    const found = month('145000', mix);
    // The book prints 23,577, 14,146 and 9,431 and 344,228 of revenue, from a rounded 4,715.45.
    const printed = [23_577n, 14_146n, 9_431n];
    found.kinds.forEach(({ needed, neededWhole }, i) => {
      const off = (neededWhole ?? 0n) - (printed[i] ?? 0n);
      expect(off === 0n || off === 1n).toBe(true);
      expect(Math.abs(Number(needed) / 1e6 - Number(printed[i]))).toBeLessThan(1);
    });
    expect(Math.abs(Number((found.breakEvenRevenue ?? 0n) - money('344228')))).toBeLessThan(20e6);
  });

  it('has a margin of safety and a leverage (ch. 3.5: 90 less 40, 2,500 units, 85,000)', () => {
    const found = month('85000', [kind('90', '40', 2500n)]);
    expect(found.kinds[0]?.neededWhole).toBe(1700n);
    expect(found).toMatchObject({
      breakEvenRevenue: money('153000'),
      safety: money('72000'),
      safetyShare: quantity('0.32'),
      // Contribution by income, the usual definition: 125,000 / 40,000.
      leverage: quantity('3.125'),
    });
  });

  // Ch. 10.6, corrected: the book prints 48 and 192 for the bookcase; 175 - 130 is 45, so 180.
  it('gives scarce hours to what earns most an hour (80,000 hours)', () => {
    const made = [
      kind('350', '165', 60_000n, '60'),
      kind('200', '145', 48_000n, '30'),
      kind('175', '130', 40_000n, '15'),
    ];
    const found = month('0', made, { minutes: quantity('4800000') });
    expect(found.kinds.map(({ perHour, rank, fits }) => [perHour, rank, fits])).toEqual([
      [money('185'), 1, quantity('60000')],
      [money('110'), 3, quantity('20000')],
      [money('180'), 2, quantity('40000')],
    ]);
    expect(found.minutes).toBe(quantity('5640000'));
  });

  it('says so when no number of it earns the fixed cost', () => {
    const found = month('100', [kind('20', '20', 5n), kind('5', '6', 1n)]);
    expect(found).toMatchObject({ breakEvenRevenue: null, safety: null, safetyShare: null });
    expect(found.kinds.map(({ neededWhole }) => neededWhole)).toEqual([null, null]);
    expect(month('0', [kind('0', '0', 1n)]).kinds[0]?.ratio).toBeNull();
    const untimed = { minutes: quantity('60') };
    expect(() => month('1', [kind('2', '1', 1n)], untimed)).toThrow(RangeError);
  });

  it('pays for itself with as many as it says, and not with one part in a thousand less', () => {
    const amount = fc.bigInt({ min: 1n, max: 10n ** 10n });
    const any = fc
      .tuple(amount, amount, fc.bigInt({ min: 1n, max: 200n }))
      .map(([variable, unit, number]) => ({
        price: moneyFromMicro(variable + unit),
        variable: moneyFromMicro(variable),
        number,
        minutes: null,
      }));
    fc.assert(
      fc.property(fc.array(any, { minLength: 1, maxLength: 5 }), amount, (kinds, fixed) => {
        const asked = { targetProfit: money('0'), minutes: null, step: CENT };
        const found = monthOfWork({ kinds, fixed: moneyFromMicro(fixed), ...asked });
        const left = (of: (i: number) => bigint) =>
          kinds.reduce((sum, { price, variable }, i) => sum + (price - variable) * of(i), 0n);
        expect(left((i) => found.kinds[i]?.neededWhole ?? 0n) >= fixed).toBe(true);
        // To six digits the exact numbers earn the fixed cost, give or take their own rounding.
        const exact = left((i) => found.kinds[i]?.needed ?? quantityFromMicro(0n));
        const rounding = kinds.reduce((sum, each) => sum + each.price, 0n);
        const off = exact - fixed * 1_000_000n;
        expect((off < 0n ? -off : off) <= rounding).toBe(true);
      }),
    );
  });

  it('adds up over its kinds', () => {
    const amount = fc.bigInt({ min: 0n, max: 10n ** 6n }).map((n) => moneyFromMicro(n * CENT));
    const any = fc.record({
      price: amount,
      variable: amount,
      number: fc.bigInt({ min: 0n, max: 1000n }),
      minutes: fc.constant(null),
    });
    fc.assert(
      fc.property(fc.array(any, { minLength: 1, maxLength: 6 }), amount, (kinds, fixed) => {
        const asked = { targetProfit: money('0'), minutes: null, step: CENT };
        const found = monthOfWork({ kinds, fixed, ...asked });
        const all = found.kinds.reduce((sum, { total }) => sum + total, 0n) as Money;
        expect(found.contribution).toBe(all);
        expect(found.income).toBe(all - fixed);
      }),
    );
  });
});
