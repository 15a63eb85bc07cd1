import type { Backtest } from './backtest.js';
import { type BookedDays, combineBooked } from './booked-visits.js';
import { type Choice, chooseMethod, driftOf, hasDied, type ShelfPrior } from './choose-method.js';
import { countWith } from './counts.js';
import { forecastRatio } from './dispersion.js';
import { certain, type Distribution } from './distribution.js';
import { empirical } from './empirical.js';
import { addIndependent, asLattice, isLattice, onLattice } from './lattice.js';
import { type MethodState, methodStates } from './method-states.js';
import type { Method } from './methods.js';
import type { PeriodSeries } from './period-series.js';
import {
  type Basis,
  compoundOver,
  countOver,
  type Resampling,
  resampledOver,
  sizesBefore,
  type Window,
  windowWeight,
} from './predict.js';

export interface ForecastOptions {
  readonly methods: readonly Method[];
  readonly shelf: ShelfPrior;
  readonly resampling: Resampling;
}

/** A forecast of one item from the end of its history on, in grid steps. */
export interface ItemForecast {
  readonly method: Method;
  readonly choice: Choice;
  /** Expected use of an average open period now. */
  readonly level: number;
  /** Variance over mean of the use of one period. */
  readonly ratio: number;
  readonly died: boolean;
  /** What the shelf's drift made of the level: 1 is nothing. */
  readonly drift: number;
  /** Expected use of each period of a window. */
  expected(window: Window): Float64Array;
  /** The whole distribution of use over a window; with bookings, of both together. */
  over(window: Window, booked?: BookedDays): Distribution;
}

/** Chooses the method by the backtest and forecasts with it from all of the history. */
export function forecastItem(
  series: PeriodSeries,
  judged: Backtest,
  options: ForecastOptions,
): ItemForecast {
  const { methods, shelf } = options;
  const died = hasDied(series);
  const choice = chooseMethod(methods, judged, { shelf, died });
  const method = methods[choice.index];
  if (method === undefined) throw new RangeError('a forecast needs at least one method');
  const origin = series.use.length;
  const [found] = methodStates(series, method, [origin]);
  const own = found ?? { level: 0, levelShare: 1, season: null };
  const drift = choice.reason === 'short history' ? 1 : driftOf(judged, shelf.drift);
  const state: MethodState = { ...own, level: own.level * drift };
  const ratio = forecastRatio(judged.dispersion, shelf.ratio);
  const sizes = method.name === 'compound' ? sizesBefore(series, origin) : null;
  const basis: Basis = { series, origin, ratio, sizes, resampling: options.resampling };
  const parts = { method, state, basis, drift };
  return {
    method,
    choice,
    level: state.level,
    ratio,
    died,
    drift,
    expected: (window) => expectedBy(state, window),
    over: (window, booked) =>
      booked === undefined ? alone(parts, window) : withBookings(parts, window, booked),
  };
}

interface Parts {
  readonly method: Method;
  readonly state: MethodState;
  readonly basis: Basis;
  readonly drift: number;
}

function expectedBy(state: MethodState, window: Window): Float64Array {
  return window.weight.map((w, t) => {
    const factor = state.season === null ? 1 : (state.season[window.season?.[t] ?? 0] ?? 1);
    return state.level * w * factor;
  });
}

function alone({ method, state, basis, drift }: Parts, window: Window): Distribution {
  const weight = windowWeight(state, window);
  if (weight === 0) return certain(0);
  if (method.name === 'resampling') {
    const sums = resampledOver(basis.series, basis.origin, window, basis.resampling);
    if (sums !== null) return empirical(sums.map((x) => x * drift));
  }
  if (method.name === 'compound' && basis.sizes !== null && state.level > 0) {
    const sum = compoundOver(state, weight, basis.sizes);
    if (sum !== null) return sum;
  }
  return countOver(state, weight, basis.ratio);
}

/** The statistical rest and the booked use are independent; counts add mean and variance. */
function withBookings(parts: Parts, window: Window, days: BookedDays): Distribution {
  const { method, state, basis } = parts;
  const usual = expectedBy(state, window);
  const { restShare } = combineBooked(usual, days);
  const rest: Window = { ...window, weight: window.weight.map((w, t) => w * (restShare[t] ?? 0)) };
  const spread = days.variance ?? days.booked;
  let [booked, variance] = [0, 0];
  for (let t = 0; t < days.booked.length; t += 1) {
    booked += days.booked[t] ?? 0;
    variance += spread[t] ?? 0;
  }
  const left = alone(parts, rest);
  if (booked === 0) return left;
  const plan = countWith(booked, variance);
  if (method.name === 'resampling') {
    const sums = resampledOver(basis.series, basis.origin, rest, basis.resampling);
    if (sums === null) return plan;
    return addIndependent(onLattice([...sums.map((x) => x * parts.drift)]), asLattice(plan));
  }
  if (isLattice(left)) return addIndependent(left, asLattice(plan));
  return countWith(left.mean + booked, left.variance + plan.variance);
}
