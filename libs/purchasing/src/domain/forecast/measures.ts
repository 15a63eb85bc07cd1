import type { Series } from './point-methods.js';

export interface PointErrors {
  readonly count: number;
  /** Mean of forecast less actual: above 0, the forecast is too high. */
  readonly meanError: number;
  readonly meanAbsoluteError: number;
  readonly meanSquaredError: number;
}

/** Errors of point forecasts, pairs without a known actual left out. Null without a pair. */
export function pointErrors(actual: Series, forecast: Series): PointErrors | null {
  checkLengths(actual, forecast);
  let [count, sum, absolute, square] = [0, 0, 0, 0];
  for (let i = 0; i < actual.length; i += 1) {
    const error = (forecast[i] ?? Number.NaN) - (actual[i] ?? Number.NaN);
    if (Number.isNaN(error)) continue;
    count += 1;
    sum += error;
    absolute += Math.abs(error);
    square += error * error;
  }
  if (count === 0) return null;
  return {
    count,
    meanError: sum / count,
    meanAbsoluteError: absolute / count,
    meanSquaredError: square / count,
  };
}

function checkLengths(one: Series, other: Series): void {
  if (one.length !== other.length) throw new RangeError('actual and forecast differ in length');
}

export interface Scales {
  /** Mean absolute difference at the lag; null where it is 0 or undefined. */
  readonly absolute: number | null;
  /** Mean squared difference at the lag; null where it is 0 or undefined. */
  readonly squared: number | null;
}

/** What MASE (Hyndman & Koehler 2006) and RMSSE (M5, 2022) divide by; NaN is a missing period. */
export function scalesOf(train: Series, lag = 1): Scales {
  let [count, absolute, square] = [0, 0, 0];
  for (let t = lag; t < train.length; t += 1) {
    const change = (train[t] ?? Number.NaN) - (train[t - lag] ?? Number.NaN);
    if (Number.isNaN(change)) continue;
    count += 1;
    absolute += Math.abs(change);
    square += change * change;
  }
  if (count === 0 || absolute === 0) return { absolute: null, squared: null };
  return { absolute: absolute / count, squared: square / count };
}

export type Measure = { readonly defined: true; readonly value: number } | UndefinedMeasure;
export interface UndefinedMeasure {
  readonly defined: false;
  readonly why: 'no actuals' | 'scale is zero or unknown';
}

/** Mean absolute scaled error; says so where the past never changed. */
export function mase(train: Series, actual: Series, forecast: Series, lag = 1): Measure {
  const errors = pointErrors(actual, forecast);
  if (errors === null) return { defined: false, why: 'no actuals' };
  const { absolute } = scalesOf(train, lag);
  if (absolute === null) return { defined: false, why: 'scale is zero or unknown' };
  return { defined: true, value: errors.meanAbsoluteError / absolute };
}

/** Root mean squared scaled error; says so where the past never changed. */
export function rmsse(train: Series, actual: Series, forecast: Series, lag = 1): Measure {
  const errors = pointErrors(actual, forecast);
  if (errors === null) return { defined: false, why: 'no actuals' };
  const { squared } = scalesOf(train, lag);
  if (squared === null) return { defined: false, why: 'scale is zero or unknown' };
  return { defined: true, value: Math.sqrt(errors.meanSquaredError / squared) };
}

/** What a quantile forecast costs: level for each unit missing, 1 - level for each too many. */
export function pinball(actual: number, quantile: number, level: number): number {
  const missing = actual - quantile;
  return missing > 0 ? level * missing : (level - 1) * missing;
}

/** Levels at which a stock decision is made. */
export const SERVICE_LEVELS = [0.5, 0.75, 0.9, 0.95, 0.98, 0.99] as const;

/** Mean pinball loss over the levels. */
export function meanPinball(
  actual: number,
  quantiles: readonly number[],
  levels: readonly number[],
): number {
  let sum = 0;
  for (let i = 0; i < levels.length; i += 1) {
    sum += pinball(actual, quantiles[i] ?? Number.NaN, levels[i] ?? Number.NaN);
  }
  return sum / levels.length;
}

/** Weighted quantile loss, gathered over many forecasts: twice the pinball loss over the use. */
export class QuantileLoss {
  private loss = 0;
  private use = 0;

  constructor(private readonly levels: readonly number[]) {}

  /** One actual with the quantiles at the levels; a missing actual (NaN) is left out. */
  add(actual: number, quantiles: readonly number[]): void {
    if (Number.isNaN(actual)) return;
    this.loss += meanPinball(actual, quantiles, this.levels);
    this.use += Math.abs(actual);
  }

  get value(): Measure {
    if (this.use === 0) return { defined: false, why: 'scale is zero or unknown' };
    return { defined: true, value: (2 * this.loss) / this.use };
  }
}

export interface AchievedService {
  /** Share of periods in which the quantile was enough. */
  readonly cycle: number;
  /** Share of the use that the quantile covered; null without use. */
  readonly fill: number | null;
}

/** What service a level of stock, set for each period, would have given. Null without periods. */
export function achievedService(actual: Series, stock: Series): AchievedService | null {
  checkLengths(actual, stock);
  let [count, enough, use, covered] = [0, 0, 0, 0];
  for (let i = 0; i < actual.length; i += 1) {
    const y = actual[i] ?? Number.NaN;
    const s = stock[i] ?? Number.NaN;
    if (Number.isNaN(y) || Number.isNaN(s)) continue;
    count += 1;
    if (y <= s) enough += 1;
    use += y;
    covered += Math.min(y, Math.max(0, s));
  }
  if (count === 0) return null;
  return { cycle: enough / count, fill: use === 0 ? null : covered / use };
}
