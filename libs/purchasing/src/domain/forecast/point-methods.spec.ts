import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { classifyDemand, demandShape } from './demand-class.js';
import { empirical } from './empirical.js';
import {
  croston,
  exponentialSmoothing,
  meanForecast,
  meanInterval,
  shaleBoylanJohnston,
  syntetosBoylan,
  tsb,
} from './point-methods.js';

interface Expected {
  readonly [name: string]: number | string | Record<string, number>;
}
interface Reference {
  readonly source: string;
  readonly series: readonly { name: string; y: number[]; expected: Expected }[];
}

const reference = JSON.parse(
  readFileSync(new URL('./point-methods.reference.json', import.meta.url), 'utf8'),
) as Reference;

function computed(y: number[]): Record<string, number | string> {
  const c1 = croston(y, { alpha: 0.1 });
  const shape = demandShape(y);
  const of = (a: number) => ({
    [`croston_${a}`]: croston(y, { alpha: a }).level,
    [`sba_${a}`]: syntetosBoylan(y, { alpha: a }).level,
    [`sbj_${a}`]: shaleBoylanJohnston(y, { alpha: a }).level,
    [`ses_${a}`]: exponentialSmoothing(y, { alpha: a }).level,
  });
  return {
    ...of(0.1),
    ...of(0.2),
    'croston_0.1_init_mean': croston(y, { alpha: 0.1, start: 'mean' }).level,
    'tsb_0.1_0.1': tsb(y, { alpha: 0.1, beta: 0.1 }).level,
    'tsb_0.2_0.1': tsb(y, { alpha: 0.2, beta: 0.1 }).level,
    'tsb_0.1_0.05': tsb(y, { alpha: 0.1, beta: 0.05 }).level,
    'tsb_0.3_0.2': tsb(y, { alpha: 0.3, beta: 0.2 }).level,
    'tsb_0.1_0.1_init_mean': tsb(y, { alpha: 0.1, beta: 0.1, start: 'mean' }).level,
    'croston_0.1_size': c1.size,
    'croston_0.1_interval': c1.interval,
    n: y.length,
    demands: shape.demands,
    adi: shape.periodsPerDemand,
    cv2: shape.squaredVariation,
    mean_interval_croston: shape.meanInterval,
    cls: classifyDemand(shape) ?? 'none',
  };
}

describe('the point methods agree with R (forecast 8.20, tsintermittent 1.10)', () => {
  for (const { name, y, expected } of reference.series) {
    const own = computed(y);
    const { quantiles_inverted_cdf: quantiles, ...plain } = expected;
    it.each(Object.entries(plain))(`${name}: %s`, (key, value) => {
      if (typeof value === 'number') expect(own[key]).toBeCloseTo(value, 9);
      else expect(own[key]).toBe(value);
    });
    it(`${name}: quantiles by the inverse of the stepwise distribution function`, () => {
      for (const [p, q] of Object.entries(quantiles as Record<string, number>)) {
        expect(empirical(y).quantile(Number(p))).toBe(q);
      }
    });
  }

  it('smooths the oil series of FPP2 as statsmodels 0.13.5 does', () => {
    const oil = [
      446.6565, 454.4733, 455.663, 423.6322, 456.2713, 440.5881, 425.3325, 485.1494, 506.0482,
      526.792, 514.2689, 494.211,
    ];
    expect(exponentialSmoothing(oil, { alpha: 0.2 }).level).toBeCloseTo(484.80246538161776, 8);
    expect(exponentialSmoothing(oil, { alpha: 0.6 }).level).toBeCloseTo(501.8374544684974, 8);
  });
});

const series = fc.array(fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 50 })), {
  minLength: 1,
  maxLength: 60,
});
const METHODS = {
  mean: meanForecast,
  ses: (y: readonly number[]) => exponentialSmoothing(y, { alpha: 0.3 }),
  croston: (y: readonly number[]) => croston(y, { alpha: 0.1, beta: 0.2 }),
  sba: (y: readonly number[]) => syntetosBoylan(y, { alpha: 0.1, beta: 0.2 }),
  sbj: (y: readonly number[]) => shaleBoylanJohnston(y, { alpha: 0.1, beta: 0.2 }),
  tsb: (y: readonly number[]) => tsb(y, { alpha: 0.1, beta: 0.2 }),
};

