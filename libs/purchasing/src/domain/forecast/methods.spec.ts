import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { backtest, originsOf } from './backtest.js';
import { chooseMethod, driftOf, hasDied, NO_SHELF, ShelfGatherer } from './choose-method.js';
import { dispersions, forecastRatio } from './dispersion.js';
import { SERVICE_LEVELS } from './measures.js';
import { methodStates } from './method-states.js';
import { candidateMethods, type Method, type MethodName, methodKey } from './methods.js';
import { Groups, type PeriodSeries, plainSeries } from './period-series.js';
import {
  croston,
  exponentialSmoothing,
  meanForecast,
  shaleBoylanJohnston,
  syntetosBoylan,
  tsb,
} from './point-methods.js';
import { seededRandom } from './seeded-random.js';

const method = (name: MethodName, alpha = 0, beta = 0): Method => ({ name, alpha, beta });
const uses = fc.array(fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 20 })), {
  minLength: 2,
  maxLength: 50,
});

const PLAIN: [Method, (y: number[]) => number][] = [
  [method('mean'), (y) => meanForecast(y).level],
  [
    method('exponential smoothing', 0.2),
    (y) => exponentialSmoothing(y, { alpha: 0.2, start: 'mean' }).level,
  ],
  [method('Croston', 0.1, 0.2), (y) => croston(y, { alpha: 0.1, beta: 0.2 }).level],
  [method('Syntetos-Boylan', 0.1, 0.2), (y) => syntetosBoylan(y, { alpha: 0.1, beta: 0.2 }).level],
  [
    method('Shale-Boylan-Johnston', 0.1, 0.2),
    (y) => shaleBoylanJohnston(y, { alpha: 0.1, beta: 0.2 }).level,
  ],
];

describe('states of the methods', () => {
  it.each(PLAIN)('%j is the point method where all periods weigh 1', (m, point) => {
    fc.assert(
      fc.property(uses, (y) => {
        const origins = [1, Math.ceil(y.length / 2), y.length];
        for (const [i, state] of methodStates(plainSeries(y), m, origins).entries()) {
          expect(state?.level).toBeCloseTo(point(y.slice(0, origins[i])), 9);
        }
      }),
    );
  });

  it('TSB starts from the share of periods with use and forgets that start', () => {
    const y = [0, 2, 0, 0, 4, 0];
    const [state] = methodStates(plainSeries(y), method('TSB', 0.5, 0.5), [6]);
    // By hand: p = 1/3, then 1/6, 7/12, 7/24, 7/48, 55/96, 55/192; z = 2, then 3.
    expect(state?.level).toBeCloseTo((3 * 55) / 192, 12);
    const long = [...y, ...new Array<number>(300).fill(0), 1, 1, 1, 0];
    const [later] = methodStates(plainSeries(long), method('TSB', 0.1, 0.1), [long.length]);
    const plain = tsb(long, { alpha: 0.1, beta: 0.1, start: 'naive' }).level;
    expect(later?.level).toBeCloseTo(plain, 9);
  });

  it('never looks past its origin', () => {
    fc.assert(
      fc.property(uses, uses, fc.constantFrom(...candidateMethods('week')), (y, rest, m) => {
        const at = y.length;
        const [alone] = methodStates(plainSeries(y, 12), m, [at]);
        const [within] = methodStates(plainSeries([...y, ...rest], 12), m, [at]);
        expect(within).toEqual(alone);
      }),
    );
  });

  it('takes closed days as no evidence at all', () => {
    const y = [3, 0, 4, 0, 5, 0, 2, 0];
    const weight = Float64Array.from(y, (_, t) => (t % 2 === 0 ? 1 : 0));
    const closed: PeriodSeries = { ...plainSeries(y), weight };
    const open = plainSeries([3, 4, 5, 2]);
    for (const m of candidateMethods('day').filter((c) => c.name !== 'seasonal')) {
      expect(methodStates(closed, m, [8])[0]?.level).toBeCloseTo(
        methodStates(open, m, [4])[0]?.level ?? Number.NaN,
        12,
      );
    }
  });

  it('finds a yearly pattern, drawn towards none where data is thin', () => {
    const pattern = [1, 1, 1, 1, 1, 1, 5, 5, 1, 1, 1, 1].map((f) => f * 20);
    const y = Array.from({ length: 48 }, (_, t) => pattern[t % 12] ?? 0);
    const [state] = methodStates(plainSeries(y, 12), method('seasonal'), [48]);
    const august = (state?.level ?? 0) * (state?.season?.[7] ?? 0);
    const march = (state?.level ?? 0) * (state?.season?.[2] ?? 0);
    expect(august).toBeGreaterThan(50);
    expect(march).toBeLessThan(40);
    const short = methodStates(plainSeries(y.slice(0, 20), 12), method('seasonal'), [20]);
    expect(short).toEqual([null]);
    const flat = new Groups(12);
    for (let t = 0; t < 48; t += 1) flat.add(t % 12, 3);
    for (const factor of flat.factors()) expect(factor).toBeCloseTo(1, 12);
  });
});

