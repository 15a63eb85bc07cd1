import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  formatMoney,
  minorStep,
  money,
  moneyFromMicro,
  quantity,
  quantityFromMicro,
  spreadOverLines,
  sum,
} from './index.js';

const CENT = minorStep(2);

const line = (count: string, value: string, weight = '1') => ({
  quantity: quantity(count),
  value: money(value),
  weight: quantity(weight),
});

describe('spreading freight', () => {
  // Published: AAT (Association of Accounting Technicians) student forum, worked answer
  // "Freight/Carriage In": carriage of 750 over 20 at 50, 30 at 75 and 40 at 100 (rate 0.10344;
  // 55.17 and 82.76 a piece). The third line is computed.
  it('by value gives the published landed cost', () => {
    const lines = [line('20', '1000'), line('30', '2250'), line('40', '4000')];
    const spread = spreadOverLines(money('750'), lines, 'value', CENT);
    expect(spread.map((part) => formatMoney(part))).toEqual(['103.45', '232.76', '413.79']);
    const landed = lines.map((each, i) => moneyFromMicro(each.value + (spread[i] ?? 0n)));
    expect(landed.map((total) => formatMoney(total))).toEqual(['1103.45', '2482.76', '4413.79']);
    expect(sum(landed)).toBe(money('8000'));
    const pieces = [20n, 30n].map((n, i) => moneyFromMicro((landed[i] ?? 0n) / n));
    expect(pieces.map((each) => formatMoney(each, 2))).toEqual(['55.17', '82.76']);
  });

  // Computed by hand: largest remainder, ties to the earlier line.
  it.each([
    ['weight', ['3.34', '3.33', '3.33']],
    ['quantity', ['4.29', '4.28', '1.43']],
    ['value', ['6.25', '3.13', '0.62']],
  ] as const)('by %s keeps the sum to the cent', (key, parts) => {
    const lines = [line('3', '100'), line('3', '50'), line('1', '10')];
    const spread = spreadOverLines(money('10'), lines, key, CENT);
    expect(spread.map((part) => formatMoney(part))).toEqual(parts);
  });

  it('takes a discount as a negative amount', () => {
    const lines = [line('1', '1'), line('1', '2')];
    const spread = spreadOverLines(money('-1'), lines, 'value', CENT);
    expect(spread).toEqual([money('-0.33'), money('-0.67')]);
  });

  it('goes over the lines alike when all are free samples', () => {
    const lines = [line('1', '0'), line('5', '0')];
    expect(spreadOverLines(money('3'), lines, 'value', CENT)).toEqual(['1.5', '1.5'].map(money));
  });

  it('refuses freight finer than the step, and freight without lines', () => {
    expect(() => spreadOverLines(money('0.001'), [line('1', '1')], 'value', CENT)).toThrow(
      RangeError,
    );
    expect(() => spreadOverLines(money('1'), [], 'value', CENT)).toThrow(RangeError);
    expect(spreadOverLines(money('0'), [], 'value', CENT)).toEqual([]);
  });

  it('always adds up to the freight', () => {
    const figure = fc.bigInt({ min: 0n, max: 10n ** 12n });
    const anyLine = fc.record({
      value: figure.map(moneyFromMicro),
      quantity: figure.map(quantityFromMicro),
      weight: figure.map(quantityFromMicro),
    });
    fc.assert(
      fc.property(
        fc.bigInt({ min: 0n, max: 10n ** 8n }),
        fc.array(anyLine, { minLength: 1, maxLength: 10 }),
        fc.constantFrom('value' as const, 'quantity' as const, 'weight' as const),
        (cents, lines, key) => {
          const amount = moneyFromMicro(cents * CENT);
          const spread = spreadOverLines(amount, lines, key, CENT);
          expect(sum(spread)).toBe(amount);
          expect(spread).toHaveLength(lines.length);
          expect(spread.every((part) => part >= 0n)).toBe(true);
        },
      ),
    );
  });
});
