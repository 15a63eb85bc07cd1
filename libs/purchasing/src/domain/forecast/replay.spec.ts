import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { poisson } from './counts.js';
import { type PolicyView, type ReplayInput, replay } from './replay.js';
import { seededRandom } from './seeded-random.js';

const NEVER = 1_000_000;

function input(over: Partial<ReplayInput>): ReplayInput {
  return {
    firstDay: 100,
    demand: new Float64Array(0),
    lots: [],
    unmet: 'lost',
    policy: () => 0,
    deliver: ({ day, amount }) => [{ day: day + 2, amount }],
    expires: () => NEVER,
    unitValue: 2.5,
    ...over,
  };
}

describe('a replay by hand', () => {
  it('uses what expires first, throws away what is late and counts what is missing', () => {
    const result = replay(
      input({
        demand: Float64Array.from([2, 0, 1, 3, 1]),
        lots: [
          { expires: 200, amount: 4 },
          { expires: 101, amount: 3 },
        ],
      }),
    );
    // Day 100: 2 of the lot that expires on day 101. Day 101: nothing, 1 left of it. Day 102: that
    // one is thrown away, 1 of the other. Day 103: the last 3. Day 104: nothing there.
    expect(result.days.map((d) => d.onHand)).toEqual([5, 5, 3, 0, 0]);
    expect(result.days.map((d) => d.wasted)).toEqual([0, 0, 1, 0, 0]);
    expect(result).toMatchObject({ stockOutDays: 1, unmet: 1, wasted: 1, used: 6, orders: 0 });
    expect(result.averageOnHand).toBeCloseTo(13 / 5, 12);
    expect(result.averageValue).toBeCloseTo(6.5, 12);
  });

  it('compares the position, with what is on order, and takes part deliveries', () => {
    const seen: PolicyView[] = [];
    const result = replay(
      input({
        demand: Float64Array.from([1, 1, 1, 1, 1]),
        lots: [{ expires: NEVER, amount: 2 }],
        policy: (view) => {
          seen.push(view);
          return view.position <= 2 ? 4 : 0;
        },
        deliver: ({ day, amount }) => [
          { day: day + 1, amount: amount / 4 },
          { day: day + 3, amount: (amount * 3) / 4 },
        ],
      }),
    );
    expect(result.days.map((d) => d.ordered)).toEqual([4, 0, 0, 0, 4]);
    expect(result.days.map((d) => d.arrived)).toEqual([0, 1, 0, 3, 0]);
    expect(result.days.map((d) => d.onHand)).toEqual([1, 1, 0, 2, 1]);
    expect(seen.map((v) => v.past.length)).toEqual([0, 1, 2, 3, 4]);
    expect(seen[1]).toMatchObject({ onHand: 2, onOrder: 3, position: 5 });
  });

  it('settles what is owed from the next delivery, or loses it', () => {
    const late: Partial<ReplayInput> = {
      demand: Float64Array.from([3, 0, 0, 1]),
      lots: [{ expires: NEVER, amount: 1 }],
      policy: ({ position, onOrder }) => (position < 4 && onOrder === 0 ? 4 : 0),
      deliver: ({ day, amount }) => [{ day: day + 1, amount }],
    };
    const owed = replay(input({ ...late, unmet: 'owed' }));
    expect(owed).toMatchObject({ unmet: 2, stockOutDays: 1, used: 4 });
    const lost = replay(input({ ...late, unmet: 'lost' }));
    expect(lost).toMatchObject({ unmet: 2, stockOutDays: 1, used: 2 });
  });
});

