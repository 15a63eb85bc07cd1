import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { poisson } from '../forecast/counts.js';
import { seededRandom } from '../forecast/seeded-random.js';
import { lumpyDemand, poissonDemand } from './example-demand.js';
import { drawArrivals, type ReorderRule, runOff, runRule } from './forward.js';
import { perishableFigures } from './perishable-chain.js';
import { expectedExpiry } from './shelf-queue.js';
import { drawLeadTime, drawUse, eventDays, everyDay, type ShelfStart } from './simulate.js';

describe('running a shelf off', () => {
  it('meets the exact waste, stock-out chance and shortage', () => {
    const lots = [
      { quantity: 10, usableDays: 14 },
      { quantity: 10, usableDays: 30 },
    ];
    const start = { lots, arrivals: [], owed: 0 };
    const demand = poissonDemand(0.5);
    const runs = 40_000;
    const paths = drawUse(demand, eventDays([start], 30), runs, seededRandom(5));
    const outlook = runOff(start, paths, []);
    // Recursion of the expiry (cf. Nahmias 1977): 3.2013205, then 5.5073461 in all.
    const exact = expectedExpiry(lots, demand).at(-1)?.cumulative ?? 0;
    expect(Math.abs(outlook.wasted - exact)).toBeLessThan(0.08);
    // Until day 14 the stock is 20 and use Poisson 7, so the first lot decides little; a stock-out
    // by day 30 needs more than what has not expired by then.
    expect(outlook.used + outlook.wasted + outlook.left).toBeCloseTo(20, 9);
    const never = { lots: [{ quantity: 9, usableDays: 99 }], arrivals: [], owed: 0 };
    const plain = runOff(never, drawUse(demand, [0, 20], runs, seededRandom(6)), []);
    expect(Math.abs(plain.stockOutChance - (1 - poisson(10).cdf(9)))).toBeLessThan(0.013);
    expect(Math.abs(plain.short - poisson(10).loss(9))).toBeLessThan(0.06);
    expect(Math.abs(plain.fillRate - (1 - poisson(10).loss(9) / 10))).toBeLessThan(0.007);
  });

  it('keeps every count: there + received = used + wasted + left', () => {
    fc.assert(
      fc.property(starts(), fc.integer({ min: 1, max: 90 }), (start, horizon) => {
        const days = eventDays([start], horizon);
        const paths = drawUse(lumpyDemand(0.7, 3), days, 30, seededRandom(horizon));
        const draws = drawArrivals(start.arrivals.length, 30, seededRandom(1));
        const outlook = runOff(start, paths, draws);
        const there = start.lots.reduce((sum, lot) => sum + lot.quantity, 0);
        const gone = outlook.used + outlook.wasted + outlook.left;
        expect(gone).toBeCloseTo(there + outlook.received, 6);
        expect(outlook.wasted).toBeGreaterThanOrEqual(0);
        expect(outlook.averageStock).toBeGreaterThanOrEqual(0);
        expect(outlook.fillRate).toBeLessThanOrEqual(1);
      }),
      { numRuns: 60 },
    );
  });

  it('lets goods on their way settle what is owed first', () => {
    const start: ShelfStart = {
      lots: [],
      arrivals: [{ quantity: 10, when: [{ days: 3, probability: 1 }], usableDays: 50 }],
      owed: 4,
    };
    const paths = drawUse(poissonDemand(0), eventDays([start], 20), 5, seededRandom(1));
    const outlook = runOff(start, paths, drawArrivals(1, 5, seededRandom(2)));
    expect(outlook).toMatchObject({ received: 10, used: 4, left: 6, short: 0, stockOutChance: 0 });
    expect(outlook.averageStock).toBeCloseTo((6 * 17) / 20, 12);
  });

  it.each([0, 3])('runs out for sure where nothing is there, %d being owed', (owed) => {
    const start = { lots: [], arrivals: [], owed };
    const paths = drawUse(poissonDemand(1), eventDays([start], 20), 400, seededRandom(3));
    const outlook = runOff(start, paths, []);
    // No use at all in twenty days has a chance of e^-20.
    expect([outlook.stockOutChance, outlook.stockOuts]).toEqual([1, 1]);
    expect(outlook.short).toBeGreaterThan(18);
  });

  it('draws lead times by their chances', () => {
    const lead = [
      { days: 2, probability: 0.25 },
      { days: 5, probability: 0.75 },
    ];
    expect([0, 0.2499, 0.25, 0.999].map((u) => drawLeadTime(lead, u))).toEqual([2, 2, 5, 5]);
    expect(
      drawLeadTime(
        [
          { days: 2, probability: 0.3 },
          { days: 9, probability: 0 },
        ],
        0.9,
      ),
    ).toBe(2);
  });
});

