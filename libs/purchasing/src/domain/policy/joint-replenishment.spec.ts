import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  bestMultiples,
  type FamilyItem,
  familyPlan,
  lowerBound,
  orderAllTogether,
  orderApart,
  wholeMultiples,
} from './joint-replenishment.js';

describe('ordering a family together', () => {
  it('shares one order cost among equal items', () => {
    // Chopra & Meindl, 6th ed., section 11.3, example after 11-1 (hC of $100 is meant).
    const item = { yearlyUse: 12_000, value: 500, ownCost: 0 };
    const costs = { commonCost: 4000, carryingRate: 0.2 };
    expect(Math.round(orderApart([item], costs)[0]?.size ?? 0)).toBe(980);
    const joint = orderAllTogether([item, item, item, item], costs);
    expect(joint.sizes.map(Math.round)).toEqual([490, 490, 490, 490]);
    expect(Math.round(joint.sizes.reduce((a, b) => a + b, 0))).toBe(1960);
  });

  it('adds what each item costs to have in an order', () => {
    // Chopra & Meindl spreadsheet, examples 11-3 and 11-4 with other inputs (scribd 481865660).
    const items = [
      { yearlyUse: 10_000, value: 100, ownCost: 100 },
      { yearlyUse: 4000, value: 400, ownCost: 400 },
    ];
    const costs = { commonCost: 10_000, carryingRate: 0.2 };
    const apart = orderApart(items, costs);
    expect(apart.map((p) => Math.round(p.size))).toEqual([3178, 1020]);
    expect(apart.map((p) => Math.floor(p.yearlyCost))).toEqual([63_560, 81_584]);
    const joint = orderAllTogether(items, costs);
    expect(joint.ordersPerYear).toBeCloseTo(4.98, 2);
    expect(joint.sizes.map(Math.round)).toEqual([2010, 804]);
    expect(Math.abs(joint.yearlyCost - 104_499)).toBeLessThan(1);
  });

  it('puts slow items into each second order', () => {
    // Silver, Pyke & Thomas, ch. 10 exercise (inputs; answers computed with the book's heuristic).
    const use = [600, 200, 350, 450, 850, 900, 525, 1000];
    const value = [2.5, 12.65, 25.36, 18.52, 62.5, 85.2, 3.65, 1.98];
    const items = use.map((yearlyUse, i) => ({ yearlyUse, value: value[i] ?? 0, ownCost: 1 }));
    const costs = { commonCost: 8, carryingRate: 0.3 };
    const plan = wholeMultiples(items, costs);
    expect(plan.multiples).toEqual([2, 2, 1, 1, 1, 1, 2, 2]);
    expect(plan.baseYears).toBeCloseTo(0.0239387, 6);
    const sizes = [28.73, 9.58, 8.38, 10.77, 20.35, 21.54, 25.14, 47.88];
    for (const [i, size] of sizes.entries()) {
      expect(Math.abs((plan.sizes[i] ?? 0) - size)).toBeLessThan(0.01);
    }
    expect(Math.abs(plan.yearlyCost - 1169.65)).toBeLessThan(0.01);
    expect(Math.abs(lowerBound(items, costs) - 1103.05)).toBeLessThan(0.01);
    expect(bestMultiples(items, costs).yearlyCost).toBeLessThanOrEqual(plan.yearlyCost);
  });

  it('solves the three-model case', () => {
    // Chopra & Meindl, examples 11-3 to 11-5 (from memory): 12,000, 1,200 and 120 a year at 500,
    // 4,000 an order and 1,000 per model; apart 155,140, together 136,528 with 9.75 orders (the
    // book works on with rounded numbers; exactly 136,558).
    const items = [12_000, 1200, 120].map((yearlyUse) => ({
      yearlyUse,
      value: 500,
      ownCost: 1000,
    }));
    const costs = { commonCost: 4000, carryingRate: 0.2 };
    const apart = orderApart(items, costs).reduce((sum, p) => sum + p.yearlyCost, 0);
    expect(Math.abs(apart - 155_140)).toBeLessThan(2);
    const joint = orderAllTogether(items, costs);
    expect(joint.yearlyCost).toBeCloseTo(136_557.7, 0);
    expect(Math.abs(joint.yearlyCost / 136_528 - 1)).toBeLessThan(0.0005);
    expect(joint.ordersPerYear).toBeCloseTo(9.75, 2);
    // Multiples rounded up as in example 11-5 cost 130,767; rounded to the nearest a little less.
    expect(Math.abs(familyPlan(items, costs, [1, 2, 5]).yearlyCost - 130_767)).toBeLessThan(2);
    expect(wholeMultiples(items, costs).multiples).toEqual([1, 1, 4]);
    expect(bestMultiples(items, costs).yearlyCost).toBeLessThan(130_767);
  });

  it('never beats the bound, and improving never makes it dearer', () => {
    fc.assert(
      fc.property(families(), (family) => {
        const { items, costs } = family;
        const best = bestMultiples(items, costs);
        const bound = lowerBound(items, costs);
        expect(best.yearlyCost).toBeGreaterThanOrEqual(bound * (1 - 1e-9));
        for (const other of [orderAllTogether(items, costs), wholeMultiples(items, costs)]) {
          expect(best.yearlyCost).toBeLessThanOrEqual(other.yearlyCost * (1 + 1e-9));
        }
        expect(best.multiples.every((m) => Number.isInteger(m) && m >= 1)).toBe(true);
      }),
    );
  });

  it('refuses what makes no family', () => {
    const costs = { commonCost: 1, carryingRate: 0.1 };
    const item: FamilyItem = { yearlyUse: 1, value: 1, ownCost: 0 };
    expect(() => orderAllTogether([], costs)).toThrow('items');
    expect(() => orderApart([{ ...item, value: 0 }], costs)).toThrow('items');
    expect(() => orderApart([item], { ...costs, commonCost: -1 })).toThrow('commonCost');
    expect(() => orderApart([item], { ...costs, carryingRate: 0 })).toThrow('carryingRate');
    expect(() => familyPlan([item], costs, [1.5])).toThrow('multiples');
  });
});

function families() {
  const item = fc.record({
    yearlyUse: fc.integer({ min: 1, max: 5000 }),
    value: fc.integer({ min: 1, max: 200 }),
    ownCost: fc.integer({ min: 0, max: 20 }),
  });
  return fc.record({
    items: fc.array(item, { minLength: 1, maxLength: 6 }),
    costs: fc.record({
      commonCost: fc.integer({ min: 1, max: 100 }),
      carryingRate: fc.integer({ min: 1, max: 40 }).map((n) => n / 100),
    }),
  });
}
