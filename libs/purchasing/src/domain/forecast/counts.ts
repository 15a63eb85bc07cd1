import { certain, checkMoment, checkProbability, FUZZ, type LatticeLike } from './distribution.js';
import {
  binomialDensity,
  incompleteBeta,
  incompleteGamma,
  normalQuantile,
  poissonDensity,
} from './special-functions.js';

/**
 * A count whose probabilities follow f(k) = (a + b / k) f(k - 1): binomial, Poisson and negative
 * binomial are the only ones (Panjer 1981), so the compound recursion works for each.
 */
export interface CountDistribution extends LatticeLike {
  readonly a: number;
  readonly b: number;
  /** The quantiles at levels in rising order, in one walk. */
  quantiles(levels: readonly number[]): number[];
}

interface Parts {
  readonly mean: number;
  readonly variance: number;
  readonly a: number;
  readonly b: number;
  pmf(k: number): number;
  below(k: number): number;
  above(k: number): number;
  /** P(Y > k) of the size-biased count less one, so that E[X; X > k] = mean * biased(k - 1). */
  biased(k: number): number;
}

const WALK_UP_TO = 2000;
const WALK_FROM = 1e-250;

function count(parts: Parts): CountDistribution {
  const { mean, variance } = parts;
  const cdf = (x: number) => (x < 0 ? 0 : parts.below(Math.floor(x)));
  const exceed = (x: number) => (x < 0 ? 1 : parts.above(Math.floor(x)));
  const quantiles = (levels: readonly number[]) => {
    for (const p of levels) checkProbability(p);
    const first = parts.pmf(0);
    const walks = mean + 10 * Math.sqrt(variance) < WALK_UP_TO && first > WALK_FROM;
    return walks ? walk(parts, first, levels) : levels.map((p) => search(parts, p));
  };
  return {
    mean,
    variance,
    a: parts.a,
    b: parts.b,
    pmf: (k) => (Number.isInteger(k) && k >= 0 ? parts.pmf(k) : 0),
    cdf,
    exceed,
    quantiles,
    quantile: (p) => quantiles([p])[0] ?? 0,
    loss: (x) => {
      if (x <= 0) return mean - x;
      const k = Math.floor(x);
      return Math.max(0, mean * (k < 1 ? 1 : parts.biased(k - 1)) - x * parts.above(k));
    },
  };
}

/** Adds up from 0; a level too near 1 for that is looked for from its own side. */
function walk(parts: Parts, first: number, levels: readonly number[]): number[] {
  const { a, b } = parts;
  let k = 0;
  let density = first;
  let sum = first;
  return levels.map((p) => {
    if (p > 1 - 1e-9) return search(parts, p);
    const wanted = p * FUZZ;
    while (sum < wanted) {
      k += 1;
      density *= a + b / k;
      if (!(density > 0)) return search(parts, p);
      sum += density;
    }
    return k;
  });
}

function search(parts: Parts, p: number): number {
  const sd = Math.sqrt(parts.variance);
  const enough = (k: number) =>
    p > 0.5 ? parts.above(k) <= (1 - p) * (2 - FUZZ) : parts.below(k) >= p * FUZZ;
  let high = Math.max(0, Math.ceil(parts.mean + sd * normalQuantile(p)));
  let step = Math.max(1, Math.ceil(sd / 4));
  while (!enough(high)) {
    high += step;
    step *= 2;
  }
  let low = high - Math.max(1, Math.ceil(sd / 4));
  step = Math.max(1, Math.ceil(sd / 4));
  while (low >= 0 && enough(low)) {
    high = low;
    low -= step;
    step *= 2;
  }
  low = Math.max(low, -1);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Poisson count. Throws RangeError on a negative mean. */
export function poisson(mean: number): CountDistribution {
  checkMoment('mean', mean);
  if (mean === 0) return nothing();
  return count({
    mean,
    variance: mean,
    a: 0,
    b: mean,
    pmf: (k) => poissonDensity(k, mean),
    below: (k) => incompleteGamma(k + 1, mean).upper,
    above: (k) => incompleteGamma(k + 1, mean).lower,
    biased: (k) => incompleteGamma(k + 1, mean).lower,
  });
}

/**
 * Negative binomial by mean and variance: p = mean / variance, n = mean p / (1 - p). Throws
 * RangeError unless the variance is above the mean.
 */
export function negativeBinomial(mean: number, variance: number): CountDistribution {
  checkMoment('mean', mean, Number.MIN_VALUE);
  if (!(variance > mean)) throw new RangeError('variance must be above the mean');
  const p = mean / variance;
  const q = (variance - mean) / variance;
  const n = (mean * p) / q;
  // So near to Poisson that n overflows what the incomplete beta function can tell apart.
  if (!(n < 1e13)) return poisson(mean);
  return count({
    mean,
    variance,
    a: q,
    b: (n - 1) * q,
    pmf: (k) => (n / (n + k)) * binomialDensity(n, n + k, p, q),
    below: (k) => incompleteBeta(n, k + 1, p, q).lower,
    above: (k) => incompleteBeta(n, k + 1, p, q).upper,
    biased: (k) => incompleteBeta(n + 1, k + 1, p, q).upper,
  });
}

/** Binomial count: n trials with probability p. Throws RangeError. */
export function binomial(n: number, p: number): CountDistribution {
  checkMoment('trials', n);
  if (!Number.isInteger(n)) throw new RangeError(`trials must be whole, not ${n}`);
  if (!(p >= 0 && p <= 1)) throw new RangeError(`probability must be between 0 and 1, not ${p}`);
  if (n === 0 || p === 0) return nothing();
  if (p === 1) return { ...certain(n), a: 0, b: 0, quantiles: (levels) => levels.map(() => n) };
  const q = 1 - p;
  const tail = (trials: number) => (k: number) =>
    k >= trials ? { lower: 0, upper: 1 } : incompleteBeta(k + 1, trials - k, p, q);
  const [own, less] = [tail(n), tail(n - 1)];
  return count({
    mean: n * p,
    variance: n * p * q,
    a: -p / q,
    b: ((n + 1) * p) / q,
    pmf: (k) => (k > n ? 0 : binomialDensity(k, n, p, q)),
    below: (k) => own(k).upper,
    above: (k) => own(k).lower,
    biased: (k) => less(k).lower,
  });
}

/**
 * The count with this mean and (about) this variance: negative binomial above the mean, Poisson at
 * it, binomial below it. A binomial has whole trials, so there the variance is met from above.
 */
export function countWith(mean: number, variance: number): CountDistribution {
  checkMoment('mean', mean);
  checkMoment('variance', variance);
  if (mean === 0) return nothing();
  const ratio = variance / mean;
  if (ratio > 1 + 1e-9) return negativeBinomial(mean, variance);
  if (ratio > 1 - 1e-9) return poisson(mean);
  const trials = Math.max(1, Math.ceil(mean / (1 - ratio) - 1e-9));
  return binomial(trials, Math.min(1, mean / trials));
}

function nothing(): CountDistribution {
  return { ...certain(0), a: 0, b: 0, quantiles: (levels) => levels.map(() => 0) };
}