describe('the candidates', () => {
  it.each(['day', 'week', 'month'] as const)('by %s have names of their own', (period) => {
    const keys = candidateMethods(period).map(methodKey);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys).toEqual(expect.arrayContaining(['mean', 'seasonal', 'Croston 0.1/0.1']));
    expect(keys[0]).toMatch(/^exponential smoothing/);
  });
});

describe('dispersion', () => {
  it('is variance over mean about the weighted mean', () => {
    const [plain] = dispersions(plainSeries([0, 2, 4, 2]), [4]);
    expect(plain).toEqual({ ratio: 8 / 3 / 2, periods: 4, demands: 3 });
    const series = {
      ...plainSeries([1, 3, 1, 3]),
      weight: Float64Array.from([0.5, 1.5, 0.5, 1.5]),
    };
    expect(dispersions(series, [4])[0]?.ratio).toBeCloseTo(0, 12);
  });

  it('is not believed below chance from few demands, and leans on the shelf when short', () => {
    const few = { ratio: 0.2, periods: 6, demands: 6 };
    expect(forecastRatio(few, null)).toBe(1);
    expect(forecastRatio({ ratio: 0.2, periods: 300, demands: 300 }, null)).toBe(0.2);
    expect(forecastRatio({ ratio: 5, periods: 12, demands: 6 }, 3)).toBeCloseTo(4, 12);
    expect(forecastRatio({ ratio: null, periods: 0, demands: 0 }, 3)).toBe(3);
  });
});

const methods = candidateMethods('day');
const settings = { methods, horizon: 5, levels: SERVICE_LEVELS, seed: 1 };

function series(chance: (t: number) => number, n: number, seed: number, size = 1): number[] {
  const random = seededRandom(seed);
  return Array.from({ length: n }, (_, t) => (random() < chance(t) ? size : 0));
}

describe('the backtest', () => {
  it('leaves a whole window after the last origin', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 900 }),
        fc.integer({ min: 1, max: 60 }),
        (n, horizon) => {
          const origins = originsOf(n, { ...settings, horizon });
          expect(origins.length).toBeLessThanOrEqual(13);
          for (const [i, at] of origins.entries()) {
            expect(at).toBeGreaterThanOrEqual(8);
            expect(at + horizon).toBeLessThanOrEqual(n);
            expect(at).toBeGreaterThan(origins[i - 1] ?? 0);
          }
        },
      ),
    );
  });

  it('scales with the unit, loss by loss, and does not change from run to run', () => {
    const y = series(() => 0.4, 200, 5, 2);
    const one = backtest(plainSeries(y), settings);
    expect(backtest(plainSeries(y), settings)).toEqual(one);
    expect(one.origins).toBeGreaterThan(5);
    expect(one.losses.filter((loss) => loss === null)).toHaveLength(1); // seasonal: no year
    for (const loss of one.losses) if (loss !== null) expect(loss).toBeGreaterThan(0);
  });

  it('has nothing to judge without use or with a short history', () => {
    expect(backtest(plainSeries(new Array(100).fill(0)), settings).origins).toBe(0);
    expect(backtest(plainSeries([1, 2, 3]), settings).origins).toBe(0);
    expect(backtest(plainSeries([]), settings)).toMatchObject({ origins: 0, usualUse: 0 });
  });

  it('sees what was expected against what was used', () => {
    const growing = backtest(
      plainSeries(Array.from({ length: 240 }, (_, t) => 1 + Math.floor(t / 8))),
      settings,
    );
    expect(growing.used).toBeGreaterThan(1.05 * growing.expected);
    const steady = backtest(plainSeries(new Array(240).fill(3)), settings);
    expect(steady.used).toBeCloseTo(steady.expected, 6);
  });

  it.each([0, 2.5, -1])('refuses a horizon of %p', (horizon) => {
    expect(() => backtest(plainSeries([1]), { ...settings, horizon })).toThrow(/horizon/);
  });
});

