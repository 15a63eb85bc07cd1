import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { economicLot, economicPacks, lotCost, lotWithinLife } from './economic-lot.js';

describe('economic lot', () => {
  it('gives the size and costs of worked examples', () => {
    // Krajewski-type homework solution: 1,560 a year, 10 an order, 5 to keep one; 79, 394.97.
    const weekly = { yearlyUse: 1560, orderCost: 10, holdingCost: 5 };
    expect(economicLot(weekly)).toBeCloseTo(78.99367063252599, 9);
    const cost = lotCost(weekly, 79);
    expect(cost.holding).toBe(197.5);
    expect(cost.ordering).toBeCloseTo(197.47, 2);
    expect(cost.total).toBeCloseTo(394.97, 2);
    // Wikipedia, Economic order quantity: 10,000 a year, 2 an order, price 8 kept at 2 %.
    expect(economicLot({ yearlyUse: 10_000, orderCost: 2, holdingCost: 8 * 0.02 })).toBe(500);
    // J. C. Kantor, ESTM60203, Inventory Management notebook (inputs).
    const notebook = { yearlyUse: 1200, orderCost: 200, holdingCost: 25 };
    expect(economicLot(notebook)).toBeCloseTo(138.5640646055102, 9);
    expect(lotCost(notebook, economicLot(notebook)).total).toBeCloseTo(3464.1016151377544, 9);
    // Krajewski, Ritzman & Malhotra, Wood County Hospital: against a lot of 900 it saves 367.35.
    const bandages = { yearlyUse: 52_000, orderCost: 15, holdingCost: 35 * 0.15 };
    expect(economicLot(bandages)).toBeCloseTo(545.1081150953976, 9);
    const saved = lotCost(bandages, 900).total - lotCost(bandages, economicLot(bandages)).total;
    expect(saved).toBeCloseTo(367.3490624158294, 8);
  });

  it('is capped by what is used in the usable life', () => {
    // Rule min(EOQ, D x usable life), Nahmias, Perishable Inventory Systems (2011), ch. 8.
    const costs = { yearlyUse: 300, orderCost: 27, holdingCost: 0.5 };
    expect(lotWithinLife(costs, { usableYears: 0.4 })).toMatchObject({ size: 120, capBinds: true });
    expect(lotWithinLife(costs, { usableYears: 1 })).toMatchObject({ size: 180, capBinds: false });
    const rare = { yearlyUse: 24, orderCost: 15, holdingCost: 2 };
    const packed = lotWithinLife(rare, { usableYears: 0.5, packSize: 5 });
    expect(packed).toMatchObject({ size: 10, cap: 12, capBinds: true, minimumAboveCap: false });
    expect(packed.economic).toBeCloseTo(18.974, 3);
  });

  it('takes what goes first off the cap, and flags a smallest order above it', () => {
    const rare = { yearlyUse: 24, orderCost: 15, holdingCost: 2 };
    const forced = lotWithinLife(rare, {
      usableYears: 0.5,
      goesFirst: 4,
      packSize: 5,
      minimum: 10,
    });
    expect(forced).toMatchObject({ cap: 8, size: 10, minimumAboveCap: true, expectedWaste: 2 });
  });

  it('finds the cheapest whole packs', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        fc.double({ min: 0, max: 1e3, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
        fc.integer({ min: 1, max: 500 }),
        fc.integer({ min: 1, max: 2000 }),
        (yearlyUse, orderCost, holdingCost, pack, other) => {
          const costs = { yearlyUse, orderCost, holdingCost };
          const best = economicPacks(costs, pack);
          expect(Number.isInteger(best) && best >= 1).toBe(true);
          const cost = (packs: number) => lotCost(costs, packs * pack).total;
          expect(cost(best)).toBeLessThanOrEqual(cost(other) * (1 + 1e-12));
        },
      ),
    );
  });

  it('refuses costs that make no sense, naming them', () => {
    const good = { yearlyUse: 1, orderCost: 1, holdingCost: 1 };
    expect(() => economicLot({ ...good, holdingCost: 0 })).toThrow('holdingCost');
    expect(() => economicLot({ ...good, yearlyUse: -1 })).toThrow('yearlyUse');
    expect(() => economicLot({ ...good, orderCost: Number.NaN })).toThrow('orderCost');
    expect(() => lotCost(good, 0)).toThrow('size');
    expect(() => economicPacks(good, 0)).toThrow('packSize');
  });
});
