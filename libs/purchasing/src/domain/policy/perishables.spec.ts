import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { poisson } from '../forecast/counts.js';
import { lattice } from '../forecast/lattice.js';
import { seededRandom } from '../forecast/seeded-random.js';
import { lumpyDemand, poissonDemand, steady } from './example-demand.js';
import { expiryOrder } from './expiry-order-rule.js';
import { normal } from './normal.js';
import { perishableFigures } from './perishable-chain.js';
import { behindShelf, expectedExpiry, steadyExpiry } from './shelf-queue.js';
import { sampler, tabulate } from './tables.js';

// Exact stationary distribution of the age-state Markov chain (numpy), checked by simulation; model
// of Nahmias (1975) and Pierskalla & Roach (1972). Rate, life, level; outdated oldest first, newest
// first; lost; share of use met.
const CHAINS = [
  [4, 2, 8, 0.68458409, 1.76294196, 0.03362699, 0.99159325],
  [4, 3, 10, 0.2965139, 1.74575463, 0.00413131, 0.99896717],
  [2, 3, 6, 0.43265732, 1.15011915, 0.00592438, 0.99703781],
  [3, 2, 6, 0.59111403, 1.29906798, 0.05070261, 0.98309913],
] as const;

describe('goods of a fixed life, ordered up to a level', () => {
  it.each(CHAINS)('rate %d, life %d, level %d', (rate, life, orderUpTo, fifo, lifo, lost, fill) => {
    const input = { use: poisson(rate), life, orderUpTo };
    const oldest = perishableFigures({ ...input, issue: 'oldest first' });
    const newest = perishableFigures({ ...input, issue: 'newest first' });
    expect(oldest.outdate).toBeCloseTo(fifo, 6);
    expect(newest.outdate).toBeCloseTo(lifo, 6);
    for (const figures of [oldest, newest]) {
      expect(figures.lost).toBeCloseTo(lost, 6);
      expect(figures.fill).toBeCloseTo(fill, 6);
      // What is bought is used or outdated.
      expect(figures.order).toBeCloseTo(rate - lost + figures.outdate, 8);
      expect(figures.wasteShare).toBeCloseTo(figures.outdate / figures.order, 12);
    }
  });

  it('gives the shares of the first chain', () => {
    const input = { use: poisson(4), life: 2, orderUpTo: 8 };
    const share = (issue: 'oldest first' | 'newest first') =>
      perishableFigures({ ...input, issue }).wasteShare;
    expect(share('oldest first')).toBeCloseTo(0.14719209, 6);
    expect(share('newest first')).toBeCloseTo(0.30770554, 6);
  });

  it('lives one period: what is left of the level outdates', () => {
    const figures = perishableFigures({
      use: poisson(3),
      life: 1,
      orderUpTo: 5,
      issue: 'oldest first',
    });
    expect(figures.outdate).toBeCloseTo(5 - 3 + poisson(3).loss(5), 10);
    expect(figures.order).toBeCloseTo(5, 12);
  });

  it('refuses what it cannot follow', () => {
    const input = { use: poisson(3), life: 2, orderUpTo: 5, issue: 'oldest first' } as const;
    expect(() => perishableFigures({ ...input, life: 0 })).toThrow('life');
    expect(() => perishableFigures({ ...input, orderUpTo: 1.5 })).toThrow('orderUpTo');
    expect(() => perishableFigures({ ...input, life: 12, orderUpTo: 60 })).toThrow('orderUpTo');
  });
});

describe('expected expiry of the lots on hand', () => {
  const lots = [
    { quantity: 10, usableDays: 30 },
    { quantity: 10, usableDays: 14 },
  ];

  it('is more under random use than steady use makes it', () => {
    // Recursion W_k = max(W_(k-1), Q_k - D(0, t_k)) (cf. Nahmias 1977), checked by simulation.
    const random = expectedExpiry(lots, poissonDemand(0.5)).map((lot) => lot.cumulative);
    expect(random[0]).toBeCloseTo(3.2013205, 6);
    expect(random[1]).toBeCloseTo(5.5073461, 6);
    // Arithmetic: 7 used by day 14, 3 expire; 8 of 10 used by day 30, 2 expire.
    expect(steadyExpiry(lots, 0.5).map((lot) => lot.expired)).toEqual([3, 2]);
  });

  it('counts only what expires within the days asked for', () => {
    const [first, second] = expectedExpiry(lots, poissonDemand(0.5), { within: 20 });
    expect(first?.expired).toBeCloseTo(3.2013205, 6);
    expect(second?.expired).toBe(0);
    const never = [{ quantity: 4, usableDays: Number.POSITIVE_INFINITY }];
    expect(expectedExpiry(never, poissonDemand(0.5))[0]?.expired).toBe(0);
    expect(steadyExpiry(never, 0.5)[0]?.expired).toBe(0);
    expect(expectedExpiry([{ quantity: 4, usableDays: 0 }], poissonDemand(0.5))[0]?.expired).toBe(
      4,
    );
  });

  it('agrees with a plain simulation, broken quantities included', () => {
    const shelf = [
      { quantity: 3.4, usableDays: 6 },
      { quantity: 7.25, usableDays: 15 },
      { quantity: 5, usableDays: 40 },
    ];
    const demand = lumpyDemand(0.4, 4);
    const exact = expectedExpiry(shelf, demand).map((lot) => lot.expired);
    const random = seededRandom(7);
    const spans = [6, 9, 25].map((days) => sampler(tabulate(demand.use(0, days))));
    const runs = 200_000;
    const sums = [0, 0, 0];
    for (let run = 0; run < runs; run += 1) {
      let place = 0;
      let end = 0;
      for (const [k, lot] of shelf.entries()) {
        end += lot.quantity;
        place += spans[k]?.(random) ?? 0;
        sums[k] = (sums[k] ?? 0) + Math.max(end - place, 0);
        place = Math.max(place, end);
      }
    }
    // Each is a mean of 200,000 values with a spread below 4: five errors are 0.045.
    for (const [k, sum] of sums.entries()) {
      expect(Math.abs(sum / runs - (exact[k] ?? 0))).toBeLessThan(0.045);
    }
  });

  it('is the same whatever the order of the lots, never more than there is', () => {
    fc.assert(
      fc.property(shelves(), fc.integer({ min: 0, max: 20 }), (shelf, rate) => {
        const demand = lumpyDemand(rate / 10, 2);
        const straight = expectedExpiry(shelf, demand);
        expect(expectedExpiry([...shelf].reverse(), demand)).toEqual(straight);
        for (const lot of straight) {
          expect(lot.expired).toBeGreaterThanOrEqual(-1e-9);
          expect(lot.expired).toBeLessThanOrEqual(lot.quantity + 1e-9);
        }
        const steadily = steadyExpiry(shelf, rate / 10).at(-1)?.cumulative ?? 0;
        // Planning on the mean understates waste (Jensen: each step is convex in use).
        expect(straight.at(-1)?.cumulative ?? 0).toBeGreaterThanOrEqual(steadily - 1e-6);
      }),
      { numRuns: 60 },
    );
  });

  it('follows large numbers in coarser steps without losing the mean', () => {
    const shelf = [{ quantity: 20_000, usableDays: 30 }];
    const use = (days: number) => normal(600 * days, 400 * Math.sqrt(days));
    const [lot] = expectedExpiry(shelf, steady(use));
    const exact = 20_000 - 18_000 + use(30).loss(20_000);
    expect(Math.abs((lot?.expired ?? 0) - exact)).toBeLessThan(0.5);
  });
});