describe.each(Object.entries(METHODS))('%s', (name, method) => {
  it('says in sample what it would have said at the time', () => {
    fc.assert(
      fc.property(series, (y) => {
        const { fitted } = method(y);
        expect(fitted).toHaveLength(y.length);
        expect(fitted[0]).toBeNull();
        for (let t = 1; t < y.length; t += 1) {
          // TSB knows no size before the first demand, in prefix or whole; its rate is then 0.
          const then = method(y.slice(0, t)).level;
          const seen = y.slice(0, t).some((v) => v > 0);
          if (seen || name !== 'tsb') expect(fitted[t]).toBeCloseTo(then, 9);
        }
      }),
    );
  });

  it('tells the same use in another unit by the same factor', () => {
    fc.assert(
      fc.property(series, fc.double({ min: 0.001, max: 1000, noNaN: true }), (y, factor) => {
        const scaled = method(y.map((v) => v * factor)).level;
        expect(Math.abs(scaled - method(y).level * factor)).toBeLessThan(1e-9 * (1 + scaled));
      }),
    );
  });

  it('stays within what was seen, and is 0 for nothing', () => {
    fc.assert(
      fc.property(series, (y) => {
        const { level } = method(y);
        expect(level).toBeGreaterThanOrEqual(0);
        expect(level).toBeLessThanOrEqual(Math.max(...y) + 1e-9);
      }),
    );
    expect(method([0, 0, 0]).level).toBe(0);
    expect(method([]).level).toBe(0);
  });

  it('repeats a constant', () => {
    const factor = { sba: 0.9, sbj: 1 - 0.2 / 1.8 }[name] ?? 1;
    expect(method(new Array(30).fill(7)).level).toBeCloseTo(7 * factor, 12);
  });

  it.each([[-1], [Number.NaN], [Number.POSITIVE_INFINITY]])('refuses a use of %s', (bad) => {
    expect(() => method([1, bad])).toThrow(/period 2/);
  });
});

describe('Croston step by step', () => {
  it('walks 0, 2, 0, 0, 6 with weight 0.5', () => {
    // By hand: z = 2, p = 2 at period 2; then z = 2 + 0.5 * 4 = 4 and p = 2 + 0.5 * (3 - 2) = 2.5.
    const { fitted, size, interval, level } = croston([0, 2, 0, 0, 6], { alpha: 0.5 });
    expect(fitted).toEqual([null, 0, 1, 1, 1]);
    expect([size, interval, level]).toEqual([4, 2.5, 1.6]);
  });

  it('does not notice that demand died, while SES and TSB do', () => {
    const died = [2, 0, 3, 0, 2, 0, 1, 0, 2, ...new Array<number>(60).fill(0)];
    const alive = croston(died, { alpha: 0.1 }).level;
    expect(alive).toBeGreaterThan(0.9);
    expect(exponentialSmoothing(died, { alpha: 0.1 }).level).toBeLessThan(alive / 50);
    expect(tsb(died, { alpha: 0.1, beta: 0.1 }).level).toBeLessThan(alive / 50);
  });

  it('leaves the zeros after the last demand out of the mean interval', () => {
    expect(meanInterval([0, 1, 0, 1, 0, 0, 0, 0])).toBe(2);
    expect(meanInterval([0, 0])).toBe(0);
  });

  it.each([0, -0.1, 1.1, Number.NaN])('refuses a weight of %s', (alpha) => {
    expect(() => croston([1], { alpha })).toThrow(/alpha/);
    expect(() => tsb([1], { alpha: 0.1, beta: alpha })).toThrow(/beta/);
  });
});

describe('demand classes (Syntetos, Boylan & Croston 2005)', () => {
  it.each([
    [1.0, 0.2, 'smooth'],
    [1.0, 0.6, 'erratic'],
    [2.0, 0.2, 'intermittent'],
    [2.0, 0.6, 'lumpy'],
    [1.32, 0.49, 'lumpy'],
    [1.319, 0.489, 'smooth'],
  ])('interval %s, squared variation %s: %s', (interval, squaredVariation, wanted) => {
    const shape = { demands: 5, periodsPerDemand: interval, meanInterval: interval };
    expect(classifyDemand({ ...shape, squaredVariation })).toBe(wanted);
  });

  it('has no class without demand, and by Croston’s interval where trailing zeros differ', () => {
    expect(classifyDemand(demandShape([0, 0]))).toBeNull();
    const shape = demandShape([1, 1, 1, 0, 0, 0]);
    expect(classifyDemand(shape)).toBe('intermittent');
    expect(classifyDemand(shape, 'meanInterval')).toBe('smooth');
  });
});
