import {
  checkProbability,
  type Distribution,
  FUZZ,
  type LatticeLike,
  type Weighted,
} from './distribution.js';

/** A distribution on 0, 1, 2, ... held as its probabilities. */
export interface Lattice extends LatticeLike {
  readonly weights: Float64Array;
}

export function isLattice(of: Distribution): of is Lattice {
  return 'weights' in of;
}

/**
 * Takes probabilities of 0, 1, 2, ...; they are made to add up to 1. Throws RangeError on a
 * negative one or when nothing is left.
 */
export function lattice(probabilities: ArrayLike<number>): Lattice {
  const weights = Float64Array.from(probabilities);
  let total = 0;
  for (const w of weights) {
    if (!(w >= 0)) throw new RangeError(`a probability must be at least 0, not ${w}`);
    total += w;
  }
  if (!(total > 0)) throw new RangeError('a distribution needs a positive probability');
  for (let k = 0; k < weights.length; k += 1) weights[k] = (weights[k] ?? 0) / total;
  return fromWeights(weights);
}

/** Tails are added up from the far end, where the small numbers are. */
function tailsOf(weights: Float64Array): { above: Float64Array; lost: Float64Array } {
  const above = new Float64Array(weights.length);
  const lost = new Float64Array(weights.length);
  for (let k = weights.length - 2; k >= 0; k -= 1) {
    above[k] = (above[k + 1] ?? 0) + (weights[k + 1] ?? 0);
    lost[k] = (lost[k + 1] ?? 0) + (above[k] ?? 0);
  }
  return { above, lost };
}

function fromWeights(weights: Float64Array): Lattice {
  const { above, lost } = tailsOf(weights);
  let mean = 0;
  let square = 0;
  for (let k = 0; k < weights.length; k += 1) mean += k * (weights[k] ?? 0);
  for (let k = 0; k < weights.length; k += 1) square += (k - mean) ** 2 * (weights[k] ?? 0);
  const exceed = (x: number) => (x < 0 ? 1 : (above[Math.floor(x)] ?? 0));
  return {
    weights,
    mean,
    variance: square,
    pmf: (k) => weights[k] ?? 0,
    exceed,
    cdf: (x) => (x < 0 ? 0 : 1 - exceed(x)),
    quantile: (p) => {
      checkProbability(p);
      return firstEnough(above, p);
    },
    loss: (x) => {
      if (x <= 0) return mean - x;
      const k = Math.floor(x);
      return Math.max(0, (lost[k] ?? 0) - (x - k) * (above[k] ?? 0));
    },
  };
}

function firstEnough(above: Float64Array, p: number): number {
  const allowed = p > 0.5 ? (1 - p) * (2 - FUZZ) + 64 * Number.EPSILON : 1 - p * FUZZ;
  let low = -1;
  let high = above.length - 1;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if ((above[middle] ?? 0) <= allowed) high = middle;
    else low = middle;
  }
  return high;
}

const NEGLIGIBLE = 1e-15;

/** The probabilities of any count up to where nothing measurable is left. */
export function asLattice(of: LatticeLike): Lattice {
  if (of.variance === 0) {
    const weights = new Float64Array(Math.round(of.mean) + 1);
    weights[weights.length - 1] = 1;
    return lattice(weights);
  }
  const weights = new Float64Array(of.quantile(1 - NEGLIGIBLE) + 1);
  const recursion = 'a' in of && 'b' in of ? (of as LatticeLike & Recursion) : null;
  let density = of.pmf(0);
  const steps = recursion !== null && density > RECURSION_FROM;
  for (let k = 0; k < weights.length; k += 1) {
    if (k > 0) density = steps ? density * (recursion.a + recursion.b / k) : of.pmf(k);
    weights[k] = Math.max(0, density);
  }
  return lattice(weights);
}

/** Counts of Panjer's class know each probability from the one before. */
interface Recursion {
  readonly a: number;
  readonly b: number;
}

const RECURSION_FROM = 1e-250;

/** The sum of two independent amounts. */
export function addIndependent(one: Lattice, other: Lattice): Lattice {
  const [a, b] = [trimmed(one.weights), trimmed(other.weights)];
  const sum = new Float64Array(a.length + b.length - 1);
  for (let i = 0; i < a.length; i += 1) {
    const w = a[i] ?? 0;
    if (w === 0) continue;
    for (let j = 0; j < b.length; j += 1) sum[i + j] = (sum[i + j] ?? 0) + w * (b[j] ?? 0);
  }
  return lattice(sum);
}

/** Convolving many tails that weigh nothing would cost most of the time. */
function trimmed(weights: Float64Array): Float64Array {
  let end = weights.length;
  while (end > 1 && (weights[end - 1] ?? 0) < 1e-18) end -= 1;
  return weights.subarray(0, end);
}

/** The sum of so many independent amounts, by squaring. Throws RangeError unless times is whole. */
export function timesIndependent(one: Lattice, times: number): Lattice {
  if (!Number.isInteger(times) || times < 0) throw new RangeError('times must be whole');
  let result = lattice([1]);
  let power = one;
  for (let left = times; left > 0; left = Math.floor(left / 2)) {
    if (left % 2 === 1) result = addIndependent(result, power);
    if (left > 1) power = addIndependent(power, power);
  }
  return result;
}

/** One of several lattices, each with its probability. Throws RangeError without a weight. */
export function latticeMixture(parts: readonly Weighted<Lattice>[]): Lattice {
  const length = Math.max(0, ...parts.map((part) => part.of.weights.length));
  const weights = new Float64Array(length);
  for (const { weight, of } of parts) {
    for (let k = 0; k < of.weights.length; k += 1) {
      weights[k] = (weights[k] ?? 0) + weight * (of.weights[k] ?? 0);
    }
  }
  return lattice(weights);
}

/** Real amounts put on whole points: each is shared between its neighbours, so the mean is kept. */
export function onLattice(amounts: readonly number[]): Lattice {
  const top = amounts.reduce((most, x) => Math.max(most, Math.ceil(x - 1e-9)), 0);
  const weights = new Float64Array(top + 1);
  for (const amount of amounts) {
    const whole = Math.round(amount);
    const low = Math.abs(amount - whole) < 1e-9 ? whole : Math.floor(amount);
    const share = low === whole && Math.abs(amount - whole) < 1e-9 ? 0 : amount - low;
    weights[low] = (weights[low] ?? 0) + 1 - share;
    if (share > 0) weights[low + 1] = (weights[low + 1] ?? 0) + share;
  }
  return lattice(weights);
}