describe('the most that is used up in time', () => {
  it('keeps the wanted certainty', () => {
    // scipy 1.10.1: largest x with P(D >= x) >= 0.9 at 0.5 a day for 60 days is 23; 4 are there.
    const demand = poissonDemand(0.5);
    expect(behindShelf([], demand, 60).mostUsedUp(0.9)).toBe(23);
    const behind = behindShelf([{ quantity: 4, usableDays: 60 }], demand, 60);
    expect(behind.mostUsedUp(0.9)).toBe(19);
    expect(behind.usedUp(19)).toBeCloseTo(0.9194309789050202, 9);
    expect(behind.usedUp(20)).toBeCloseTo(0.8853540872857262, 9);
  });

  it('leaves out lots that expire later, and counts what expires before its turn', () => {
    const demand = poissonDemand(0.5);
    const later = behindShelf([{ quantity: 100, usableDays: 61 }], demand, 60);
    expect(later.mostUsedUp(0.9)).toBe(23);
    // Ten that expire tomorrow take no use away from the new goods after tomorrow.
    const soon = behindShelf([{ quantity: 10, usableDays: 1 }], demand, 60);
    expect(soon.mostUsedUp(0.9)).toBeGreaterThan(13);
    expect(soon.mostUsedUp(0.9)).toBeLessThanOrEqual(23);
    expect(behindShelf([], demand, 0).mostUsedUp(0.9)).toBe(0);
    expect(
      behindShelf(
        [],
        steady(() => lattice([1])),
        90,
      ).mostUsedUp(0.9),
    ).toBe(0);
  });

  it('expects what is left as the loss of the use', () => {
    const behind = behindShelf([], poissonDemand(0.5), 60);
    expect(behind.expectedLeft(30)).toBeCloseTo(30 - 30 + poisson(30).loss(30), 8);
    expect(behind.expectedLeft(0)).toBe(0);
  });
});

describe('the order rule that expects outdating', () => {
  const rule = {
    reviewDays: 1,
    leadDays: 2,
    pack: 6,
    expectedDaily: [3, 3, 4, 3],
    safetyStock: 2,
    lots: [
      { usableDays: 1, quantity: 5 },
      { usableDays: 2, quantity: 4 },
      { usableDays: 6, quantity: 6 },
    ],
    inTransit: 0,
  };

  it('takes it off the position first', () => {
    // Broekmeulen & van Donselaar (2009); rule from memory, figures by hand.
    expect(expiryOrder(rule)).toEqual({
      position: 15,
      outdating: [2, 1],
      totalOutdating: 3,
      protectionUse: 10,
      shortfall: 0,
      packs: 0,
    });
    // One more in the safety stock, and a pack is ordered.
    expect(expiryOrder({ ...rule, safetyStock: 3 })).toMatchObject({ shortfall: 1, packs: 1 });
    expect(expiryOrder({ ...rule, safetyStock: 9 })).toMatchObject({ shortfall: 7, packs: 2 });
    expect(expiryOrder({ ...rule, inTransit: 6, safetyStock: 3 })).toMatchObject({ packs: 0 });
  });

  it('refuses a forecast that is too short', () => {
    expect(() => expiryOrder({ ...rule, expectedDaily: [3] })).toThrow('expectedDaily');
    expect(() => expiryOrder({ ...rule, pack: 0 })).toThrow('pack');
  });
});

function shelves() {
  return fc.array(
    fc.record({
      quantity: fc.integer({ min: 0, max: 120 }).map((n) => n / 4),
      usableDays: fc.integer({ min: 0, max: 60 }),
    }),
    { maxLength: 5 },
  );
}
