import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  addOpenDays,
  EVERY_DAY,
  epochDay,
  isOpen,
  isoDay,
  monthOf,
  nextOpenDay,
  openDaysBetween,
  type WorkCalendar,
  weekdayOf,
  workedWeekdays,
} from './calendar.js';
import { poisson } from './counts.js';
import { expectedFromSteps, gridStep, inQuantities, toSteps } from './quantity-grid.js';
import { demandHistory } from './usage-history.js';

const WEEK: WorkCalendar = {
  openWeekdays: [true, true, true, true, true, false, false],
  closedDays: new Set([epochDay('2026-12-25')]),
};
const MONDAY = epochDay('2026-11-23');

describe('days', () => {
  it('know their weekday and month', () => {
    expect(epochDay('1970-01-01')).toBe(0);
    expect(weekdayOf(0)).toBe(3); // a Thursday
    expect(weekdayOf(MONDAY)).toBe(0);
    expect(weekdayOf(epochDay('1969-12-31'))).toBe(2);
    expect(monthOf(epochDay('2024-02-29'))).toBe(1);
    fc.assert(
      fc.property(fc.integer({ min: -20_000, max: 60_000 }), (day) => {
        expect(epochDay(isoDay(day))).toBe(day);
      }),
    );
  });

  it.each(['2026-02-30', '26-01-01', '2026-1-1', 'yesterday', ''])('are not %p', (text) => {
    expect(() => epochDay(text)).toThrow(/not a day/);
  });

  it('count working days both ways', () => {
    // Friday 2026-12-18 and five working days: Christmas Day is closed.
    expect(isoDay(addOpenDays(WEEK, epochDay('2026-12-18'), 5))).toBe('2026-12-28');
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 90 }), (d, n) => {
        const start = nextOpenDay(WEEK, MONDAY + d);
        const end = addOpenDays(WEEK, MONDAY + d, n);
        expect(isOpen(WEEK, end)).toBe(true);
        expect(openDaysBetween(WEEK, start, end)).toBe(n);
      }),
    );
  });

  it('refuse a calendar that never opens', () => {
    const never = {
      openWeekdays: new Array<boolean>(7).fill(false),
      closedDays: new Set<number>(),
    };
    expect(() => nextOpenDay(never, 0)).toThrow(/no open day/);
  });

  it('find the weekdays the practice works', () => {
    const used = Array.from({ length: 70 }, (_, t) => weekdayOf(MONDAY + t) < 4 || t === 5);
    expect(workedWeekdays(MONDAY, used)).toEqual([true, true, true, true, false, true, false]);
    expect(workedWeekdays(MONDAY, [false, false])).toEqual(new Array(7).fill(true));
  });
});

describe('the grid of quantities', () => {
  it('steps by the portion where use comes in portions', () => {
    expect(gridStep([60_000n, 120_000n, 60_000n, 180_000n])).toBe(60_000n);
    expect(gridStep([1_000_000n, 3_000_000n])).toBe(1_000_000n);
    expect(gridStep([0n, 250_000n])).toBe(250_000n);
    expect(gridStep([])).toBe(1_000_000n);
  });

  it('steps by a tenth of the usual use where it is weighed', () => {
    expect(gridStep([55_001n, 60_000n, 81_007n])).toBe(6_000n);
    expect(gridStep([1n, 7n])).toBe(1n);
  });

  it('turns quantities into steps and back', () => {
    fc.assert(
      fc.property(fc.bigInt(0n, 10n ** 13n), fc.bigInt(1n, 10n ** 8n), (amount, step) => {
        const back = expectedFromSteps(toSteps(amount, step), step);
        const off = back > amount ? back - amount : amount - back;
        // A double tells apart 1 in 2^53, so quantities of a practice come back exactly.
        expect(off <= 1n + amount / 10n ** 15n).toBe(true);
      }),
    );
    expect(() => toSteps(1n, 0n)).toThrow(/step/);
    expect(() => expectedFromSteps(Number.NaN, 1n)).toThrow(/amount/);
  });

  it('tells a distribution in quantities, enough always being enough', () => {
    const of = inQuantities(poisson(2.5), 60_000n);
    expect(of.mean).toBe(150_000n);
    expect(of.quantile(0.95)).toBe(5n * 60_000n);
    expect(of.certainty(of.quantile(0.95))).toBeGreaterThanOrEqual(0.95);
    expect(of.certainty(of.quantile(0.95) - 1n)).toBeLessThan(0.95);
    expect(of.expectedMissing(0n)).toBe(150_000n);
    expect(() => of.quantile(1)).toThrow(/probability/);
  });
});

