import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { epochDay, isoDay } from '../forecast/calendar.js';
import { expectedFromSteps } from '../forecast/quantity-grid.js';
import { type HistoryFacts, itemHistory, practiceDays, weeklyDemand } from './item-history.js';

// 2026-05-04 is a Monday.
const TODAY = epochDay('2026-05-04');
const day = (iso: string) => epochDay(iso);

/** Monday to Thursday for eight weeks, but for one holiday. */
const VISITS = Array.from({ length: 56 }, (_, i) => TODAY - 56 + i).filter(
  (d) => [1, 2, 3, 4].includes(new Date(d * 86_400_000).getUTCDay()) && isoDay(d) !== '2026-04-06',
);

function facts(change: Partial<HistoryFacts> = {}): HistoryFacts {
  return {
    uses: [
      { day: day('2026-04-01'), issued: 60_000n },
      { day: day('2026-04-07'), issued: 120_000n, shortfall: 60_000n, retakes: 60_000n },
    ],
    oneOffs: [],
    practice: practiceDays(VISITS, TODAY),
    today: TODAY,
    stockedSince: day('2026-03-10'),
    leaveOutRetakes: false,
    ...change,
  };
}

describe('the days of a practice', () => {
  it('are the weekdays that it usually works, and its holidays are silent', () => {
    const { calendar, silent } = practiceDays(VISITS, TODAY);
    expect(calendar.openWeekdays).toEqual([true, true, true, true, false, false, false]);
    expect(silent.has(day('2026-04-06'))).toBe(true);
    expect(silent.has(day('2026-04-07'))).toBe(false);
  });

  it('are all of them before the first visit', () => {
    const { calendar, silent } = practiceDays([], TODAY);
    expect([calendar.openWeekdays.every(Boolean), silent.size]).toEqual([true, 0]);
  });
});

describe('the history of an item', () => {
  it('runs from the first use to yesterday, and knows what is evidence', () => {
    const history = itemHistory(facts());
    expect(isoDay(history.firstDay)).toBe('2026-04-01');
    expect(isoDay(history.firstDay + history.demand.length - 1)).toBe('2026-05-03');
    const known = VISITS.filter((d) => d >= history.firstDay).length;
    expect(history.counts.reduce((sum, one) => sum + one, 0)).toBe(known);
    expect([history.step, history.shortfall]).toEqual([60_000n, 60_000n]);
  });

  it('of what was never used runs from its first delivery; of what never came, yesterday', () => {
    expect(isoDay(itemHistory(facts({ uses: [] })).firstDay)).toBe('2026-03-10');
    const nothing = itemHistory(facts({ uses: [], stockedSince: null }));
    expect([isoDay(nothing.firstDay), nothing.demand.length]).toEqual(['2026-05-03', 1]);
    const today = itemHistory(facts({ uses: [], stockedSince: TODAY }));
    expect(today.demand.length).toBe(1);
  });

  it('leaves marked days out, use and evidence', () => {
    const span = { first: day('2026-04-06'), last: day('2026-04-08') };
    const [plain, marked] = [itemHistory(facts()), itemHistory(facts({ oneOffs: [span] }))];
    expect(marked.leftOut).toBe(180_000n);
    const known = (h: typeof plain) => h.counts.reduce((sum, one) => sum + one, 0);
    // The 6th was silent already.
    expect(known(marked)).toBe(known(plain) - 2);
  });

  it('leaves retakes out only where the practice wants it', () => {
    expect(itemHistory(facts()).leftOut).toBe(0n);
    expect(itemHistory(facts({ leaveOutRetakes: true })).leftOut).toBe(60_000n);
  });

  it('neither makes nor loses use, by day and by week', () => {
    const use = fc.record({
      day: fc.integer({ min: TODAY - 200, max: TODAY - 1 }),
      issued: fc.bigInt({ min: 0n, max: 5_000_000n }),
      shortfall: fc.bigInt({ min: 0n, max: 5_000_000n }),
    });
    const mark = fc.record({
      first: fc.integer({ min: TODAY - 220, max: TODAY + 10 }),
      length: fc.nat(20),
    });
    fc.assert(
      fc.property(
        fc.array(use, { minLength: 1 }),
        fc.array(mark, { maxLength: 3 }),
        (uses, marks) => {
          const oneOffs = marks.map(({ first, length }) => ({ first, last: first + length }));
          const history = itemHistory(facts({ uses, oneOffs }));
          const total = uses.reduce((sum, each) => sum + each.issued + each.shortfall, 0n);
          const kept = total - history.leftOut;
          const steps = (sum: number) => Number(expectedFromSteps(sum, history.step));
          const days = history.demand.reduce((sum, each) => sum + each, 0);
          expect(Math.abs(steps(days) - Number(kept))).toBeLessThanOrEqual(1);
          const weeks = weeklyDemand(history);
          expect(
            Math.abs(steps(weeks.reduce((sum, w) => sum + w.steps, 0)) - Number(kept)),
          ).toBeLessThanOrEqual(1);
          expect(weeks.every(({ monday }) => new Date(monday * 86_400_000).getUTCDay() === 1)).toBe(
            true,
          );
        },
      ),
    );
  });
});
