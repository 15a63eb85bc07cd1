import { type Dispersion, dispersions, forecastRatio } from './dispersion.js';
import { meanPinball } from './measures.js';
import { type MethodState, methodStates } from './method-states.js';
import type { Method } from './methods.js';
import type { PeriodSeries } from './period-series.js';
import { type Basis, countOver, predict, sizesBefore, windowOf, windowWeight } from './predict.js';

export interface BacktestOptions {
  readonly methods: readonly Method[];
  /** Periods that one forecast adds up: lead time and review. */
  readonly horizon: number;
  /** Windows of that length judged from each origin; 1 unless given. */
  readonly windows?: number;
  readonly levels: readonly number[];
  /** Of the draws of the resampling method. */
  readonly seed: number;
  /** Most origins used; 12 unless given. */
  readonly origins?: number;
}

/** How each method would have done on an item's own past; nothing here looks ahead of an origin. */
export interface Backtest {
  /** Origins judged; 0 when the history is too short. */
  readonly origins: number;
  /** Mean pinball loss of each method, in grid steps; null where it could not forecast. */
  readonly losses: readonly (number | null)[];
  /** What was used in the windows judged, and what the first method expected, in usual uses. */
  readonly used: number;
  readonly expected: number;
  /** In how many of the windows a period that was judged is, on the mean; at least 1. */
  readonly overlap: number;
  /** The usual (median) use in grid steps; 0 without use. */
  readonly usualUse: number;
  readonly dispersion: Dispersion;
}

const LEAST_TRAIN = 8;
/** Enough to judge by over a dozen origins; the forecast itself draws more. */
const DRAWS = 120;

/**
 * Judges the methods from up to 12 origins in the last two thirds of the series. A method counts
 * only where it can say something at every origin. Throws RangeError on a bad horizon.
 */
export function backtest(series: PeriodSeries, options: BacktestOptions): Backtest {
  return allAtOnce(backtestSteps(series, options));
}

/** The same with a step for each method, so that somebody else can go first in between. */
export function* backtestSteps(
  series: PeriodSeries,
  options: BacktestOptions,
): Generator<void, Backtest> {
  const { methods, horizon } = options;
  if (!Number.isInteger(horizon) || horizon < 1) {
    throw new RangeError(`horizon must be a whole number of at least 1, not ${horizon}`);
  }
  const n = series.use.length;
  const [dispersion] = dispersions(series, [n]);
  if (dispersion === undefined) throw new Error('no dispersion at the end of the series');
  const origins = originsOf(n, options);
  const usualUse = usual(series);
  if (origins.length === 0 || usualUse === 0) {
    const losses = methods.map(() => null);
    return { origins: 0, losses, used: 0, expected: 0, overlap: 1, usualUse, dispersion };
  }
  const known = dispersions(series, origins);
  const judge = new Judge(series, options, origins);
  const losses: (number | null)[] = [];
  let sums: ReturnType<Judge['sums']> | null = null;
  for (const method of methods) {
    yield;
    const states = methodStates(series, method, origins);
    losses.push(judge.loss(method, states, known));
    sums ??= judge.sums(states);
  }
  const { used, expected } = sums ?? { used: 0, expected: 0 };
  return {
    origins: origins.length,
    losses,
    used: used / usualUse,
    expected: expected / usualUse,
    overlap: judge.overlap(),
    usualUse,
    dispersion,
  };
}

