import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  achievedService,
  mase,
  meanPinball,
  pinball,
  pointErrors,
  QuantileLoss,
  rmsse,
  scalesOf,
} from './measures.js';

describe('error measures by hand', () => {
  // Definitions: Hyndman & Koehler (2006) for MASE, Makridakis et al. (M5, 2022) for RMSSE.
  const train = [2, 0, 3, 0, 0, 1];
  const [actual, forecast] = [
    [0, 2],
    [1, 1],
  ];

  it('gives the worked figures', () => {
    expect(pointErrors(actual, forecast)).toEqual({
      count: 2,
      meanError: 0,
      meanAbsoluteError: 1,
      meanSquaredError: 1,
    });
    expect(mase(train, actual, forecast)).toEqual({ defined: true, value: 1 / 1.8 });
    const scaled = rmsse(train, actual, forecast);
    expect(scaled.defined && scaled.value).toBeCloseTo(0.4662524041201569, 12);
    const losses = [pinball(0, 1, 0.9), pinball(2, 1, 0.9)];
    expect((losses[0] ?? 0) + (losses[1] ?? 0)).toBeCloseTo(2 * 0.5, 12);
  });

  it('says when a scale is undefined instead of dividing by it', () => {
    expect(mase([3, 3, 3], actual, forecast)).toEqual({
      defined: false,
      why: 'scale is zero or unknown',
    });
    expect(rmsse([3], actual, forecast).defined).toBe(false);
    expect(scalesOf([1, 2, 3], 5)).toEqual({ absolute: null, squared: null });
    expect(mase(train, [Number.NaN], [1])).toEqual({ defined: false, why: 'no actuals' });
    expect(new QuantileLoss([0.5]).value.defined).toBe(false);
  });

  it('leaves out what is missing', () => {
    expect(pointErrors([1, Number.NaN], [2, 9])?.count).toBe(1);
    expect(scalesOf([1, Number.NaN, 3, 5]).absolute).toBe(2);
  });

  it('counts achieved service by cycles and by use', () => {
    expect(achievedService([0, 4, 2, 1], [1, 2, 2, 0])).toEqual({ cycle: 0.5, fill: 4 / 7 });
    expect(achievedService([0, 0], [0, 0])).toEqual({ cycle: 1, fill: null });
    expect(achievedService([], [])).toBeNull();
  });

  it('refuses series of different length', () => {
    expect(() => pointErrors([1], [1, 2])).toThrow(/length/);
  });
});

describe('the pinball loss', () => {
  it('is least at the quantile of the sample', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 25 }),
        fc.constantFrom(0.1, 0.5, 0.9, 0.98),
        (sample, level) => {
          const total = (q: number) => sample.reduce((sum, y) => sum + pinball(y, q, level), 0);
          const sorted = [...sample].sort((a, b) => a - b);
          const own = sorted[Math.ceil(level * sorted.length - 1e-9) - 1] ?? 0;
          for (let q = -1; q <= 31; q += 1) expect(total(own)).toBeLessThanOrEqual(total(q) + 1e-9);
        },
      ),
    );
  });

  it('makes the weighted quantile loss of a zero forecast 1 at symmetric levels', () => {
    const loss = new QuantileLoss([0.1, 0.5, 0.9]);
    for (const y of [0, 3, 1, 0, 7]) loss.add(y, [0, 0, 0]);
    const { value } = loss;
    expect(value.defined && value.value).toBeCloseTo(1, 12);
    expect(meanPinball(3, [0, 0, 0], [0.1, 0.5, 0.9])).toBeCloseTo(1.5, 12);
  });
});