describe('demand by day', () => {
  const span = { firstDay: MONDAY, lastDay: MONDAY + 13, calendar: WEEK };
  const g = 60_000n;

  it('counts shortfalls, leaves one-off events out, and retakes only when asked', () => {
    const uses = [
      { day: MONDAY, issued: 2n * g, shortfall: g },
      { day: MONDAY + 1, issued: 5n * g, oneOff: 4n * g },
      { day: MONDAY + 2, issued: 3n * g, retakes: g },
    ];
    const all = demandHistory(uses, span);
    expect(all.step).toBe(g);
    expect([...all.demand.subarray(0, 4)]).toEqual([3, 1, 3, 0]);
    expect([all.leftOut, all.shortfall]).toEqual([4n * g, g]);
    const without = demandHistory(uses, { ...span, leaveOutRetakes: true });
    expect([...without.demand.subarray(0, 4)]).toEqual([3, 1, 2, 0]);
    expect(without.leftOut).toBe(5n * g);
  });

  it('has no evidence on closed and unknown days, and moves use off closed ones', () => {
    const saturday = MONDAY + 5;
    const history = demandHistory([{ day: saturday, issued: g }], {
      ...span,
      unknownDays: new Set([MONDAY + 1]),
    });
    expect([...history.counts]).toEqual([1, 0, 1, 1, 1, 0, 0, 1, 1, 1, 1, 1, 0, 0]);
    expect(history.demand[7]).toBe(1);
  });

  it('loses no use, whatever the days', () => {
    const use = fc.record({
      day: fc.integer({ min: MONDAY, max: MONDAY + 13 }),
      issued: fc.bigInt(0n, 50n),
      shortfall: fc.bigInt(0n, 5n),
    });
    fc.assert(
      fc.property(fc.array(use), fc.bigInt(1n, 10n ** 6n), (raw, unit) => {
        const uses = raw.map((u) => ({
          day: u.day,
          issued: u.issued * unit,
          shortfall: u.shortfall * unit,
        }));
        const { demand, step } = demandHistory(uses, span);
        const total = uses.reduce((sum, u) => sum + u.issued + u.shortfall, 0n);
        const sum = demand.reduce((x, y) => x + y, 0);
        expect(Math.abs(sum * Number(step) - Number(total))).toBeLessThan(
          1e-6 * (1 + Number(total)),
        );
      }),
    );
  });

  it.each([
    [{ day: MONDAY - 1, issued: 1n }, /2026-11-22 is outside/],
    [{ day: MONDAY, issued: -1n }, /issued of 2026-11-23/],
    [{ day: MONDAY, issued: 1n, shortfall: -1n }, /shortfall/],
    [{ day: MONDAY, issued: 1n, oneOff: 2n }, /oneOff/],
    [{ day: MONDAY, issued: 1n, retakes: 2n }, /retakes/],
  ])('refuses %p', (use, message) => {
    expect(() => demandHistory([use], span)).toThrow(message);
  });

  it('refuses a history that ends before it starts', () => {
    const options = { firstDay: 5, lastDay: 4, calendar: EVERY_DAY };
    expect(() => demandHistory([], options)).toThrow(/lastDay/);
  });
});