describe('following a rule', () => {
  const rule: ReorderRule = {
    reorderPoint: 9,
    orderUpTo: 10,
    pack: 1,
    minimumPacks: 1,
    cap: Number.POSITIVE_INFINITY,
    leadTime: [{ days: 0, probability: 1 }],
    usableDays: 3,
    reviewDays: 1,
    lookAheadDays: 0,
    dailyUse: 4,
  };
  const follow = (change: Partial<ReorderRule>, days: number, runs = 40) => {
    const paths = drawUse(poissonDemand(4), everyDay(days), runs, seededRandom(9));
    const orders = Float64Array.from({ length: runs * days }, seededRandom(8));
    const start = { lots: [], arrivals: [], owed: 0 };
    return runRule(start, { ...rule, ...change }, paths, { arrivals: [], orders });
  };

  it('comes to the exact waste of the age-state chain', () => {
    // There what is missing is lost and here it is owed, but at this level hardly anything is.
    const exact = perishableFigures({
      use: poisson(4),
      life: 3,
      orderUpTo: 10,
      issue: 'oldest first',
    });
    const outlook = follow({}, 1000);
    expect(Math.abs(outlook.wasted / 1000 - exact.outdate)).toBeLessThan(0.012);
    expect(Math.abs(outlook.fillRate - exact.fill)).toBeLessThan(0.001);
    expect(outlook.received).toBeCloseTo(outlook.used + outlook.wasted + outlook.left, 6);
  });

  it('needs lead time and packs covered', () => {
    const slow = { leadTime: [{ days: 5, probability: 1 }], usableDays: 200 };
    const bare = follow({ ...slow, reorderPoint: 10, orderUpTo: 30 }, 300);
    const safe = follow({ ...slow, reorderPoint: 34, orderUpTo: 54, pack: 10 }, 300);
    expect(safe.fillRate).toBeGreaterThan(bare.fillRate + 0.1);
    expect(safe.averageStock).toBeGreaterThan(bare.averageStock);
    expect(safe.fillRate).toBeGreaterThan(0.97);
  });

  it('stays below the cap of expiry', () => {
    const wide = { orderUpTo: 60, reorderPoint: 8, usableDays: 6 };
    expect(follow({ ...wide, cap: 18 }, 300).wasted).toBeLessThan(follow(wide, 300).wasted / 4);
  });
});

function starts() {
  const lot = fc.record({
    quantity: fc.integer({ min: 0, max: 60 }).map((n) => n / 4),
    usableDays: fc.integer({ min: 1, max: 60 }),
  });
  const arrival = fc.record({
    quantity: fc.integer({ min: 0, max: 40 }),
    when: fc.constant([
      { days: 3, probability: 0.5 },
      { days: 12, probability: 0.5 },
    ]),
    usableDays: fc.integer({ min: 0, max: 60 }),
  });
  return fc.record({
    lots: fc.array(lot, { maxLength: 4 }),
    arrivals: fc.array(arrival, { maxLength: 3 }),
    owed: fc.integer({ min: 0, max: 10 }),
  });
}
