import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { epochDay, isoDay, type WorkCalendar } from './calendar.js';
import { countWith, negativeBinomial, poisson } from './counts.js';
import { scaled } from './distribution.js';
import { lattice } from './lattice.js';
import { arrivesBy, leadTime, observeLeadTime, onCalendar } from './lead-time.js';
import { demandOverLead, demandOverLeadMoments } from './lead-time-demand.js';

const WEEK: WorkCalendar = {
  openWeekdays: [true, true, true, true, true, false, false],
  closedDays: new Set(),
};
const FRIDAY = epochDay('2026-11-20');

describe('a lead time observed', () => {
  const outcome = {
    orderedOn: FRIDAY,
    ordered: 10n,
    parts: [
      { day: FRIDAY + 6, quantity: 6n },
      { day: FRIDAY + 3, quantity: 4n },
    ],
    seenUntil: FRIDAY + 10,
  };

  it('counts the supplier’s working days, to the first part and until complete', () => {
    expect(observeLeadTime(outcome, 'first part', WEEK)).toEqual({ days: 1, arrived: true });
    expect(observeLeadTime(outcome, 'complete', WEEK)).toEqual({ days: 4, arrived: true });
  });

  it('is still running when something is missing', () => {
    const late = { ...outcome, ordered: 11n };
    expect(observeLeadTime(late, 'complete', WEEK)).toEqual({ days: 6, arrived: false });
    const weekend = { ...outcome, orderedOn: FRIDAY + 1, parts: [], seenUntil: FRIDAY + 1 };
    expect(observeLeadTime(weekend, 'first part', WEEK)).toEqual({ days: 0, arrived: false });
  });

  it('cannot end before it starts', () => {
    const early = { ...outcome, parts: [{ day: FRIDAY - 1, quantity: 1n }] };
    expect(() => observeLeadTime(early, 'complete', WEEK)).toThrow(/2026-11-19/);
  });
});

const arrived = (days: number) => ({ days, arrived: true });
const open = (days: number) => ({ days, arrived: false });

