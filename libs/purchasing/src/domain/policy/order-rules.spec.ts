import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  lotsToOrder,
  minMaxOrder,
  packsWhenDue,
  positionOf,
  reviewLevel,
  reviewOrder,
  shelfAtReorder,
} from './order-rules.js';

describe('position', () => {
  it('decides, and not the shelf, when the lead time is longer than the cycle', () => {
    // Anderson, Sweeney & Williams, Quantitative Methods for Business, ch. 14 exercise (inputs;
    // answers computed): 5,000 a year in 250 days, lots of 400, lead times 5, 15, 25 and 45 days.
    const points = [5, 15, 25, 45].map((days) => (days * 5000) / 250);
    expect(points).toEqual([100, 300, 500, 900]);
    expect(points.map((point) => shelfAtReorder(point, 400))).toEqual([100, 300, 100, 100]);
    expect(positionOf({ onHand: 100, onOrder: 800, owed: 0 })).toBe(900);
    expect(positionOf({ onHand: 0, onOrder: 10, owed: 4 })).toBe(6);
    expect(shelfAtReorder(0, 400)).toBe(0);
    expect(() => shelfAtReorder(1, 0)).toThrow('orderSize');
  });
});

describe('periodic review', () => {
  it('orders up to the level of worked examples', () => {
    // drjackthetutor 328832 (copy paper): 78.7, and 48 ordered with 30 there.
    const paper = reviewLevel({
      dailyMean: 10,
      dailySd: 2,
      reviewDays: 5,
      leadDays: 2,
      target: { measure: 'cycle service', level: 0.95 },
    });
    expect(paper.orderUpTo).toBeCloseTo(78.70374728003242, 8);
    expect(Math.floor(reviewOrder(paper.orderUpTo, 30))).toBe(48);
    // Chase, Jacobs & Aquilano assignment solution (coursehero 6560409, problem 4): z = 1.64.
    const sd = 5 * Math.sqrt(24);
    expect(sd).toBeCloseTo(24.495, 3);
    expect(reviewOrder((5000 / 365) * 24 + 1.64 * sd, 150)).toBeCloseTo(218.94, 2);
    // Krajewski, Ritzman & Malhotra, Wood County Hospital, by the week (inputs; answers computed).
    const bandages = reviewLevel({
      dailyMean: 1000,
      dailySd: 100,
      reviewDays: 2,
      leadDays: 2,
      target: { measure: 'cycle service', level: 0.97 },
    });
    expect(bandages.orderUpTo).toBeCloseTo(4376.1587216302505, 7);
    expect(reviewOrder(10, 12)).toBe(0);
  });
});

describe('minimum and maximum', () => {
  it('order in whole packs', () => {
    // (s,S) rule of Scarf (1960); figures computed.
    const order = { position: 7, min: 12, max: 40, pack: 10 };
    expect(minMaxOrder(order)).toEqual({ needed: 33, order: 40, packs: 4 });
    expect(minMaxOrder({ ...order, capped: true })).toEqual({ needed: 33, order: 30, packs: 3 });
    expect(minMaxOrder({ ...order, minimum: 55 })).toMatchObject({ packs: 6 });
    expect(minMaxOrder({ ...order, position: 13 })).toEqual({ needed: 0, order: 0, packs: 0 });
    expect(minMaxOrder({ ...order, position: 12 })).toMatchObject({ packs: 3 });
    const full = { ...order, position: 12, min: 12, max: 12 };
    expect(minMaxOrder(full)).toEqual({ needed: 0, order: 0, packs: 0 });
    expect(() => minMaxOrder({ ...order, max: 11 })).toThrow('max');
    expect(() => minMaxOrder({ ...order, pack: 0 })).toThrow('pack');
  });

  it('reach the maximum unless capped, by less than a pack', () => {
    const n = fc.integer({ min: 0, max: 500 });
    fc.assert(
      fc.property(n, n, n, fc.integer({ min: 1, max: 60 }), (short, min, more, pack) => {
        const input = { position: min - short, min, max: min + more, pack };
        const up = minMaxOrder(input);
        const down = minMaxOrder({ ...input, capped: true });
        expect(up.order % pack).toBe(0);
        expect(up.order - up.needed).toBeGreaterThanOrEqual(0);
        expect(up.order - up.needed).toBeLessThan(pack);
        expect(up.needed - down.order).toBeGreaterThanOrEqual(0);
        expect(up.needed - down.order).toBeLessThan(pack);
      }),
    );
  });
});

describe('whole lots', () => {
  it('of an item that is due reach the cheapest order, or what is set by hand', () => {
    const due = { position: 31, reorderPoint: 40, orderUpTo: 80, pack: 20, usualPacks: 2 };
    // One box would do, two are cheapest; up to the level, rounded up, it would be three.
    expect(packsWhenDue(due)).toBe(2);
    expect(packsWhenDue({ ...due, position: -21 })).toBe(4);
    expect(packsWhenDue({ ...due, usualPacks: null, orderUpTo: 95 })).toBe(3);
    // Twenty more come exactly to the point, and what is at its point is due.
    expect(packsWhenDue({ ...due, position: 20, usualPacks: 1 })).toBe(2);
    expect(packsWhenDue({ ...due, position: -3, reorderPoint: 0, usualPacks: 0 })).toBe(1);
    expect(packsWhenDue({ ...due, position: -20, reorderPoint: 0, usualPacks: 0 })).toBe(1);
  });

  it('lift the position above the reorder point', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -200, max: 200 }),
        fc.integer({ min: 0, max: 100 }),
        fc.integer({ min: 1, max: 50 }),
        (position, s, lot) => {
          const lots = lotsToOrder(position, s, lot);
          if (position > s) expect(lots).toBe(0);
          else {
            expect(position + lots * lot).toBeGreaterThan(s);
            expect(position + (lots - 1) * lot).toBeLessThanOrEqual(s);
          }
        },
      ),
    );
  });
});
