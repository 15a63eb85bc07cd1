import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  formatMoney,
  type Money,
  money,
  moneyFromMicro,
  type Quantity,
  quantity,
  quantityFromMicro,
} from '#lib/measure';
import { amountsOf, shareOf, type UsedMaterial, varianceOf } from './variance.js';

const of = (used: UsedMaterial) => {
  const { price, usage, total, sense } = varianceOf(amountsOf(used));
  return [formatMoney(price), formatMoney(usage), formatMoney(total), sense];
};

describe('published variances', () => {
  // OpenStax, Principles of Accounting, Volume 2: Managerial Accounting (2019), ch. 8.2: 8 units of
  // 0.85 for each of 11,000; 89,000 bought and used for 74,760.
  it('of Biglow: price -890, usage +850, together -40', () => {
    const used = {
      standardQuantity: quantity(String(8 * 11_000)),
      standardPrice: money('0.85'),
      actualQuantity: quantity('89000'),
      actualCost: money('74760'),
    };
    expect(of(used)).toEqual(['-890.00', '850.00', '-40.00', 'favourable']);
  });

  // The same chapter, one unit: 0.25 at 7.00 planned, 0.50 at 9.00 used.
  it('of one box: price 1.00, usage 1.75, together 2.75', () => {
    const used = {
      standardQuantity: quantity('0.25'),
      standardPrice: money('7'),
      actualQuantity: quantity('0.5'),
      actualCost: money('4.5'),
    };
    expect(of(used)).toEqual(['1.00', '1.75', '2.75', 'unfavourable']);
  });

  // Chapter 8.3, labour: 0.1 hours at 7.50 instead of 8.00; then 0.05 hours instead of 0.1.
  it('of labour: rate -0.05, time -0.40', () => {
    const hour = { standardPrice: money('8'), standardQuantity: quantity('0.1') };
    const rate = { ...hour, actualQuantity: quantity('0.1'), actualCost: money('0.75') };
    expect(of(rate)).toEqual(['-0.05', '0.00', '-0.05', 'favourable']);
    const time = { ...hour, actualQuantity: quantity('0.05'), actualCost: money('0.4') };
    expect(of(time)).toEqual(['0.00', '-0.40', '-0.40', 'favourable']);
  });
});

describe('variances of anything', () => {
  const amount = fc.bigInt({ min: 0n, max: 10n ** 13n });
  const any = fc.record({
    standardQuantity: amount.map(quantityFromMicro) as fc.Arbitrary<Quantity>,
    standardPrice: amount.map(moneyFromMicro) as fc.Arbitrary<Money>,
    actualQuantity: amount.map(quantityFromMicro) as fc.Arbitrary<Quantity>,
    actualCost: amount.map(moneyFromMicro) as fc.Arbitrary<Money>,
  });

  it('make up the whole difference, to the millionth', () => {
    const property = fc.property(fc.array(any, { minLength: 1 }), (list) => {
      const all = list.map(amountsOf);
      const sum = (key: 'actual' | 'atStandardPrice' | 'standard') =>
        moneyFromMicro(all.reduce((total, each) => total + each[key], 0n));
      const amounts = {
        actual: sum('actual'),
        atStandardPrice: sum('atStandardPrice'),
        standard: sum('standard'),
      };
      const { price, usage, total } = varianceOf(amounts);
      expect(amounts.actual - amounts.standard).toBe(price + usage);
      expect(total).toBe(price + usage);
      const single = all.map(varianceOf);
      expect(single.reduce((added, each) => added + each.price, 0n)).toBe(price);
      expect(single.reduce((added, each) => added + each.usage, 0n)).toBe(usage);
    });
    fc.assert(property);
  });

  it('are none where the recipe was kept at the standard price', () => {
    const property = fc.property(amount, amount, (q, p) => {
      const used = quantityFromMicro(q);
      const price = moneyFromMicro(p);
      const { standard } = amountsOf({
        standardQuantity: used,
        standardPrice: price,
        actualQuantity: used,
        actualCost: moneyFromMicro(0n),
      });
      expect(varianceOf({ actual: standard, atStandardPrice: standard, standard })).toEqual({
        price: 0n,
        usage: 0n,
        total: 0n,
        sense: 'none',
      });
    });
    fc.assert(property);
  });
});

describe('a share', () => {
  it('has four digits, a half up, and is none of nothing', () => {
    expect(shareOf(1n, 3n)).toBe(333_300n);
    expect(shareOf(1n, 20_000n)).toBe(100n);
    expect(shareOf(0n, 0n)).toBeNull();
  });
});
