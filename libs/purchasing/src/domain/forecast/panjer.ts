import type { CountDistribution } from './counts.js';
import { negativeBinomial, poisson } from './counts.js';
import { checkMoment } from './distribution.js';
import { type Lattice, lattice } from './lattice.js';

const TAIL = 1e-17;
const START = 1e-280;

/**
 * The sum of N amounts, N a Poisson or negative binomial count, by the recursion of Panjer (1981).
 * A count so large that its chance of zero underflows is halved until it does not, and the halves
 * are put together again. Throws RangeError on a binomial, for which the recursion is unstable.
 */
export function compound(count: CountDistribution, sizes: Lattice): Lattice {
  if (count.a < 0) throw new RangeError('a binomial count makes the recursion unstable');
  if (count.mean === 0 || sizes.mean === 0) return lattice([1]);
  const none = sizes.pmf(0);
  const zero = atZero(count, none);
  if (zero < START) {
    const half = compound(halved(count), sizes);
    return square(half);
  }
  return lattice(recursion(count, sizes, zero));
}

/** Probability generating function of the count at the chance that a size is 0. */
function atZero(count: CountDistribution, none: number): number {
  if (count.a === 0) return Math.exp(-count.mean * (1 - none));
  const n = count.b / count.a + 1;
  return ((1 - count.a) / (1 - count.a * none)) ** n;
}

function halved(count: CountDistribution): CountDistribution {
  const [mean, variance] = [count.mean / 2, count.variance / 2];
  return count.a === 0 ? poisson(mean) : negativeBinomial(mean, variance);
}

function square(half: Lattice): Lattice {
  const w = half.weights;
  const sum = new Float64Array(2 * w.length - 1);
  for (let i = 0; i < w.length; i += 1) {
    for (let j = 0; j < w.length; j += 1)
      sum[i + j] = (sum[i + j] ?? 0) + (w[i] ?? 0) * (w[j] ?? 0);
  }
  return lattice(sum);
}

/** The usual reach of the sum: its mean and twelve deviations; a first guess of the room needed. */
function usualReach(count: CountDistribution, sizes: Lattice): number {
  const mean = count.mean * sizes.mean;
  const variance = count.mean * sizes.variance + count.variance * sizes.mean ** 2;
  return Math.ceil(mean + 12 * Math.sqrt(variance)) + sizes.weights.length;
}

/**
 * Goes on past the mean until as many probabilities in a row as there are sizes are negligible:
 * what follows is made of these only, so it is negligible too, gaps between the sizes or not.
 */
function recursion(count: CountDistribution, sizes: Lattice, zero: number): Float64Array {
  const { a, b } = count;
  const f = sizes.weights;
  const scale = 1 / (1 - a * (f[0] ?? 0));
  let g = new Float64Array(usualReach(count, sizes));
  g[0] = zero;
  let quiet = 0;
  for (let k = 1; ; k += 1) {
    if (k >= g.length) {
      const longer = new Float64Array(2 * g.length);
      longer.set(g);
      g = longer;
    }
    let next = 0;
    for (let j = Math.min(k, f.length - 1); j >= 1; j -= 1) {
      next += (a + (b * j) / k) * (f[j] ?? 0) * (g[k - j] ?? 0);
    }
    g[k] = next * scale;
    quiet = next * scale < TAIL ? quiet + 1 : 0;
    if (quiet >= f.length && k > count.mean * sizes.mean) return g.subarray(0, k + 1);
  }
}

/** Sizes 1, 2, ... with P(j) = p (1 - p)^(j - 1). Throws RangeError unless 0 < p <= 1. */
export function geometricSizes(success: number): Lattice {
  if (!(success > 0 && success <= 1)) throw new RangeError('success must be in (0, 1]');
  return endless((j) => success * (1 - success) ** (j - 1), 1 - success);
}

/** Sizes 1, 2, ... with P(j) = -theta^j / (j log(1 - theta)). Throws RangeError outside (0, 1). */
export function logarithmicSizes(theta: number): Lattice {
  if (!(theta > 0 && theta < 1)) throw new RangeError('theta must be in (0, 1)');
  const factor = -1 / Math.log1p(-theta);
  return endless((j) => (factor * theta ** j) / j, theta);
}

function endless(density: (j: number) => number, ratio: number): Lattice {
  checkMoment('ratio', ratio);
  const length = ratio === 0 ? 1 : Math.ceil(Math.log(1e-18) / Math.log(ratio)) + 1;
  return lattice(Float64Array.from({ length: length + 1 }, (_, j) => (j === 0 ? 0 : density(j))));
}
