import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  allUnitsDiscount,
  economicLots,
  incrementalDiscount,
  offeredLots,
  yearCost,
} from './price-breaks.js';

const breaks = (list: readonly (readonly [number, number])[]) =>
  list.map(([from, unitPrice]) => ({ from, unitPrice }));

describe('all-units discount', () => {
  it('takes the economic lot where the cheapest price allows it', () => {
    // USC BUAD 311T quiz 3 solution, fall 2008 (hospital bandages): 612, 655, 707; 707 is best.
    const costs = { yearlyUse: 6000, orderCost: 10, carryingRate: 0.2 };
    const prices = breaks([
      [1, 1.6],
      [200, 1.4],
      [400, 1.2],
    ]);
    const lots = economicLots(costs, prices);
    expect(lots.map((lot) => Math.round(lot * 100) / 100)).toEqual([612.37, 654.65, 707.11]);
    const [best] = allUnitsDiscount(costs, prices);
    expect(best?.size).toBeCloseTo(707.107, 3);
    expect(best?.total).toBeCloseTo(7369.706, 3);
  });

  it('goes to a break where that is cheaper', () => {
    // Worked answer to a textbook exercise (nursingexpertshelp 2021): 200 is best, 40,080.
    const costs = { yearlyUse: 800, orderCost: 60, carryingRate: 0.3 };
    const prices = breaks([
      [1, 53],
      [50, 51.5],
      [100, 49.5],
      [200, 48],
      [500, 47],
    ]);
    const found = allUnitsDiscount(costs, prices);
    expect(found.map((c) => Math.round(c.size))).toEqual([200, 100, 500, 79]);
    const totals = found.map((c) => c.total);
    for (const [i, total] of [40_080, 40_822.5, 41_221, 42_417.9].entries()) {
      expect(Math.abs((totals[i] ?? 0) - total)).toBeLessThan(0.05);
    }
  });

  it('agrees with a hospital case and one with four prices', () => {
    // Krajewski, Ritzman & Malhotra, Special Inventory Models, St. LeRoy Hospital (prices from
    // memory, totals recomputed).
    const hospital = allUnitsDiscount(
      { yearlyUse: 936, orderCost: 45, carryingRate: 0.25 },
      breaks([
        [1, 60],
        [300, 58.8],
        [500, 57],
      ]),
    );
    expect(hospital.map((c) => [Math.round(c.size), Math.round(c.total * 100) / 100])).toEqual([
      [500, 56_998.74],
      [75, 57_284.1],
      [300, 57_382.2],
    ]);
    // Winston-type exercise: 1,001 at 3.40.
    const four = allUnitsDiscount(
      { yearlyUse: 2500, orderCost: 10, carryingRate: 0.3 },
      breaks([
        [1, 4],
        [201, 3.6],
        [1001, 3.4],
        [2001, 3.25],
      ]),
    );
    expect(four.map((c) => c.size)[0]).toBe(1001);
    const rounded = four.map((c) => Math.round(c.total * 1000) / 1000);
    expect(rounded).toEqual([9035.485, 9112.981, 9232.379]);
  });

  it('keeps goods at a cost that does not depend on the price, where that is how it is', () => {
    // Stevenson, Operations Management, ch. 13, hospital cleanser (from memory): 816 cases a year,
    // 12 an order, 4 a case and year; 70 at 18: 14,968; 80 at 17: 14,154; 100 at 16: 13,354.
    const cleanser = allUnitsDiscount(
      { yearlyUse: 816, orderCost: 12, holdingCost: 4 },
      breaks([
        [1, 20],
        [50, 18],
        [80, 17],
        [100, 16],
      ]),
    );
    expect(cleanser.map((c) => [Math.round(c.size), Math.round(c.total)])).toEqual([
      [100, 13_354],
      [80, 14_154],
      [70, 14_968],
    ]);
  });

  it('is never dearer than another size', () => {
    fc.assert(
      fc.property(arbitraryCosts(), arbitraryBreaks(), sizes(), (costs, prices, size) => {
        const [best] = allUnitsDiscount(costs, prices);
        const price = prices.filter((b) => b.from <= size).at(-1)?.unitPrice ?? 0;
        expect(best?.total ?? 0).toBeLessThanOrEqual(yearCost(costs, price, size) * (1 + 1e-9));
      }),
    );
  });
});

describe('incremental discount', () => {
  it('solves the weighty trash bag case', () => {
    // Nahmias, Production and Operations Analysis, ch. 4 (from memory, total recomputed): 600 a
    // year, 8 an order, 20 %; 0.30 up to 500, 0.29 to 1,000, 0.28 beyond: 400 is best (204.00), then 519 (204.58).
    const costs = { yearlyUse: 600, orderCost: 8, carryingRate: 0.2 };
    const found = incrementalDiscount(
      costs,
      breaks([
        [0, 0.3],
        [500, 0.29],
        [1000, 0.28],
      ]),
    );
    expect(found.map((c) => Math.round(c.size))).toEqual([400, 519]);
    expect(found[0]?.total).toBeCloseTo(204, 9);
    expect(found[1]?.total).toBeCloseTo(204.58, 2);
  });

  it('is never dearer than another size', () => {
    fc.assert(
      fc.property(arbitraryCosts(), arbitraryBreaks(), sizes(), (costs, prices, size) => {
        const [best] = incrementalDiscount(costs, prices);
        let paid = 0;
        for (const [i, b] of prices.entries()) {
          const start = i === 0 ? 0 : b.from;
          const end = Math.min(prices[i + 1]?.from ?? size, size);
          if (end > start) paid += (end - start) * b.unitPrice;
        }
        const total = yearCost(costs, paid / size, size);
        expect(best?.total ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(total * (1 + 1e-9));
      }),
    );
  });
});

describe('offered lots', () => {
  it('compares the year each lot size makes', () => {
    // Coursehero 6476646, problem 14: 390 at 16.00 or 780 at 14.50.
    const found = offeredLots({ yearlyUse: 1560, orderCost: 10, carryingRate: 0.25 }, [
      { size: 390, unitPrice: 16 },
      { size: 780, unitPrice: 14.5 },
    ]);
    expect(found).toEqual([
      { size: 780, total: 24_053.75 },
      { size: 390, total: 25_780 },
    ]);
  });
});

it('refuses no price and an order for nothing', () => {
  const costs = { yearlyUse: 1, orderCost: 1, carryingRate: 0.1 };
  expect(() => allUnitsDiscount(costs, [])).toThrow('breaks');
  expect(() => yearCost(costs, 1, 0)).toThrow('size');
});

function arbitraryCosts() {
  return fc.record({
    yearlyUse: fc.integer({ min: 1, max: 10_000 }),
    orderCost: fc.integer({ min: 1, max: 100 }),
    carryingRate: fc.integer({ min: 1, max: 50 }).map((n) => n / 100),
  });
}

function arbitraryBreaks() {
  const drops = fc.array(
    fc.record({ more: fc.integer({ min: 1, max: 500 }), off: fc.integer({ min: 1, max: 9 }) }),
    { maxLength: 4 },
  );
  return fc.tuple(fc.integer({ min: 50, max: 200 }), drops).map(([price, list]) => {
    let [from, unitPrice] = [1, price];
    const rest = list.map((drop) => {
      from += drop.more;
      unitPrice -= drop.off;
      return { from, unitPrice };
    });
    return [{ from: 1, unitPrice: price }, ...rest];
  });
}

function sizes() {
  return fc.integer({ min: 1, max: 20_000 });
}