describe('the perishable order-up-to system', () => {
  // Exact long-run figures of the age-state Markov chain (model of Nahmias 1975 and Pierskalla &
  // Roach 1972; stationary distribution worked out with NumPy): per period, lead time 0, lost
  // sales.
  it.each([
    { rate: 4, life: 2, upTo: 8, outdate: 0.68458409, lost: 0.03362699, order: 4.65095711 },
    { rate: 4, life: 3, upTo: 10, outdate: 0.2965139, lost: 0.00413131, order: 4.29238259 },
    { rate: 2, life: 3, upTo: 6, outdate: 0.43265732, lost: 0.00592438, order: 2.42673294 },
    { rate: 3, life: 2, upTo: 6, outdate: 0.59111403, lost: 0.05070261, order: 3.54041142 },
  ])('Poisson $rate, life $life, up to $upTo', ({ rate, life, upTo, outdate, lost, order }) => {
    const periods = 60_000;
    const random = seededRandom(20);
    const of = poisson(rate);
    const cumulated = Array.from({ length: 40 }, (_, k) => of.cdf(k));
    const draw = () => {
      const u = random();
      let k = 0;
      while ((cumulated[k] ?? 1) < u) k += 1;
      return k;
    };
    const result = replay(
      input({
        demand: Float64Array.from({ length: periods }, draw),
        policy: ({ position }) => Math.max(0, upTo - position),
        deliver: ({ day, amount }) => [{ day, amount }],
        expires: (day) => day + life - 1,
      }),
    );
    // Four standard errors of 60,000 periods, with room for their dependence.
    expect(Math.abs(result.wasted / periods - outdate)).toBeLessThan(0.02);
    expect(Math.abs(result.unmet / periods - lost)).toBeLessThan(0.006);
    expect(Math.abs(result.ordered / periods - order)).toBeLessThan(0.028);
  });
});

describe('every replay', () => {
  const amounts = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 60 });
  const lots = fc.array(
    fc.record({
      expires: fc.integer({ min: 98, max: 170 }),
      amount: fc.integer({ min: 0, max: 9 }),
    }),
    { maxLength: 5 },
  );
  const setting = fc.record({
    demand: amounts,
    lots,
    reorder: fc.integer({ min: 0, max: 15 }),
    size: fc.integer({ min: 1, max: 20 }),
    lead: fc.integer({ min: 0, max: 6 }),
    life: fc.integer({ min: 0, max: 20 }),
    unmet: fc.constantFrom('lost' as const, 'owed' as const),
  });

  it('neither makes nor loses goods, and never has less than nothing', () => {
    fc.assert(
      fc.property(setting, (s) => {
        const result = replay(
          input({
            demand: Float64Array.from(s.demand),
            lots: s.lots,
            unmet: s.unmet,
            policy: ({ position }) => (position <= s.reorder ? s.size : 0),
            deliver: ({ day, amount }) => [{ day: day + s.lead, amount }],
            expires: (day) => day + s.life,
          }),
        );
        const start = s.lots.reduce((sum, lot) => sum + lot.amount, 0);
        const out = result.used + result.wasted + result.endOnHand;
        expect(start + result.arrived).toBeCloseTo(out, 9);
        if (s.unmet === 'lost') expect(result.used + result.unmet).toBeCloseTo(result.demanded, 9);
        else expect(result.used).toBeLessThanOrEqual(result.demanded + 1e-9);
        for (const day of result.days) expect(day.onHand).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('tells the same story in another unit', () => {
    fc.assert(
      fc.property(setting, fc.constantFrom(0.06, 0.25, 3), (s, unit) => {
        const run = (factor: number) =>
          replay(
            input({
              demand: Float64Array.from(s.demand, (y) => y * factor),
              lots: s.lots.map((lot) => ({ ...lot, amount: lot.amount * factor })),
              unmet: s.unmet,
              policy: ({ position }) =>
                position <= (s.reorder + 0.5) * factor ? s.size * factor : 0,
              deliver: ({ day, amount }) => [{ day: day + s.lead, amount }],
              expires: (day) => day + s.life,
            }),
          );
        const [one, other] = [run(1), run(unit)];
        expect(other.stockOutDays).toBe(one.stockOutDays);
        expect(other.wasted).toBeCloseTo(one.wasted * unit, 6);
        expect(other.averageOnHand).toBeCloseTo(one.averageOnHand * unit, 6);
      }),
    );
  });
});

describe('a replay refuses', () => {
  const one = Float64Array.from([1, 1]);
  it.each([
    ['a negative demand', { demand: Float64Array.from([0, -1]) }, /demand of day 2/],
    ['a negative order', { demand: one, policy: () => -1 }, /order/],
    ['an order that is no number', { demand: one, policy: () => Number.NaN }, /order/],
    [
      'a delivery before its order',
      { demand: one, policy: () => 1, deliver: () => [{ day: 99, amount: 1 }] },
      /before its order/,
    ],
    [
      'parts that do not add up',
      { demand: one, policy: () => 2, deliver: () => [{ day: 101, amount: 1 }] },
      /add up/,
    ],
    ['a negative lot', { lots: [{ expires: 100, amount: -1 }] }, /amount of a lot/],
  ])('%s', (_, over, message) => {
    expect(() => replay(input(over))).toThrow(message);
  });
});
