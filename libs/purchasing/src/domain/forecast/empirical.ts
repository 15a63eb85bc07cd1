import { checkProbability, type Distribution, FUZZ } from './distribution.js';

/**
 * The distribution of amounts seen, each as likely as the others; its quantile is the inverse of
 * the stepwise cdf (Hyndman & Fan 1996, definition 1). Throws RangeError without amounts.
 */
export function empirical(amounts: ArrayLike<number>): Distribution {
  const sorted = new Float64Array(amounts).sort();
  const n = sorted.length;
  let sum = 0;
  for (let i = 0; i < n; i += 1) sum += sorted[i] ?? 0;
  const mean = sum / n;
  if (!Number.isFinite(mean)) {
    throw new RangeError('an empirical distribution needs at least one finite amount');
  }
  let square = 0;
  for (let i = 0; i < n; i += 1) square += ((sorted[i] ?? 0) - mean) ** 2;
  const cdf = (x: number) => countUpTo(sorted, x) / n;
  return {
    mean,
    variance: square / n,
    cdf,
    exceed: (x) => (n - countUpTo(sorted, x)) / n,
    quantile: (p) => {
      checkProbability(p);
      const at = Math.ceil(n * p * FUZZ) - 1;
      return sorted[Math.min(n - 1, Math.max(0, at))] ?? 0;
    },
    loss: (x) => {
      let missing = 0;
      for (let i = countUpTo(sorted, x); i < n; i += 1) missing += (sorted[i] ?? 0) - x;
      return missing / n;
    },
  };
}

function countUpTo(sorted: Float64Array, x: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] ?? 0) <= x) low = middle + 1;
    else high = middle;
  }
  return low;
}
