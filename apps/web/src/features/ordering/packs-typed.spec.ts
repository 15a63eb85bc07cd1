import { describe, expect, it } from '@jest/globals';
import type { Basket, Proposal } from './api/list-proposals.js';
import { packsTyped } from './packs-typed.js';
import { basketSums, formatSum, meanPackPrice, packsPrice } from './price-of.js';

const offer = {
  ...{ id: 'box', name: 'Box of 20', packContent: '20', minimumPacks: 2 },
  discount: 'all units' as const,
  prices: [
    { fromPacks: 1, packPrice: '46.00' },
    { fromPacks: 10, packPrice: '40.00' },
  ],
};
const line = { packs: 4, presentation: offer } as Proposal;

describe('packs that somebody typed', () => {
  it('are a whole number that the supplier sends, or none at all', () => {
    const typed = (text?: string) => packsTyped(line, text);
    expect([undefined, '0', '2', ' 12 '].map(typed)).toEqual([4, 0, 2, 12]);
    expect(['1', '', '2.5', '-2', 'two', '1000000'].map(typed)).toEqual(
      Array.from({ length: 6 }, () => undefined),
    );
  });
});

describe('the price of packs', () => {
  it('is that of the number reached, or of each step', () => {
    const steps = { ...offer, discount: 'incremental' as const };
    expect([9, 10].map((n) => formatSum(packsPrice(offer, n) ?? 0n))).toEqual(['414.00', '400.00']);
    // Nine at 46.00, the rest at 40.00.
    expect(formatSum(packsPrice(steps, 12) ?? 0n)).toBe('534.00');
    expect([meanPackPrice(steps, 12), meanPackPrice(offer, 0)]).toEqual(['44.50', null]);
    expect(packsPrice({ ...offer, prices: [] }, 3)).toBeNull();
  });

  it('adds up with the freight, which large orders do not pay', () => {
    const basket = {
      ...{ lines: [line, line], usualFreight: '7.90', freeFreightFrom: '400' },
      minimumOrder: '100',
    } as Basket;
    const of = (packs: readonly number[]) => {
      const { goods, freight, total, missing } = basketSums(basket, (i) => packs[i] ?? 0);
      return [goods, freight, total, missing].map(formatSum);
    };
    expect(of([4, 2])).toEqual(['276.00', '7.90', '283.90', '0.00']);
    expect(of([10, 0])).toEqual(['400.00', '0.00', '400.00', '0.00']);
    expect(of([2, 0])).toEqual(['92.00', '7.90', '99.90', '8.00']);
    expect(of([0, 0])).toEqual(['0.00', '0.00', '0.00', '100.00']);
  });
});
