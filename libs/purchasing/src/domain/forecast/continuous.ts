import { checkMoment, checkProbability, type Distribution } from './distribution.js';
import {
  incompleteGamma,
  normalDensity,
  normalQuantile,
  normalTail,
  poissonDensity,
} from './special-functions.js';

/** Normal distribution; may reach below 0, so it suits large use only. Throws RangeError. */
export function normal(mean: number, variance: number): Distribution {
  checkMoment('mean', mean, Number.NEGATIVE_INFINITY);
  checkMoment('variance', variance, Number.MIN_VALUE);
  const sd = Math.sqrt(variance);
  const z = (x: number) => (x - mean) / sd;
  return {
    mean,
    variance,
    cdf: (x) => normalTail(-z(x)),
    exceed: (x) => normalTail(z(x)),
    quantile: (p) => {
      checkProbability(p);
      return mean + sd * normalQuantile(p);
    },
    loss: (x) => sd * (normalDensity(z(x)) - z(x) * normalTail(z(x))),
  };
}

/** Any amount between two as likely as another. Throws RangeError unless high is above low. */
export function uniform(low: number, high: number): Distribution {
  checkMoment('low', low, Number.NEGATIVE_INFINITY);
  if (!(high > low && Number.isFinite(high))) throw new RangeError('high must be above low');
  const width = high - low;
  const share = (x: number) => Math.min(1, Math.max(0, x / width));
  return {
    mean: (low + high) / 2,
    variance: (width * width) / 12,
    cdf: (x) => share(x - low),
    exceed: (x) => share(high - x),
    quantile: (p) => {
      checkProbability(p);
      return low + p * width;
    },
    loss: (x) => (x <= low ? low + width / 2 - x : Math.max(0, high - x) ** 2 / (2 * width)),
  };
}

/** Log-normal by its median and the standard deviation of the logarithm. Throws RangeError. */
export function logNormal(median: number, logSd: number): Distribution {
  checkMoment('median', median, Number.MIN_VALUE);
  checkMoment('logSd', logSd, Number.MIN_VALUE);
  const mean = median * Math.exp((logSd * logSd) / 2);
  const z = (x: number) => (x <= 0 ? Number.NEGATIVE_INFINITY : Math.log(x / median) / logSd);
  return {
    mean,
    variance: mean * mean * Math.expm1(logSd * logSd),
    cdf: (x) => normalTail(-z(x)),
    exceed: (x) => normalTail(z(x)),
    quantile: (p) => {
      checkProbability(p);
      return median * Math.exp(logSd * normalQuantile(p));
    },
    loss: (x) => (x <= 0 ? mean - x : mean * normalTail(z(x) - logSd) - x * normalTail(z(x))),
  };
}

/** Gamma distribution by mean and variance: shape mean^2 / variance. Throws RangeError. */
export function gamma(mean: number, variance: number): Distribution {
  checkMoment('mean', mean, Number.MIN_VALUE);
  checkMoment('variance', variance, Number.MIN_VALUE);
  const shape = (mean * mean) / variance;
  const scale = variance / mean;
  const upper = (a: number, x: number) => incompleteGamma(a, Math.max(0, x) / scale).upper;
  return {
    mean,
    variance,
    cdf: (x) => incompleteGamma(shape, Math.max(0, x) / scale).lower,
    exceed: (x) => upper(shape, x),
    quantile: (p) => {
      checkProbability(p);
      return scale * gammaQuantile(shape, p);
    },
    loss: (x) => (x <= 0 ? mean - x : mean * upper(shape + 1, x) - x * upper(shape, x)),
  };
}

/** Newton steps that a bracket keeps honest, from the Wilson-Hilferty start. */
function gammaQuantile(shape: number, p: number): number {
  const spread = 1 / (9 * shape);
  const start = shape * (1 - spread + normalQuantile(p) * Math.sqrt(spread)) ** 3;
  // For small shapes the lower tail is x^a / Gamma(a + 1).
  let x = start > 0.05 * shape && shape > 0.3 ? start : smallQuantile(shape, p);
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 300; i += 1) {
    const { lower, upper } = incompleteGamma(shape, x);
    const error = p < 0.5 ? lower - p : 1 - p - upper;
    if (error > 0) high = x;
    else low = x;
    const density = (poissonDensity(shape, x) * shape) / x;
    let next = x - error / density;
    if (!(next > low && next < high))
      next = high === Number.POSITIVE_INFINITY ? x * 2 : (low + high) / 2;
    if (Math.abs(next - x) <= 1e-15 * x || high - low <= 1e-16 * x) return next;
    x = next;
  }
  return x;
}

function smallQuantile(shape: number, p: number): number {
  const density = poissonDensity(shape, 1) * Math.E;
  return Math.max(Number.MIN_VALUE * 1e10, (p / density) ** (1 / shape));
}
