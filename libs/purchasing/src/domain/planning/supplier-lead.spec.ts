import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { epochDay, openDaysBetween } from '../forecast/calendar.js';
import { leadTimeWithin, meanLeadTime } from '../policy/demand.js';
import { PLAIN_TERMS, type SupplyTerms } from './planning-settings.js';
import { arrivalOf, leadFrom, type SentOrder, supplierLead } from './supplier-lead.js';

// 2026-05-04 is a Monday.
const TODAY = epochDay('2026-05-04');
const lead = (changes: Partial<SupplyTerms> = {}, sent: readonly SentOrder[] = []) =>
  supplierLead({ ...PLAIN_TERMS, ...changes }, 3, sent, TODAY);
const fromToday = (changes: Partial<SupplyTerms> = {}) => leadFrom(lead(changes), TODAY);

/** Ordered on a Monday `weeks` ago; the parts came so many days later. */
function order(weeks: number, ...parts: (readonly [days: number, quantity: bigint])[]): SentOrder {
  const orderedOn = TODAY - 7 * weeks;
  const lines = [
    {
      ordered: 10n,
      parts: parts.map(([days, quantity]) => ({ day: orderedOn + days, quantity })),
    },
  ];
  return { orderedOn, closed: false, lines };
}

describe('a stated lead time', () => {
  it('has a spread, and chances that add up', () => {
    const stated = fromToday();
    expect(stated.length).toBeGreaterThan(3);
    expect(stated.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 12);
    // Three working days from a Monday, some of them over a weekend.
    expect(meanLeadTime(stated)).toBeGreaterThan(3);
    expect(meanLeadTime(stated)).toBeLessThan(4.5);
  });

  it('goes by the terms of the supplier, its working days and its closures', () => {
    expect(meanLeadTime(fromToday({ leadDays: 10 }))).toBeGreaterThan(12);
    const mondays = fromToday({ workingDays: ['monday'] });
    expect(mondays.every(({ days }) => days % 7 === 0)).toBe(true);
    const closures = [{ firstDay: '2026-05-04', lastDay: '2026-05-17', note: null }];
    const closed = fromToday({ closures });
    // Nothing happens before Monday the 18th, fourteen days from now.
    expect(closed.every(({ days }) => days >= 14)).toBe(true);
    expect(meanLeadTime(closed) - meanLeadTime(fromToday())).toBeCloseTo(14, 9);
  });

  it('of no days is today, or soon after', () => {
    const none = fromToday({ leadDays: 0 });
    expect(none[0]?.days).toBe(0);
    expect(meanLeadTime(none)).toBeLessThan(2);
  });
});

describe('a lead time seen', () => {
  it('takes over from the stated one, the more orders there are', () => {
    const slow = (count: number) => Array.from({ length: count }, (_, i) => order(i + 3, [8, 10n]));
    const found = [0, 1, 4, 40].map((count) => lead({ leadDays: 2 }, slow(count)));
    expect(found.map(({ orders, open }) => [orders, open])).toEqual([
      ...[
        [0, 0],
        [1, 0],
        [4, 0],
        [40, 0],
      ],
    ]);
    expect(found.map(({ assumed }) => assumed)).toEqual([1, 0.8, 0.5, 4 / 44]);
    const means = found.map(({ workingDays }) => workingDays.mean);
    expect(means).toEqual([...means].sort((a, b) => a - b));
    // Eight days from a Monday are six working days.
    expect(means[0]).toBeCloseTo(2, 6);
    expect(means[3]).toBeCloseTo(6, 0);
  });

  it('shares an order out over the days on which its parts came', () => {
    const parts = Array.from({ length: 60 }, (_, i) => order(i + 3, [2, 7n], [9, 3n]));
    const { workingDays } = lead({ leadDays: 4 }, parts);
    // 60 orders against the weight of four: seven tenths after 2, three after 7 working days.
    expect(workingDays.cdf(2)).toBeCloseTo(0.7, 1);
    expect(workingDays.cdf(6)).toBeLessThan(0.78);
    expect(workingDays.cdf(7)).toBeGreaterThan(0.95);
  });

  it('knows that what has not come takes longer, unless the order was closed', () => {
    const waiting = [order(4), order(5, [3, 4n])];
    const open = lead({}, waiting);
    expect([open.orders, open.open]).toEqual([2, 2]);
    expect(open.workingDays.mean).toBeGreaterThan(lead().workingDays.mean + 1);
    const closed = lead(
      {},
      waiting.map((each) => ({ ...each, closed: true })),
    );
    // Of the first nothing came at all, so it tells nothing.
    expect([closed.orders, closed.open]).toEqual([1, 0]);
  });

  it('is a distribution whatever came and did not', () => {
    const part = fc.tuple(fc.integer({ min: 0, max: 40 }), fc.bigInt({ min: 1n, max: 20n }));
    const sent = fc.array(
      fc
        .record({
          weeks: fc.integer({ min: 6, max: 60 }),
          parts: fc.array(part, { maxLength: 3 }),
          closed: fc.boolean(),
        })
        .map(({ weeks, parts, closed }) => ({ ...order(weeks, ...parts), closed })),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(sent, fc.integer({ min: 0, max: 12 }), (orders, leadDays) => {
        const found = leadFrom(lead({ leadDays }, orders), TODAY);
        expect(found.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
        expect(found.every(({ days, probability }) => days >= 0 && probability > 0)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

describe('an order on its way', () => {
  const usual = lead({ leadDays: 5 });

  it('comes around the day that is expected, and not before today', () => {
    const expectedOn = TODAY + 6;
    const arrival = arrivalOf(usual, { orderedOn: TODAY - 4, expectedOn }, TODAY);
    expect(leadTimeWithin(arrival, 0.5)).toBeGreaterThanOrEqual(5);
    expect(leadTimeWithin(arrival, 0.5)).toBeLessThanOrEqual(8);
    expect(arrival.every(({ days }) => days >= 0)).toBe(true);
    const sum = arrival.reduce((total, { probability }) => total + probability, 0);
    expect(sum).toBeCloseTo(1, 9);
  });

  it('that is late comes soon or later, and never in the past', () => {
    const late = arrivalOf(usual, { orderedOn: TODAY - 30, expectedOn: TODAY - 21 }, TODAY);
    expect(late.every(({ days }) => days >= 0)).toBe(true);
    const lost = arrivalOf(usual, { orderedOn: TODAY - 300, expectedOn: TODAY - 290 }, TODAY);
    expect([lost[0]?.days, leadTimeWithin(lost, 0.5)]).toEqual([1, 4]);
  });
});

it('counts working days between closures', () => {
  const closures = [{ firstDay: '2026-12-24', lastDay: '2027-01-01', note: 'Turn of the year' }];
  const { calendar } = lead({ closures });
  const [from, to] = [epochDay('2026-12-23'), epochDay('2027-01-04')];
  expect(openDaysBetween(calendar, from, to)).toBe(1);
});
