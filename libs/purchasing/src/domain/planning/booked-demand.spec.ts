import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { epochDay } from '../forecast/calendar.js';
import {
  type BookedFacts,
  type BookedGroup,
  bookedDemand,
  type Experience,
  shareKept,
} from './booked-demand.js';

const MONDAY = epochDay('2026-05-04');

const need = (units: number, share = 1) => ({
  ...{ mean: BigInt(Math.round(units * 1_000_000)), meanSquare: units * units, share },
});
const group = (changes: Partial<BookedGroup> = {}): BookedGroup => ({
  ...{ day: 0, toCome: 1, minutes: 60, shadeUnknown: false },
  needs: new Map([['strip', need(1)]]),
  ...changes,
});
const facts = (changes: Partial<BookedFacts> = {}): BookedFacts => ({
  ...{ today: MONDAY, groups: [group()], experience: new Map(), visits: 0, keptShare: 1 },
  diary: null,
  ...changes,
});
/** So many visits that planned `planned` each and used what the list says. */
const experienceOf = (
  planned: number,
  used: readonly number[],
  extra: number[] = [],
): Experience => {
  const sum = (list: readonly number[], of = (x: number) => x) =>
    list.reduce((total, x) => total + of(x), 0);
  return {
    planned: {
      visits: used.length,
      planned: planned * used.length,
      used: sum(used),
      plannedSquare: planned * planned * used.length,
      plannedUsed: planned * sum(used),
      usedSquare: sum(used, (x) => x * x),
    },
    extra: { used: sum(extra), usedSquare: sum(extra, (x) => x * x) },
  };
};
const week = (minutes: number) => new Array<number>(7).fill(minutes);

describe('what booked visits will use', () => {
  it('is a binomial count when each of n visits uses one and is kept with chance p', () => {
    // Mean n p and variance n p (1 - p): any textbook on probability.
    const use = bookedDemand(facts({ groups: [group({ toCome: 6 })], keptShare: 0.9 })).of('strip');
    expect(use?.quantities).toEqual([5_400_000n]);
    expect(use?.variances?.[0]).toBeCloseTo(6 * 0.9 * 0.1, 12);
    expect(use?.coverage).toBeNull();
  });

  it('is exactly the plan when every booking is kept', () => {
    const groups = [group({ needs: new Map([['paste', need(0.06)]]), toCome: 3 }), group()];
    const demand = bookedDemand(facts({ groups }));
    expect(demand.of('paste')).toEqual({ quantities: [180_000n], variances: [0], coverage: null });
    expect(demand.visits).toEqual([4]);
  });

  it('follows what was lately used for what was planned, with its spread', () => {
    const used = [1, 1, 1, 1, 1, 1, 2, 2, 2, 2];
    const experience = new Map([['strip', experienceOf(1, used)]]);
    const use = bookedDemand(facts({ experience, visits: 10 })).of('strip');
    expect(use?.quantities).toEqual([1_400_000n]);
    expect(use?.variances?.[0]).toBeCloseTo(0.24, 12); // 0.4 x 0.6
    const few = new Map([['strip', experienceOf(1, used.slice(3, 10))]]);
    expect(bookedDemand(facts({ experience: few, visits: 7 })).of('strip')?.quantities).toEqual([
      1_000_000n,
    ]);
  });

  it('says nothing where nothing is booked, and nothing of what no template names', () => {
    expect(bookedDemand(facts({ groups: [] })).of('strip')).toBeUndefined();
    expect(bookedDemand(facts()).of('wedge')).toBeUndefined();
  });
});

describe('a diary that holds every visit', () => {
  const diary = { fullDays: 0, usualMinutes: week(120), bookedMinutes: [60, 240] };

  it('covers the booked share of a usual day, of every item', () => {
    const demand = bookedDemand(facts({ diary }));
    expect(demand.of('strip')?.coverage).toEqual([0.5, 1]);
    expect(demand.of('wedge')).toEqual({ quantities: [0n], variances: [0], coverage: [0.5, 1] });
  });

  it('covers the whole of a day that is as full as it will get, but no day that is empty', () => {
    const full = { ...diary, fullDays: 3, bookedMinutes: [30, 0, 30] };
    expect(bookedDemand(facts({ diary: full })).of('strip')?.coverage).toEqual([1, 0, 1]);
    const empty = { ...diary, fullDays: 3, bookedMinutes: [] };
    expect(bookedDemand(facts({ groups: [], diary: empty })).of('strip')).toBeUndefined();
  });

  it('covers nothing of a shade where nobody said which one', () => {
    const unknown = group({ shadeUnknown: true, minutes: 60 });
    const told = group({ needs: new Map([['paste', need(0.06)]]), minutes: 60 });
    const minutes = { ...diary, usualMinutes: week(120), bookedMinutes: [120] };
    const demand = bookedDemand(facts({ groups: [unknown, told], diary: minutes }));
    expect(demand.of('strip')?.coverage).toEqual([1]);
    expect(demand.of('paste')?.coverage).toEqual([0.5]);
  });

  it('expects what visits take beside their templates', () => {
    // A floss that no template plans, taken by two of ten visits.
    const experience = new Map([['floss', experienceOf(0, [], [1, 1])]]);
    const groups = [group({ toCome: 5 })];
    const use = bookedDemand(facts({ groups, diary, experience, visits: 10 })).of('floss');
    expect(use?.quantities).toEqual([1_000_000n]);
    expect(use?.variances?.[0]).toBeCloseTo(5 * (0.2 - 0.04), 12);
  });
});

describe('the share of bookings that are kept', () => {
  it('is the plain one without any, and nears what is seen', () => {
    expect(shareKept(0, 0)).toBeCloseTo(0.9, 12);
    expect(shareKept(20, 0)).toBeCloseTo(0.95, 12);
    expect(shareKept(0, 2000)).toBeLessThan(0.01);
  });

  it('never makes use out of nothing, nor more than all of it', () => {
    const many = fc.array(fc.record({ day: fc.nat(20), toCome: fc.integer({ min: 1, max: 9 }) }));
    const share = fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000);
    fc.assert(
      fc.property(many, share, (list, keptShare) => {
        const demand = bookedDemand(facts({ groups: list.map((each) => group(each)), keptShare }));
        const all = BigInt(list.reduce((sum, each) => sum + each.toCome, 0)) * 1_000_000n;
        const use = demand.of('strip');
        const total = (use?.quantities ?? []).reduce((sum, q) => sum + q, 0n);
        expect(total >= 0n && total <= all).toBe(true);
        expect((use?.variances ?? []).every((v) => v >= 0)).toBe(true);
      }),
      { numRuns: 50 },
    );
  });
});