/** Takes all steps of a reckoning in one go. */
export function allAtOnce<T>(steps: Generator<void, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** Evenly spread, the last one leaving at least one whole window. */
export function originsOf(n: number, options: BacktestOptions): number[] {
  const { horizon, windows = 1, origins = 12 } = options;
  const first = Math.max(LEAST_TRAIN, Math.ceil(n / 3));
  const last = n - Math.max(horizon, Math.ceil((horizon * windows) / 4));
  const found: number[] = [];
  if (last < first) return found;
  const step = Math.max(1, horizon / 2, (last - first) / Math.max(1, origins - 1));
  for (let at = last; at >= first - 1e-9; at -= step) found.push(Math.round(at));
  return found.reverse();
}

function usual(series: PeriodSeries): number {
  const sizes = series.use.filter((y) => y > 0).sort();
  return sizes[Math.floor((sizes.length - 1) / 2)] ?? 0;
}

class Judge {
  private readonly each: number;

  constructor(
    private readonly series: PeriodSeries,
    private readonly options: BacktestOptions,
    private readonly origins: readonly number[],
  ) {
    this.each = options.windows ?? 1;
  }

  loss(
    method: Method,
    states: readonly (MethodState | null)[],
    known: readonly Dispersion[],
  ): number | null {
    let [sum, count] = [0, 0];
    for (const [i, origin] of this.origins.entries()) {
      const state = states[i];
      const dispersion = known[i];
      if (!state || !dispersion) return null;
      const basis = this.basis(method, origin, dispersion);
      const one = this.lossAt(method, state, basis);
      if (one === null) return null;
      sum += one.sum;
      count += one.count;
    }
    return count === 0 ? null : sum / count;
  }

  /** What the windows used and what the states expected of them. */
  sums(states: readonly (MethodState | null)[]): { used: number; expected: number } {
    let [used, expected] = [0, 0];
    for (const [i, origin] of this.origins.entries()) {
      const state = states[i];
      if (!state) continue;
      for (const from of this.windowsFrom(origin)) {
        used += this.usedFrom(from);
        expected += state.level * windowWeight(state, this.window(from));
      }
    }
    return { used, expected };
  }

  overlap(): number {
    let [all, once, reached] = [0, 0, 0];
    for (const origin of this.origins) {
      for (const from of this.windowsFrom(origin)) {
        const end = from + this.options.horizon;
        all += this.options.horizon;
        once += Math.max(0, end - Math.max(from, reached));
        reached = Math.max(reached, end);
      }
    }
    return once === 0 ? 1 : all / once;
  }

  private basis(method: Method, origin: number, dispersion: Dispersion): Basis {
    return {
      series: this.series,
      origin,
      ratio: forecastRatio(dispersion, null),
      sizes: method.name === 'compound' ? sizesBefore(this.series, origin) : null,
      resampling: { draws: DRAWS, seed: this.options.seed + origin },
    };
  }

  private lossAt(
    method: Method,
    state: MethodState,
    basis: Basis,
  ): { sum: number; count: number } | null {
    const { levels } = this.options;
    let [sum, count, before] = [0, 0, Number.NaN];
    let quantiles: number[] = [];
    for (const from of this.windowsFrom(basis.origin)) {
      const weight = windowWeight(state, this.window(from));
      // Windows of one weight have one forecast; equal months make that the usual case.
      if (weight !== before) {
        const found = this.quantiles(method, state, basis, from);
        if (found === null) return null;
        quantiles = found;
        before = weight;
      }
      sum += meanPinball(this.usedFrom(from), quantiles, levels);
      count += 1;
    }
    return { sum, count };
  }

  private quantiles(
    method: Method,
    state: MethodState,
    basis: Basis,
    from: number,
  ): number[] | null {
    const { levels } = this.options;
    const window = this.window(from);
    if (method.name !== 'resampling' && method.name !== 'compound') {
      return countOver(state, windowWeight(state, window), basis.ratio).quantiles(levels);
    }
    const of = predict(method, state, basis, window);
    return of === null ? null : levels.map((p) => of.quantile(p));
  }

  private windowsFrom(origin: number): number[] {
    const { horizon } = this.options;
    const found: number[] = [];
    for (let j = 0; j < this.each; j += 1) {
      const from = origin + j * horizon;
      if (from + horizon <= this.series.use.length) found.push(from);
    }
    return found;
  }

  private window(from: number) {
    return windowOf(this.series, from, this.options.horizon);
  }

  private usedFrom(from: number): number {
    let sum = 0;
    for (let t = from; t < from + this.options.horizon; t += 1) sum += this.series.use[t] ?? 0;
    return sum;
  }
}
