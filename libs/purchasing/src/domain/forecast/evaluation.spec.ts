import { describe, expect, it } from '@jest/globals';
import { negativeBinomial } from './counts.js';
import { certain } from './distribution.js';
import {
  chosen,
  evaluate,
  fillMissing,
  MONTHLY_PROTOCOL,
  naive,
  seasonalNaive,
  spreadOf,
  steady,
} from './evaluation.js';
import { exponentialSmoothing } from './point-methods.js';
import { seededRandom } from './seeded-random.js';
import { seriesFromCsv } from './series-csv.js';

const SMALL = { test: 2, lag: 2, levels: [0.1, 0.5, 0.9] };
const Z = 1.2815515655446004; // standard normal quantile at 0.9

describe('the evaluation by hand', () => {
  it('pools errors over series and periods and leaves out what is missing', () => {
    const series = [
      Float64Array.from([1, 3, 2, 5, 4, Number.NaN]),
      Float64Array.from([2, 2, 2, 2, 2, 4]),
    ];
    const flat = steady(SMALL.levels, (train) => ({ point: train[3] ?? 0, of: certain(2) }));
    const found = evaluate(series, SMALL, flat);
    // Forecasts 5 and 2; actuals 4, then 2 and 4: errors 1, 0, -2. Only the first series has a
    // scale: |2 - 1|, |5 - 3| give 1.5. Pinball at 2: misses of 2, 0, 2 at mean level 0.5.
    expect(found.mae).toBeCloseTo(1, 12);
    expect(found.mse).toBeCloseTo(5 / 3, 12);
    expect(found.meanError).toBeCloseTo(-1 / 3, 12);
    expect(found.mase).toBeCloseTo(1 / 1.5, 12);
    expect(found.wql).toBeCloseTo((2 * (1 + 1)) / 10, 12);
  });

  it('carries the last value forward, and the first one backward', () => {
    const none = Number.NaN;
    expect([...fillMissing([none, 2, none, 3, none])]).toEqual([2, 2, 2, 3, 3]);
    expect([...fillMissing([none, none])]).toEqual([0, 0]);
  });

  it('gives the naive methods their normal spread', () => {
    const train = Float64Array.from([1, 3, 2, 4]);
    const [first, second] = naive([0.9])(train, 2, 0);
    const sd = Math.sqrt((4 + 1 + 4) / 3);
    expect(first?.quantiles[0]).toBeCloseTo(4 + Z * sd, 9);
    expect(second?.quantiles[0]).toBeCloseTo(4 + Z * sd * Math.SQRT2, 9);
    const seasonal = seasonalNaive([0.9], 2)(train, 3, 0);
    expect(seasonal.map((f) => f.point)).toEqual([2, 4, 2]);
    expect(seasonal[0]?.quantiles[0]).toBeCloseTo(2 + Z * 1, 9);
    expect(naive([0.9])(Float64Array.from([2, 2]), 1, 0)).toEqual([{ point: 2, quantiles: [2] }]);
  });

  it('scores a zero forecast 1 in weighted quantile loss, whatever the use', () => {
    const zero = steady(MONTHLY_PROTOCOL.levels, () => ({ point: 0, of: certain(0) }));
    const series = [Float64Array.from({ length: 40 }, (_, t) => t % 3)];
    expect(evaluate(series, MONTHLY_PROTOCOL, zero).wql).toBeCloseTo(1, 12);
  });

  it('has no scale where nothing changed and no loss where nothing was used', () => {
    const zero = steady(SMALL.levels, () => ({ point: 0, of: certain(0) }));
    const found = evaluate([new Float64Array(9)], SMALL, zero);
    expect([found.mase, found.wql]).toEqual([null, null]);
    expect(() => evaluate([new Float64Array(2)], SMALL, zero)).toThrow(/series 1/);
  });
});

describe('the method chosen per series', () => {
  /** Invented parts: rare, uneven, some fading; the truth changes level within the history. */
  function parts(count: number): Float64Array[] {
    const random = seededRandom(77);
    return Array.from({ length: count }, () => {
      const [chance, size] = [0.1 + 0.5 * random(), 1 + Math.floor(4 * random())];
      const fades = random() < 0.4;
      return Float64Array.from({ length: 51 }, (_, t) => {
        const now = fades ? chance * Math.max(0, 1 - t / 45) : chance;
        return random() < now ? 1 + Math.floor(size * random()) : 0;
      });
    });
  }

  it('is no worse than plain smoothing on invented parts, and sees no test period', () => {
    const series = parts(150);
    const options = {
      protocol: MONTHLY_PROTOCOL,
      period: 'month' as const,
      yearLength: 12,
      seed: 1,
    };
    const own = evaluate(series, MONTHLY_PROTOCOL, chosen(series, options));
    const plain = steady(MONTHLY_PROTOCOL.levels, (train) => {
      const level = exponentialSmoothing(train, { alpha: 0.1 }).level;
      const of =
        level > 0 ? negativeBinomial(level, level * (spreadOf(train).ratio + 1e-6)) : certain(0);
      return { point: level, of };
    });
    const smoothing = evaluate(series, MONTHLY_PROTOCOL, plain);
    expect(own.wql ?? 9).toBeLessThan((smoothing.wql ?? 0) * 1.005);
    expect(own.mse).toBeLessThan(smoothing.mse * 1.01);
    const blind = series.map((y) => y.map((v, t) => (t < 39 ? v : 0)));
    const forecasts = (all: Float64Array[]) =>
      chosen(all, options)(fillMissing((all[3] ?? new Float64Array(0)).subarray(0, 39)), 12, 3);
    expect(forecasts(blind)).toEqual(forecasts(series));
  });
});

describe('series from CSV', () => {
  it('reads columns, empty cells are missing', () => {
    const [one, two] = seriesFromCsv('t,a,b\r\n1,0,2.5\r\n2,,3\n');
    expect([one?.name, two?.name]).toEqual(['a', 'b']);
    expect([...(one?.values ?? [])]).toEqual([0, Number.NaN]);
    expect([...(two?.values ?? [])]).toEqual([2.5, 3]);
  });

  it.each([
    ['', /header/],
    ['t,a', /header/],
    ['t\n1', /header/],
    ['t,a\n1', /line 2 has 1 cells/],
    ['t,a\n1,x', /line 2, series a/],
    ['t,a\n1,-3', /line 2, series a/],
  ])('refuses %j', (text, message) => {
    expect(() => seriesFromCsv(text)).toThrow(message);
  });
});
