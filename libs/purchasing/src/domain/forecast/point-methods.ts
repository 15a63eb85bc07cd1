/** Use per period, oldest first; every number at least 0. */
export type Series = ArrayLike<number>;

export interface PointForecast {
  /** Expected use per period from now on; 0 before anything is known. */
  readonly level: number;
  /** What the method said about each period before seeing it; null where it could not say. */
  readonly fitted: readonly (number | null)[];
}

/** 'first': the first observation; 'mean': the mean of the series. */
export type LevelStart = 'first' | 'mean';
/** 'naive': first demand and its position; 'mean': first demand and the mean interval. */
export type IntervalStart = 'naive' | 'mean';
/** 'naive': 1 or 0 by the first period; 'mean': the share of periods with demand. */
export type ProbabilityStart = 'naive' | 'mean';

function at(series: Series, i: number): number {
  const y = series[i] ?? Number.NaN;
  if (!(y >= 0 && Number.isFinite(y))) {
    throw new RangeError(`use in period ${i + 1} must be a number of at least 0, not ${y}`);
  }
  return y;
}

function checkWeight(name: string, value: number): void {
  if (!(value > 0 && value <= 1)) throw new RangeError(`${name} must be in (0, 1], not ${value}`);
}

/** The mean of all periods; fitted by the mean of the periods before. Throws RangeError. */
export function meanForecast(series: Series): PointForecast {
  const fitted: (number | null)[] = [];
  let sum = 0;
  for (let t = 0; t < series.length; t += 1) {
    fitted.push(t === 0 ? null : sum / t);
    sum += at(series, t);
  }
  return { level: series.length === 0 ? 0 : sum / series.length, fitted };
}

/** Simple exponential smoothing with weight alpha (Brown 1956). Throws RangeError. */
export function exponentialSmoothing(
  series: Series,
  options: { readonly alpha: number; readonly start?: LevelStart },
): PointForecast {
  checkWeight('alpha', options.alpha);
  const fitted: (number | null)[] = [];
  if (series.length === 0) return { level: 0, fitted };
  const fromFirst = (options.start ?? 'first') === 'first';
  let level = fromFirst ? at(series, 0) : meanForecast(series).level;
  for (let t = 0; t < series.length; t += 1) {
    fitted.push(t === 0 && fromFirst ? null : level);
    level += options.alpha * (at(series, t) - level);
  }
  return { level, fitted };
}

export interface CrostonOptions {
  /** Weight of a new size. */
  readonly alpha: number;
  /** Weight of a new interval; alpha unless given. */
  readonly beta?: number;
  readonly start?: IntervalStart;
}

export interface CrostonState extends PointForecast {
  readonly size: number;
  readonly interval: number;
}

/**
 * Croston (1972): smooths size and interval where demand occurs, forecast size / interval. z starts
 * with the first demand, the interval with its position (1-based) or the mean interval, which
 * leaves out the zeros after the last demand; both change from the second demand on. Throws
 * RangeError.
 */
export function croston(series: Series, options: CrostonOptions): CrostonState {
  const { alpha, beta = alpha, start = 'naive' } = options;
  checkWeight('alpha', alpha);
  checkWeight('beta', beta);
  const fitted: (number | null)[] = [];
  let size = 0;
  let interval = start === 'mean' ? meanInterval(series) : 0;
  let since = 1;
  let seen = false;
  for (let t = 0; t < series.length; t += 1) {
    const y = at(series, t);
    fitted.push(t === 0 ? null : rate(size, interval, seen));
    if (y === 0) {
      since += 1;
      continue;
    }
    if (seen) interval += beta * (since - interval);
    else if (start === 'naive') interval = since;
    size = seen ? size + alpha * (y - size) : y;
    seen = true;
    since = 1;
  }
  return { level: rate(size, interval, seen), fitted, size, interval };
}

function rate(size: number, interval: number, seen: boolean): number {
  return seen && interval > 0 ? size / interval : 0;
}

/** Periods up to the last demand for each demand; 0 without one. */
export function meanInterval(series: Series): number {
  let demands = 0;
  let last = 0;
  for (let t = 0; t < series.length; t += 1) {
    if (at(series, t) === 0) continue;
    demands += 1;
    last = t + 1;
  }
  return demands === 0 ? 0 : last / demands;
}

/** Croston less its bias: times 1 - beta / 2 (Syntetos & Boylan 2005). Throws RangeError. */
export function syntetosBoylan(series: Series, options: CrostonOptions): CrostonState {
  const { alpha, beta = alpha } = options;
  return times(croston(series, options), 1 - beta / 2);
}

/** Croston less its bias: times 1 - beta / (2 - beta) (Shale, Boylan & Johnston 2006). */
export function shaleBoylanJohnston(series: Series, options: CrostonOptions): CrostonState {
  const { alpha, beta = alpha } = options;
  return times(croston(series, options), 1 - beta / (2 - beta));
}

function times(of: CrostonState, factor: number): CrostonState {
  const fitted = of.fitted.map((f) => (f === null ? null : f * factor));
  return { ...of, level: of.level * factor, fitted };
}

export interface TsbOptions {
  /** Weight of a new size. */
  readonly alpha: number;
  /** Weight of a new period in the probability of demand. */
  readonly beta: number;
  readonly start?: ProbabilityStart;
}

export interface TsbState extends PointForecast {
  readonly size: number;
  readonly probability: number;
}

/**
 * Teunter, Syntetos & Babai (2011): the probability of demand is smoothed in every period, so that
 * the forecast of what is no longer used dies. Throws RangeError.
 */
export function tsb(series: Series, options: TsbOptions): TsbState {
  const { alpha, beta, start = 'naive' } = options;
  checkWeight('alpha', alpha);
  checkWeight('beta', beta);
  const fitted: (number | null)[] = [];
  const state = tsbStart(series, start);
  let { size, probability } = state;
  for (let t = 0; t < series.length; t += 1) {
    const y = at(series, t);
    fitted.push(t === 0 ? null : size * probability);
    if (t > 0) probability += beta * ((y > 0 ? 1 : 0) - probability);
    if (y > 0) size += alpha * (y - size);
  }
  return { level: size * probability, fitted, size, probability };
}

function tsbStart(series: Series, start: ProbabilityStart): { size: number; probability: number } {
  let demands = 0;
  let size = 0;
  for (let t = 0; t < series.length; t += 1) {
    const y = at(series, t);
    if (y === 0) continue;
    if (demands === 0) size = y;
    demands += 1;
  }
  if (series.length === 0) return { size: 0, probability: 0 };
  if (start === 'mean') return { size, probability: demands / series.length };
  return { size, probability: at(series, 0) > 0 ? 1 : 0 };
}