describe('the choice', () => {
  const pick = (y: number[]) => {
    const one = plainSeries(y);
    const judged = backtest(one, settings);
    const choice = chooseMethod(methods, judged, { shelf: NO_SHELF, died: hasDied(one) });
    return { ...choice, method: methods[choice.index] };
  };

  it('keeps to the plain default without use and for short histories', () => {
    expect(pick([0, 0, 0])).toMatchObject({ index: 0, reason: 'no use' });
    expect(pick([])).toMatchObject({ index: 0, reason: 'no use' });
    expect(pick([0, 1, 0, 2])).toMatchObject({ index: 0, reason: 'short history' });
  });

  it('leaves an item that died to methods that notice', () => {
    const died = series((t) => (t < 250 ? 0.5 : 0), 400, 9);
    const choice = pick(died);
    expect(choice.reason).toBe('died out');
    expect(['exponential smoothing', 'TSB']).toContain(choice.method?.name);
    expect(hasDied(plainSeries(series(() => 0.03, 400, 9)))).toBe(false);
    expect(hasDied(plainSeries([0, 0, 0, 5, ...new Array<number>(300).fill(0)]))).toBe(false);
  });

  it('follows a change of level faster than it follows chance', () => {
    const stable = pick(series(() => 0.5, 700, 12)).method;
    const moved = pick(
      Array.from({ length: 700 }, (_, t) => (t % 200 < 100 ? 2 : 12) + (t % 3)),
    ).method;
    expect(moved?.alpha).toBeGreaterThanOrEqual(0.08);
    expect(stable?.alpha ?? 1).toBeLessThan(0.11);
  });

  it('lets the shelf decide where an item cannot', () => {
    const item = backtest(plainSeries(series(() => 0.2, 60, 3)), settings);
    const losses = methods.map((m) => (m.name === 'TSB' && m.beta === 0.04 ? 0.7 : 1));
    const choice = chooseMethod(methods, item, {
      shelf: { losses, ratio: 1, drift: 1 },
      died: false,
    });
    expect(methods[choice.index]).toEqual(method('TSB', 0.1, 0.04));
  });
});

describe('what a shelf teaches', () => {
  it('does not depend on the order of its items nor on their units', () => {
    const items = [1, 2, 3, 4].map((seed) => series((t) => (t < 200 ? 0.5 : 0.3), 300, seed, seed));
    const gather = (all: number[][]) => {
      const gatherer = new ShelfGatherer(methods.length);
      for (const y of all) gatherer.add(backtest(plainSeries(y), settings));
      return gatherer.prior();
    };
    const [one, other] = [gather(items), gather([...items].reverse())];
    expect(other.drift).toBeCloseTo(one.drift, 12);
    expect(other.ratio).toBeCloseTo(one.ratio ?? 0, 12);
    for (const [m, loss] of one.losses.entries()) {
      if (loss === null) expect(other.losses[m]).toBeNull();
      else expect(other.losses[m]).toBeCloseTo(loss, 9);
    }
    expect(one.losses[0]).toBe(1);
  });

  it('knows that it fades, within bounds, and believes it slowly', () => {
    const fade = new ShelfGatherer(1);
    const item = backtest(plainSeries([1, 2, 1]), settings);
    expect(new ShelfGatherer(1).prior()).toEqual({ losses: [null], ratio: null, drift: 1 });
    fade.add({ ...item, origins: 5, losses: [1], usualUse: 1, used: 160, expected: 200 });
    expect(fade.prior().drift).toBeCloseTo(0.9, 12);
    fade.add({ ...item, origins: 5, losses: [1], usualUse: 1, used: 0, expected: 1e6 });
    expect(fade.prior().drift).toBe(0.7);
  });

  it('is not believed of an item whose own use shows otherwise', () => {
    const judged = (y: number[]) => backtest(plainSeries(y), settings);
    // One a day, every day: that others fade says nothing about it.
    const constant = judged(new Array<number>(130).fill(1));
    expect(driftOf(constant, 0.9)).toBe(1);
    // A few uses show little: nearly all of the shelf's drift holds.
    const few = judged(series(() => 0.05, 130, 5));
    expect(few.expected).toBeGreaterThan(0);
    expect(driftOf(few, 0.9)).toBeLessThan(0.93);
    expect(driftOf(judged(new Array<number>(130).fill(0)), 0.9)).toBe(0.9);
  });

  it('leaves each item between its drift and none', () => {
    const shelf = fc.double({ min: 0.7, max: 1.3, noNaN: true });
    fc.assert(
      fc.property(uses, shelf, (y, drift) => {
        const own = driftOf(backtest(plainSeries(y), settings), drift);
        expect(own).toBeGreaterThanOrEqual(Math.min(1, drift) - 1e-12);
        expect(own).toBeLessThanOrEqual(Math.max(1, drift) + 1e-12);
      }),
    );
  });
});