describe('the lead time of a supplier', () => {
  it('is what it states before the first delivery, never a certainty', () => {
    const { days, observations, assumed } = leadTime([], { statedDays: 5 });
    expect([observations, assumed]).toEqual([0, 1]);
    expect(days.mean).toBeCloseTo(5, 9);
    expect(days.exceed(5)).toBeGreaterThan(0.2);
  });

  it('is three working days when nobody knows, and 0 when that is stated', () => {
    expect(leadTime([], { statedDays: null }).days.mean).toBeCloseTo(3, 9);
    const none = leadTime([], { statedDays: 0 }).days;
    expect([none.mean, none.quantile(0.99)]).toEqual([0, 0]);
  });

  it('is its own history once there is enough of it', () => {
    const many = Array.from({ length: 400 }, (_, i) => arrived(i % 4 === 0 ? 9 : 2));
    const { days, assumed } = leadTime(many, { statedDays: 1 });
    expect(assumed).toBeLessThan(0.01);
    expect(days.pmf(2)).toBeCloseTo(0.75, 1);
    expect(days.quantile(0.9)).toBe(9);
  });

  it('does not make one delivery a certainty', () => {
    const { days } = leadTime([arrived(2)], { statedDays: 3 });
    expect(days.exceed(3)).toBeGreaterThan(0.1);
    expect(days.quantile(0.5)).toBeLessThanOrEqual(3);
  });

  it('weighs open orders as Kaplan and Meier do', () => {
    // By hand: at risk 5, 4, 2; survival 4/5, then 4/5 * 1/2 after one order left at 4 days.
    const seen = [arrived(2), arrived(5), open(4), open(3), arrived(6)];
    const few = leadTime(seen, { statedDays: 4 });
    expect(few).toMatchObject({ observations: 3, late: 2 });
    const times = 200;
    const many = leadTime(Array.from({ length: times }, () => seen).flat(), { statedDays: 4 });
    expect(many.days.pmf(2)).toBeCloseTo(0.2, 2);
    expect(many.days.pmf(5)).toBeCloseTo(0.4, 2);
    expect(many.days.pmf(6)).toBeCloseTo(0.4, 2);
  });

  it('grows with an order that does not come', () => {
    const quick = [arrived(2), arrived(2), arrived(3)];
    const before = leadTime(quick, { statedDays: 2 }).days;
    const waiting = leadTime([...quick, open(30)], { statedDays: 2 }).days;
    expect(waiting.exceed(30)).toBeGreaterThan(before.exceed(30) + 0.05);
    const never = leadTime([open(30)], { statedDays: 2 }).days;
    expect(never.quantile(0.01)).toBeGreaterThan(30);
  });

  it('adds up to 1 and does not mind the order of deliveries', () => {
    const observation = fc.record({ days: fc.integer({ min: 0, max: 40 }), arrived: fc.boolean() });
    fc.assert(
      fc.property(
        fc.array(observation, { maxLength: 12 }),
        fc.option(fc.integer({ min: 0, max: 20 })),
        (seen, statedDays) => {
          const one = leadTime(seen, { statedDays }).days;
          const other = leadTime([...seen].reverse(), { statedDays }).days;
          expect(one.weights.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
          expect(other.mean).toBeCloseTo(one.mean, 9);
        },
      ),
    );
  });

  it('refuses half days and less than nothing', () => {
    expect(() => leadTime([arrived(-1)], { statedDays: 2 })).toThrow(/days/);
    expect(() => leadTime([], { statedDays: 1.5 })).toThrow(/statedDays/);
  });

  it('skips closed days on the calendar', () => {
    const two = lattice([0, 0.5, 0.5]);
    const days = onCalendar(two, WEEK, FRIDAY);
    expect([days.pmf(3), days.pmf(4)]).toEqual([0.5, 0.5]);
    expect(isoDay(arrivesBy(two, WEEK, FRIDAY, 0.9))).toBe('2026-11-24');
  });
});

describe('demand over a random lead time', () => {
  it('has the mean and variance of the formula', () => {
    const lead = lattice([0, 0.1, 0.4, 0.3, 0.2]);
    const day = { mean: 2.5, variance: 6 };
    const whole = demandOverLead((n) => countWith(n * day.mean, n * day.variance), lead);
    const formula = demandOverLeadMoments(day, lead);
    expect(whole.mean).toBeCloseTo(formula.mean, 9);
    expect(whole.variance).toBeCloseTo(formula.variance, 7);
    const review = demandOverLead((n) => countWith(n * day.mean, n * day.variance), lead, 5);
    const longer = demandOverLeadMoments(day, { mean: lead.mean + 5, variance: lead.variance });
    expect(review.mean).toBeCloseTo(longer.mean, 9);
    expect(review.variance).toBeCloseTo(longer.variance, 6);
  });

  it('is the demand of the day itself when the lead time is certain', () => {
    const two = demandOverLead((n) => poisson(1.5 * n), lattice([0, 0, 1]));
    for (const k of [0, 2, 7]) expect(two.cdf(k)).toBeCloseTo(poisson(3).cdf(k), 12);
    expect(demandOverLead(() => poisson(0), lattice([1])).quantile(0.99)).toBe(0);
  });

  it('is the same mixture for large demand, where it is not held as points', () => {
    const lead = lattice([0, 0.5, 0.5]);
    const large = demandOverLead((n) => negativeBinomial(1e5 * n, 4e5 * n), lead);
    const q = large.quantile(0.95);
    expect(large.cdf(q)).toBeGreaterThanOrEqual(0.95 - 1e-12);
    expect(large.cdf(q - 1)).toBeLessThan(0.95);
    expect(q).toBe(Math.round(q));
  });

  it('takes distributions in any unit', () => {
    const lead = lattice([0, 0.5, 0.5]);
    const grams = demandOverLead((n) => scaled(poisson(3 * n), 0.06), lead);
    const portions = demandOverLead((n) => poisson(3 * n), lead);
    for (const p of [0.5, 0.9, 0.99]) {
      expect(grams.quantile(p)).toBeCloseTo(0.06 * portions.quantile(p), 9);
    }
  });

  it('refuses half a day of review', () => {
    expect(() => demandOverLead(() => poisson(1), lattice([1]), 0.5)).toThrow(/reviewDays/);
    expect(() =>
      demandOverLeadMoments({ mean: -1, variance: 1 }, { mean: 1, variance: 0 }),
    ).toThrow(/mean demand/);
  });
});
