import { type CountDistribution, countWith } from './counts.js';
import type { Distribution } from './distribution.js';
import { empirical } from './empirical.js';
import { type Lattice, onLattice } from './lattice.js';
import type { MethodState } from './method-states.js';
import type { Method } from './methods.js';
import { compound } from './panjer.js';
import type { PeriodSeries } from './period-series.js';
import { seededRandom } from './seeded-random.js';

/** Periods to come, told as a series is: what each weighs, its kind and its place in the year. */
export interface Window {
  readonly weight: Float64Array;
  readonly kind: Uint8Array;
  readonly season: Uint8Array | null;
}

export function windowOf(series: PeriodSeries, from: number, length: number): Window {
  const to = from + length;
  return {
    weight: series.weight.subarray(from, to),
    kind: series.kind.subarray(from, to),
    season: series.season === null ? null : series.season.subarray(from, to),
  };
}

/** How many average periods a window is worth to a state that may know seasons. */
export function windowWeight(state: MethodState, window: Window): number {
  const { weight, season } = window;
  let sum = 0;
  for (let t = 0; t < weight.length; t += 1) {
    const factor = state.season === null ? 1 : (state.season[season?.[t] ?? 0] ?? 1);
    sum += (weight[t] ?? 0) * factor;
  }
  return sum;
}

/**
 * Use over a window as a count around its expectation. Days vary by `ratio` (variance over mean);
 * the level itself is unsure by `levelShare` periods, which counts once for the whole window.
 */
export function countOver(state: MethodState, weight: number, ratio: number): CountDistribution {
  const mean = state.level * weight;
  return countWith(mean, mean * ratio * (1 + state.levelShare * weight));
}

/** Sizes of the latest uses: enough to show their spread, few enough to follow a change. */
const LATEST_SIZES = 60;
/** Sums longer than this are as well told by a count with the same mean and variance. */
const LONGEST_SUM = 4000;

/** The sizes of use known at an origin, or null without any or where the sums get too long. */
export function sizesBefore(series: PeriodSeries, origin: number): Lattice | null {
  const sizes: number[] = [];
  for (let t = origin - 1; t >= 0 && sizes.length < LATEST_SIZES; t -= 1) {
    const y = series.use[t] ?? 0;
    if (y > 0) sizes.push(y);
  }
  return sizes.length === 0 || Math.max(...sizes) > LONGEST_SUM ? null : onLattice(sizes);
}

/**
 * A random number of uses, each of a size seen before: the expectation is the state's, the number
 * of uses Poisson, wider by what the level is unsure. Null where the sums get too long to tell.
 */
export function compoundOver(state: MethodState, weight: number, sizes: Lattice): Lattice | null {
  const uses = (state.level * weight) / sizes.mean;
  const spread = 1 + state.levelShare * weight;
  const square = sizes.variance + sizes.mean ** 2 * spread;
  const reach = state.level * weight + 12 * Math.sqrt(uses * square);
  if (!(reach < LONGEST_SUM)) return null;
  return compound(countWith(uses, uses * spread), sizes);
}

export interface Resampling {
  readonly draws: number;
  /** The same seed gives the same draws, so a forecast can be asked twice. */
  readonly seed: number;
}

/** How far back days are drawn from: about two years of days. */
const LATEST_PERIODS = 730;

/**
 * Sums over the window of periods drawn from the past, each from those of its own kind (weekday),
 * as heavy as the window's. Null where the past has no evidence.
 */
export function resampledOver(
  series: PeriodSeries,
  origin: number,
  window: Window,
  options: Resampling,
): Float64Array | null {
  const pools = poolsBefore(series, origin);
  if (pools.all.length === 0) return null;
  const random = seededRandom(options.seed);
  const sums = new Float64Array(options.draws);
  let [pool, weight] = [pools.all, Number.NaN];
  let amounts: Float64Array = new Float64Array(0);
  for (let t = 0; t < window.weight.length; t += 1) {
    const now = window.weight[t] ?? 0;
    if (now <= 0) continue;
    const own = pools.byKind.get(window.kind[t] ?? 0);
    const from = own === undefined || own.length < FEW_OF_A_KIND ? pools.all : own;
    if (from !== pool || now !== weight) amounts = asHeavyAs(series, from, now);
    [pool, weight] = [from, now];
    const n = amounts.length;
    for (let i = 0; i < sums.length; i += 1) {
      sums[i] = (sums[i] ?? 0) + (amounts[Math.floor(random() * n)] ?? 0);
    }
  }
  return sums;
}

/** Fewer days of a kind than this say less than all days together. */
const FEW_OF_A_KIND = 4;

/** A day of the same kind weighs the same, so its use is taken as it is: whole uses stay whole. */
function asHeavyAs(series: PeriodSeries, from: readonly number[], weight: number): Float64Array {
  const amounts = new Float64Array(from.length);
  for (let i = 0; i < from.length; i += 1) {
    const t = from[i] ?? 0;
    const [use, own] = [series.use[t] ?? 0, series.weight[t] ?? 0];
    amounts[i] = own === weight ? use : (use * weight) / own;
  }
  return amounts;
}

interface Pools {
  readonly all: readonly number[];
  readonly byKind: ReadonlyMap<number, number[]>;
}

function poolsBefore(series: PeriodSeries, origin: number): Pools {
  const all: number[] = [];
  const byKind = new Map<number, number[]>();
  for (let t = Math.max(0, origin - LATEST_PERIODS); t < origin; t += 1) {
    if ((series.weight[t] ?? 0) <= 0) continue;
    all.push(t);
    const kind = series.kind[t] ?? 0;
    const own = byKind.get(kind);
    if (own === undefined) byKind.set(kind, [t]);
    else own.push(t);
  }
  return { all, byKind };
}

/** What is needed to turn a state into a distribution of use. */
export interface Basis {
  readonly series: PeriodSeries;
  readonly origin: number;
  readonly ratio: number;
  readonly sizes: Lattice | null;
  readonly resampling: Resampling;
}

/** The distribution of use over a window by any method, or null where the method has none. */
export function predict(
  method: Method,
  state: MethodState,
  basis: Basis,
  window: Window,
): Distribution | null {
  const weight = windowWeight(state, window);
  if (method.name === 'resampling') {
    const sums = resampledOver(basis.series, basis.origin, window, basis.resampling);
    return sums === null ? null : empirical(sums);
  }
  if (method.name === 'compound') {
    if (state.level === 0) return countWith(0, 0);
    return basis.sizes === null ? null : compoundOver(state, weight, basis.sizes);
  }
  return countOver(state, weight, basis.ratio);
}
