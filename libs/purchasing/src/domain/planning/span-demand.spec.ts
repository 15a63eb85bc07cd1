import { describe, expect, it } from '@jest/globals';
import {
  epochDay,
  forecastHistory,
  judgeHistory,
  NO_SHELF,
  seededRandom,
} from '../forecast/index.js';
import { forecastItem } from '../forecast/item-forecast.js';
import { candidateMethods } from '../forecast/methods.js';
import { dailySeries, weekdayProfile } from '../forecast/period-series.js';
import { reorderPoint } from '../policy/reorder-point.js';
import { itemHistory, practiceDays } from './item-history.js';
import { PLAIN_TERMS } from './planning-settings.js';
import { spanDemand } from './span-demand.js';
import { statedLeadTime } from './supplier-lead.js';

const TODAY = epochDay('2026-05-04');
const OPTIONS = { horizonDays: 12, seed: 7 };

/** A year of invented use, one to three a day from Monday to Thursday. */
function yearOfUse() {
  const random = seededRandom(20_261_127);
  const days = Array.from({ length: 365 }, (_, i) => TODAY - 365 + i).filter((d) =>
    [1, 2, 3, 4].includes(new Date(d * 86_400_000).getUTCDay()),
  );
  const uses = days.map((day) => ({
    day,
    issued: BigInt(1 + Math.floor(random() * 3)) * 1_000_000n,
  }));
  return itemHistory({
    uses,
    oneOffs: [],
    practice: practiceDays(days, TODAY),
    today: TODAY,
    stockedSince: null,
    leaveOutRetakes: false,
  });
}

const history = yearOfUse();
const judged = judgeHistory(history, OPTIONS);

function demandBy(name: string) {
  const method = candidateMethods('day').find((m) => m.name === name);
  if (!method) throw new Error(`No method is called ${name}`);
  const series = dailySeries(history, weekdayProfile(history));
  const only = { ...judged, losses: [0] };
  const options = { methods: [method], shelf: NO_SHELF, resampling: { draws: 2000, seed: 7 } };
  return spanDemand(forecastItem(series, only, options), history);
}

describe('a forecast as the policy asks it', () => {
  it('is the same forecast, from today on', () => {
    const forecast = forecastHistory(history, judged, NO_SHELF, OPTIONS);
    const demand = spanDemand(forecast.item, history);
    for (const days of [1, 7, 14, 30]) {
      const [mine, theirs] = [demand.use(0, days), forecast.stepsOver(days)];
      expect([mine.mean, mine.variance]).toEqual([theirs.mean, theirs.variance]);
      expect(mine.quantile(0.95)).toBe(theirs.quantile(0.95));
    }
  });

  it('knows the days of the week: closed days use nothing, spans add up in the mean', () => {
    for (const name of ['exponential smoothing', 'resampling', 'compound']) {
      const demand = demandBy(name);
      // Friday to Sunday, four days from a Monday on.
      expect(demand.use(4, 7).mean).toBe(0);
      expect(demand.use(3, 3).mean).toBe(0);
      const parts = demand.use(0, 5).mean + demand.use(5, 14).mean;
      expect(Math.abs(parts / demand.use(0, 14).mean - 1)).toBeLessThan(0.03);
    }
  });

  it('drawn from the past, tells long spans as the same sum of days', () => {
    const demand = demandBy('resampling');
    // Use of one to three, all alike: mean 2 and variance 2/3 on each of four days a week.
    for (const [days, open] of [
      [56, 32],
      [63, 36],
      [364, 208],
    ] as const) {
      const use = demand.use(0, days);
      expect(Math.abs(use.mean / (2 * open) - 1)).toBeLessThan(0.06);
      expect(Math.abs(use.variance / ((2 / 3) * open) - 1)).toBeLessThan(0.2);
    }
    const [short, long] = [demand.use(0, 56), demand.use(0, 57)];
    expect(long.mean).toBeGreaterThan(short.mean);
    expect(Math.abs(long.quantile(0.95) - short.quantile(0.95))).toBeLessThan(6);
  });

  it('answers once for each span, and refuses what is none', () => {
    const demand = demandBy('resampling');
    expect(demand.use(0, 20)).toBe(demand.use(0, 20));
    expect(() => demand.use(5, 4)).toThrow(RangeError);
    expect(() => demand.use(0, 1.5)).toThrow(RangeError);
  });

  it('gives a reorder point that rises with the service', () => {
    const protection = demandBy('exponential smoothing').use(0, 11);
    const at = (level: number) => reorderPoint({ measure: 'cycle service', level }, protection, 1);
    expect(at(0.9)).toBeLessThan(at(0.99));
    expect(protection.cdf(at(0.95))).toBeGreaterThanOrEqual(0.95);
    expect(protection.cdf(at(0.95) - 1)).toBeLessThan(0.95);
  });
});

describe('a stated lead time', () => {
  const mean = (lead: ReturnType<typeof statedLeadTime>) =>
    lead.reduce((sum, { days, probability }) => sum + days * probability, 0);

  it('has a spread, and chances that add up', () => {
    const lead = statedLeadTime(PLAIN_TERMS, 3, TODAY);
    expect(lead.length).toBeGreaterThan(3);
    expect(lead.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 12);
    // Three working days from a Monday, some of them over a weekend.
    expect(mean(lead)).toBeGreaterThan(3);
    expect(mean(lead)).toBeLessThan(4.5);
  });

  it('goes by the terms of the supplier, and its working days', () => {
    const own = statedLeadTime({ ...PLAIN_TERMS, leadDays: 10 }, 3, TODAY);
    expect(mean(own)).toBeGreaterThan(12);
    const mondays = statedLeadTime({ ...PLAIN_TERMS, workingDays: ['monday'] }, 3, TODAY);
    expect(mondays.every(({ days }) => days % 7 === 0)).toBe(true);
  });

  it('of no days is today, or soon after', () => {
    const lead = statedLeadTime({ ...PLAIN_TERMS, leadDays: 0 }, 3, TODAY);
    expect(lead[0]?.days).toBe(0);
    expect(mean(lead)).toBeLessThan(2);
  });
});
