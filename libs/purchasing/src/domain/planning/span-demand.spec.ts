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
import type { BookedUse } from '../forecast/shelf-forecast.js';
import { reorderPoint } from '../policy/reorder-point.js';
import { itemHistory, practiceDays } from './item-history.js';
import { spanDemand } from './span-demand.js';

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

function demandBy(name: string, booked?: BookedUse) {
  const method = candidateMethods('day').find((m) => m.name === name);
  if (!method) throw new Error(`No method is called ${name}`);
  const series = dailySeries(history, weekdayProfile(history));
  const only = { ...judged, losses: [0] };
  const options = { methods: [method], shelf: NO_SHELF, resampling: { draws: 2000, seed: 7 } };
  return spanDemand(forecastItem(series, only, options), history, booked);
}

const METHODS = ['exponential smoothing', 'resampling', 'compound'];

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

describe('a forecast with booked visits', () => {
  const spans = [
    [0, 1],
    [0, 12],
    [3, 9],
    [0, 90],
    [40, 200],
  ] as const;
  const told = (of: ReturnType<typeof demandBy>) =>
    spans.map(([from, to]) => {
      const use = of.use(from, to);
      return [use.mean, use.variance, use.quantile(0.5), use.quantile(0.95), use.quantile(0.99)];
    });

  it('is exactly the one without them when there are none', () => {
    for (const name of METHODS) {
      const none = { quantities: [0n, 0n], variances: [0, 0], coverage: [0, 0, 0] };
      expect(told(demandBy(name, none))).toEqual(told(demandBy(name)));
      expect(told(demandBy(name, { quantities: [], coverage: null }))).toEqual(
        told(demandBy(name)),
      );
    }
  });

  it('needs less on a day booked out with less than usual, and the same afterwards', () => {
    for (const name of METHODS) {
      const usual = demandBy(name);
      // Monday and Tuesday are booked out with one piece each; a usual day uses two.
      const out = { quantities: [1_000_000n, 1_000_000n], variances: [0, 0], coverage: [1, 1] };
      const demand = demandBy(name, out);
      expect(demand.use(0, 2).mean).toBe(2);
      expect(demand.use(0, 2).quantile(0.999)).toBe(2);
      const [after, as] = [demand.use(2, 4), usual.use(2, 4)];
      expect([after.mean, after.variance]).toEqual([as.mean, as.variance]);
      const saved = usual.use(0, 2).mean - 2;
      expect(saved).toBeGreaterThan(1);
      const drawn = name === 'resampling' ? 0.1 * usual.use(0, 14).mean : 1e-9;
      const off = demand.use(0, 14).mean - (usual.use(0, 14).mean - saved);
      expect(Math.abs(off)).toBeLessThan(drawn);
    }
  });

  it('needs more once a day holds more than usual, and counts nothing twice', () => {
    for (const name of METHODS) {
      const usual = demandBy(name);
      const few = demandBy(name, { quantities: [1_000_000n], variances: [0], coverage: null });
      const many = demandBy(name, { quantities: [9_000_000n], variances: [0], coverage: null });
      const near = name === 'resampling' ? 0.25 : 1e-9;
      expect(Math.abs(few.use(0, 1).mean - usual.use(0, 1).mean)).toBeLessThan(near);
      expect(Math.abs(many.use(0, 1).mean - 9)).toBeLessThan(near);
      expect(many.use(0, 30).mean).toBeGreaterThan(usual.use(0, 30).mean + 5);
    }
  });

  it('varies as the bookings do', () => {
    const sure = { quantities: [9_000_000n], variances: [0], coverage: [1] };
    const unsure = { ...sure, variances: [0.9] };
    expect(demandBy('compound', sure).use(0, 1).variance).toBe(0);
    expect(demandBy('compound', unsure).use(0, 1).variance).toBeCloseTo(0.9, 9);
  });
});
