import { describe, expect, it } from '@jest/globals';
import {
  type DayForecast,
  type DayUse,
  demandHistory,
  demandOverLead,
  epochDay,
  forecastHistory,
  judgeHistory,
  leadTime,
  NO_SHELF,
  observeLeadTime,
  onCalendar,
  type PolicyView,
  replay,
  seededRandom,
  seedFrom,
  type WorkCalendar,
} from './index.js';

const WEEK: WorkCalendar = {
  openWeekdays: [true, true, true, true, true, false, false],
  closedDays: new Set(),
};
const FIRST = epochDay('2024-01-01');
const DAYS = 728;
const START = 364;
const PORTION = 60_000n;

/** An invented year of quiet use, then one of twice as much: an old minimum no longer fits. */
function uses(): DayUse[] {
  const random = seededRandom(seedFrom('adhesive, one bottle'));
  const found: DayUse[] = [];
  for (let t = 0; t < DAYS; t += 1) {
    const open = WEEK.openWeekdays[t % 7] === true;
    const portions = open && random() < 0.4 ? 1 + Math.floor(random() * (t < START ? 2 : 5)) : 0;
    if (portions > 0) found.push({ day: FIRST + t, issued: BigInt(portions) * PORTION });
  }
  return found;
}

describe('a year replayed under the computed policy and under an old minimum and maximum', () => {
  const all = uses();
  const history = (lastDay: number) =>
    demandHistory(
      all.filter((use) => use.day <= lastDay),
      { firstDay: FIRST, lastDay, calendar: WEEK },
    );
  const options = { horizonDays: 14, seed: 3, draws: 300 };
  const forecastAt = (day: number): DayForecast => {
    const past = history(day - 1);
    return forecastHistory(past, judgeHistory(past, options), NO_SHELF, options);
  };
  const lead = leadTime(
    [3, 4, 4, 6].map((days) =>
      observeLeadTime(
        {
          orderedOn: FIRST,
          ordered: 1n,
          parts: [{ day: FIRST + days + (days > 4 ? 2 : 0), quantity: 1n }],
          seenUntil: FIRST + 30,
        },
        'complete',
        WEEK,
      ),
    ),
    { statedDays: 4 },
  ).days;

  const demand = history(FIRST + DAYS - 1).demand.subarray(START);
  const run = (policy: (view: PolicyView) => number) =>
    replay({
      firstDay: FIRST + START,
      demand,
      lots: [{ expires: FIRST + START + 200, amount: 12 }],
      unmet: 'lost',
      policy,
      deliver: ({ day, amount }) => [{ day: day + 6, amount }],
      expires: (day) => day + 300,
      unitValue: 1.2,
    });

  it('runs out less, and never looks at a day to come', () => {
    let reorderAt = 0;
    const computed = run(({ day, position, past }) => {
      if ((day - FIRST - START) % 28 === 0) {
        expect(past).toHaveLength(day - FIRST - START);
        const item = forecastAt(day);
        const days = onCalendar(lead, WEEK, day);
        reorderAt = demandOverLead((n) => item.stepsOver(n), days, 1).quantile(0.98);
      }
      return position <= reorderAt ? 20 : 0;
    });
    const old = run(({ position }) => (position <= 6 ? 20 : 0));
    expect(old.stockOutDays).toBeGreaterThan(4);
    expect(computed.stockOutDays).toBeLessThan(old.stockOutDays / 2);
    expect(computed.used + computed.unmet).toBeCloseTo(computed.demanded, 9);
    expect(computed.averageValue).toBeGreaterThan(old.averageValue);
    expect(computed.wasted).toBeLessThanOrEqual(20);
  });
});
