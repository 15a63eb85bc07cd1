import type { Method } from './methods.js';
import { Groups, type PeriodSeries } from './period-series.js';

/** What a method knows before a period (the origin). */
export interface MethodState {
  /** Expected use of a period of weight 1, in grid steps. */
  readonly level: number;
  /**
   * How unsure the level is: its variance over that of one period. The level is a mean of about
   * 1 / share periods.
   */
  readonly levelShare: number;
  /** Factors by place in the year; null when the method knows no season. */
  readonly season: readonly number[] | null;
}

/**
 * The states of a method at origins in rising order (an origin t knows the periods before t); null
 * where it has nothing to go by. One walk over the series, whatever the number of origins.
 */
export function methodStates(
  series: PeriodSeries,
  method: Method,
  origins: readonly number[],
): (MethodState | null)[] {
  switch (method.name) {
    case 'exponential smoothing':
      return smoothingStates(series, method.alpha, origins);
    case 'TSB':
    case 'compound':
      return tsbStates(series, method, origins);
    case 'Croston':
      return crostonStates(series, method, origins, 1);
    case 'Syntetos-Boylan':
      return crostonStates(series, method, origins, 1 - method.beta / 2);
    case 'Shale-Boylan-Johnston':
      return crostonStates(series, method, origins, 1 - method.beta / (2 - method.beta));
    case 'seasonal':
      return seasonalStates(series, origins);
    default:
      return meanStates(series, origins);
  }
}

/** Walks to each origin in turn and asks there. */
function walk(
  series: PeriodSeries,
  origins: readonly number[],
  take: (use: number, weight: number, t: number) => void,
  ask: (t: number) => MethodState | null,
): (MethodState | null)[] {
  const { use, weight } = series;
  let t = 0;
  return origins.map((origin) => {
    for (; t < origin; t += 1) {
      const w = weight[t] ?? 0;
      if (w > 0) take(use[t] ?? 0, w, t);
    }
    return ask(origin);
  });
}

function meanStates(series: PeriodSeries, origins: readonly number[]): (MethodState | null)[] {
  let [sum, weights] = [0, 0];
  return walk(
    series,
    origins,
    (y, w) => {
      sum += y;
      weights += w;
    },
    () => (weights === 0 ? null : { level: sum / weights, levelShare: 1 / weights, season: null }),
  );
}

/**
 * Smoothing starts from the mean of what the origin knows: it is linear in its start, so the mean
 * can be put in afterwards and no state looks ahead.
 */
function smoothingStates(
  series: PeriodSeries,
  alpha: number,
  origins: readonly number[],
): (MethodState | null)[] {
  let [level, start, sum, weights] = [0, 1, 0, 0];
  return walk(
    series,
    origins,
    (y, w) => {
      const keep = 1 - Math.min(1, alpha * w);
      level = keep * level + (1 - keep) * (y / w);
      start *= keep;
      sum += y;
      weights += w;
    },
    () => {
      if (weights === 0) return null;
      const levelShare = Math.max(alpha / (2 - alpha), 1 / weights);
      return { level: level + start * (sum / weights), levelShare, season: null };
    },
  );
}

function tsbStates(
  series: PeriodSeries,
  method: Method,
  origins: readonly number[],
): (MethodState | null)[] {
  const { alpha, beta } = method;
  let [size, probability, start, demands, weights] = [0, 0, 1, 0, 0];
  return walk(
    series,
    origins,
    (y, w) => {
      const keep = 1 - Math.min(1, beta * w);
      probability = keep * probability + (1 - keep) * ((y > 0 ? 1 : 0) / w);
      start *= keep;
      weights += w;
      if (y === 0) return;
      size = demands === 0 ? y : size + alpha * (y - size);
      demands += 1;
    },
    () => {
      if (weights === 0) return null;
      const level = size * (probability + start * (demands / weights));
      return { level, levelShare: Math.max(beta / (2 - beta), 1 / weights), season: null };
    },
  );
}

function crostonStates(
  series: PeriodSeries,
  method: Method,
  origins: readonly number[],
  factor: number,
): (MethodState | null)[] {
  const { alpha, beta } = method;
  let [size, interval, since, weights] = [0, 0, 0, 0];
  return walk(
    series,
    origins,
    (y, w) => {
      since += w;
      weights += w;
      if (y === 0) return;
      size = size === 0 ? y : size + alpha * (y - size);
      interval = interval === 0 ? since : interval + beta * (since - interval);
      since = 0;
    },
    () => {
      if (weights === 0) return null;
      const level = interval === 0 ? 0 : (factor * size) / interval;
      const levelShare = Math.max(alpha / (2 - alpha) / Math.max(1, interval), 1 / weights);
      return { level, levelShare, season: null };
    },
  );
}

/** The mean of the last year times the factor of the month; needs two whole years. */
function seasonalStates(series: PeriodSeries, origins: readonly number[]): (MethodState | null)[] {
  const { season, use, weight, yearLength } = series;
  if (season === null || yearLength === 0) return origins.map(() => null);
  const size = Math.max(
    12,
    season.reduce((most, s) => Math.max(most, s + 1), 0),
  );
  const groups = new Groups(size);
  return walk(
    series,
    origins,
    (y, w, t) => groups.add(season[t] ?? 0, y / w),
    (origin) => {
      if (origin < 2 * yearLength) return null;
      let [sum, weights] = [0, 0];
      const factors = groups.factors();
      for (let t = origin - yearLength; t < origin; t += 1) {
        const w = weight[t] ?? 0;
        if (w === 0) continue;
        sum += use[t] ?? 0;
        weights += w * (factors[season[t] ?? 0] ?? 1);
      }
      if (weights === 0) return null;
      return { level: sum / weights, levelShare: 1 / weights, season: factors };
    },
  );
}
