import { type BacktestOptions, backtest } from './backtest.js';
import { NO_SHELF, ShelfGatherer, type ShelfPrior } from './choose-method.js';
import { normal } from './continuous.js';
import { certain, type Distribution } from './distribution.js';
import { forecastItem } from './item-forecast.js';
import { QuantileLoss, scalesOf } from './measures.js';
import { candidateMethods, type PeriodLength } from './methods.js';
import { type PeriodSeries, plainSeries } from './period-series.js';
import { windowOf } from './predict.js';

/** What one method says about one period. */
export interface PeriodForecast {
  readonly point: number;
  /** The quantiles at the levels asked for. */
  readonly quantiles: readonly number[];
}

/** Looks at the filled train part (no NaN) and forecasts the periods after it. */
export type Forecaster = (train: Float64Array, periods: number, index: number) => PeriodForecast[];

export interface Protocol {
  /** Periods at the end of each series that are the test. */
  readonly test: number;
  /** Lag of the scale of MASE. */
  readonly lag: number;
  readonly levels: readonly number[];
}

/** The protocol in which the naive figures for the car-parts series were published. */
export const MONTHLY_PROTOCOL: Protocol = {
  test: 12,
  lag: 12,
  levels: [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9],
};

export interface Accuracy {
  readonly mae: number;
  readonly mse: number;
  readonly meanError: number;
  /** Null when no series has a scale. */
  readonly mase: number | null;
  /** Null when nothing was used. */
  readonly wql: number | null;
}

/** Missing periods (NaN) carried forward, leading ones filled backwards; all missing is 0. */
export function fillMissing(values: ArrayLike<number>): Float64Array {
  const filled = Float64Array.from(values);
  const first = filled.findIndex((y) => !Number.isNaN(y));
  let last = first < 0 ? 0 : (filled[first] ?? 0);
  for (let t = 0; t < filled.length; t += 1) {
    const y = filled[t] ?? Number.NaN;
    if (Number.isNaN(y)) filled[t] = last;
    else last = y;
  }
  return filled;
}

/**
 * One origin, the errors of all series and periods pooled; missing test periods are left out, and
 * so are series without a scale from MASE. Throws RangeError when a series is not longer than the
 * test.
 */
export function evaluate(
  series: readonly Float64Array[],
  protocol: Protocol,
  forecaster: Forecaster,
): Accuracy {
  const loss = new QuantileLoss(protocol.levels);
  let [count, sum, absolute, square, scaledSum, scaledCount] = [0, 0, 0, 0, 0, 0];
  for (const [index, values] of series.entries()) {
    const split = values.length - protocol.test;
    if (split < 1) throw new RangeError(`series ${index + 1} is not longer than the test`);
    const train = values.subarray(0, split);
    const scale = scalesOf(train, protocol.lag).absolute;
    const forecasts = forecaster(fillMissing(train), protocol.test, index);
    for (const [h, { point, quantiles }] of forecasts.entries()) {
      const actual = values[split + h] ?? Number.NaN;
      if (Number.isNaN(actual)) continue;
      const error = point - actual;
      count += 1;
      sum += error;
      absolute += Math.abs(error);
      square += error * error;
      loss.add(actual, quantiles);
      if (scale === null) continue;
      scaledSum += Math.abs(error) / scale;
      scaledCount += 1;
    }
  }
  const wql = loss.value;
  return {
    mae: absolute / count,
    mse: square / count,
    meanError: sum / count,
    mase: scaledCount === 0 ? null : scaledSum / scaledCount,
    wql: wql.defined ? wql.value : null,
  };
}

function quantilesOf(of: Distribution, levels: readonly number[]): number[] {
  return levels.map((p) => of.quantile(p));
}

/** The last value; normal with the spread of the changes, growing with the root of the distance. */
export function naive(levels: readonly number[]): Forecaster {
  return (train, periods) => {
    const point = train[train.length - 1] ?? 0;
    let square = 0;
    for (let t = 1; t < train.length; t += 1) {
      square += ((train[t] ?? 0) - (train[t - 1] ?? 0)) ** 2;
    }
    const variance = square / Math.max(1, train.length - 1);
    return Array.from({ length: periods }, (_, h) => {
      const spread = variance * (h + 1);
      const of = spread > 0 ? normal(point, spread) : certain(point);
      return { point, quantiles: quantilesOf(of, levels) };
    });
  };
}

/** The value a season before; normal with the root mean square of the seasonal changes. */
export function seasonalNaive(levels: readonly number[], lag: number): Forecaster {
  return (train, periods) => {
    const variance = scalesOf(train, lag).squared ?? 0;
    return Array.from({ length: periods }, (_, h) => {
      const point = train[train.length - lag + (h % lag)] ?? 0;
      const of = variance > 0 ? normal(point, variance) : certain(point);
      return { point, quantiles: quantilesOf(of, levels) };
    });
  };
}

/** One distribution for every period, with a point beside it. */
export function steady(
  levels: readonly number[],
  forecast: (train: Float64Array) => { point: number; of: Distribution },
): Forecaster {
  return (train, periods) => {
    const { point, of } = forecast(train);
    const quantiles = quantilesOf(of, levels);
    return Array.from({ length: periods }, () => ({ point, quantiles }));
  };
}

/** Mean and n - 1 variance over mean, at least 1: the spread of the plain negative binomials. */
export function spreadOf(train: Float64Array): { mean: number; ratio: number } {
  let sum = 0;
  for (const y of train) sum += y;
  const mean = sum / train.length;
  let square = 0;
  for (const y of train) square += (y - mean) ** 2;
  const variance = square / Math.max(1, train.length - 1);
  return { mean, ratio: mean > 0 ? Math.max(1, variance / mean) : 1 };
}

export interface ChosenOptions {
  readonly protocol: Protocol;
  readonly period: PeriodLength;
  /** Periods in a year; 0 without seasons. */
  readonly yearLength: number;
  readonly seed: number;
}

/**
 * The way items are forecast here: every series is backtested inside its train part, the shelf is
 * learnt from all of them, then each series gets its method. Nothing sees a test period.
 */
export function chosen(series: readonly Float64Array[], options: ChosenOptions): Forecaster {
  const { protocol, period } = options;
  const methods = candidateMethods(period);
  const settings: BacktestOptions = {
    methods,
    horizon: 1,
    windows: protocol.test,
    levels: protocol.levels,
    seed: options.seed,
  };
  const ready = (train: Float64Array): PeriodSeries => plainSeries(train, options.yearLength);
  const gatherer = new ShelfGatherer(methods.length);
  const judged = series.map((values) => {
    const train = fillMissing(values.subarray(0, values.length - protocol.test));
    const one = backtest(ready(train), settings);
    gatherer.add(one);
    return one;
  });
  const shelf: ShelfPrior = judged.length > 1 ? gatherer.prior() : NO_SHELF;
  const resampling = { draws: 1000, seed: options.seed };
  return (train, periods, index) => {
    const own = judged[index];
    if (own === undefined) throw new RangeError(`series ${index + 1} was not backtested`);
    const item = forecastItem(ready(train), own, { methods, shelf, resampling });
    const calendar = ready(new Float64Array(train.length + periods));
    return Array.from({ length: periods }, (_, h) => {
      const of = item.over(windowOf(calendar, train.length + h, 1));
      return { point: of.mean, quantiles: quantilesOf(of, protocol.levels) };
    });
  };
}
