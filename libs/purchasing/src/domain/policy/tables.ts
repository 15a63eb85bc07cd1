import type { Distribution, Random } from './demand.js';

/** Chances of counts in steps: entry k is the chance of what is nearest to (first + k) * step. */
export interface Table {
  readonly first: number;
  readonly masses: Float64Array;
}

/** Chances below this, all together, are moved to the nearest entry that is kept. */
const TAIL = 1e-13;
const MOST_ENTRIES = 1 << 20;

/**
 * The chances of every count that matters; `step` is odd, 1 for exact. The entries add up to 1;
 * what is left out on either side has a chance below 1e-13 and is put into the entry beside it.
 */
export function tabulate(distribution: Distribution, step = 1): Table {
  if (step === 1 && distribution.weights)
    return trimmed({ first: 0, masses: distribution.weights });
  const first = Math.floor(lowEnd(distribution) / step);
  const masses: number[] = [];
  let before = 0;
  const upTo = runningTotal(distribution, first * step);
  for (let k = first; k < first + MOST_ENTRIES; k += 1) {
    const reached = upTo(k * step + step / 2);
    masses.push(Math.max(reached - before, 0));
    before = Math.max(reached, before);
    if (1 - before < TAIL || isFarOut(distribution, k * step)) break;
  }
  const last = masses.length - 1;
  masses[last] = (masses[last] ?? 0) + Math.max(1 - before, 0);
  return { first, masses: Float64Array.from(masses) };
}

/** The step, odd, that keeps a table of this distribution near or below `entries` entries. */
export function stepFor(distribution: Distribution, entries: number): number {
  const range = 16 * Math.sqrt(distribution.variance) + 20;
  const step = Math.ceil(range / entries);
  return step % 2 === 1 ? step : step + 1;
}

/** Draws steps from a table by inversion, with a guide that makes the search short. */
export function sampler({ first, masses }: Table): (random: Random) => number {
  const below = cumulate(masses);
  const size = masses.length;
  const guide = new Int32Array(size);
  for (let g = 0, k = 0; g < size; g += 1) {
    while (k < size - 1 && (below[k] ?? 1) <= g / size) k += 1;
    guide[g] = k;
  }
  return (random) => {
    const u = random();
    let k = guide[Math.floor(u * size)] ?? 0;
    while (k < size - 1 && (below[k] ?? 1) <= u) k += 1;
    return first + k;
  };
}

/** The sum of two independent counts told in the same steps. */
export function convolved(a: Table, b: Table): Table {
  const [left, right] = [a.masses, b.masses];
  const masses = new Float64Array(left.length + right.length - 1);
  for (let i = 0; i < left.length; i += 1) {
    const p = left[i] ?? 0;
    if (p === 0) continue;
    for (let j = 0; j < right.length; j += 1) {
      masses[i + j] = (masses[i + j] ?? 0) + p * (right[j] ?? 0);
    }
  }
  return trimmed({ first: a.first + b.first, masses });
}

/** Without the entries at both ends that weigh nothing. */
export function trimmed({ first, masses }: Table): Table {
  let [start, end] = [0, masses.length];
  let [low, high] = [0, 0];
  while (end > 1 && high + (masses[end - 1] ?? 0) < TAIL) {
    end -= 1;
    high += masses[end] ?? 0;
  }
  while (start < end - 1 && low + (masses[start] ?? 0) < TAIL) {
    low += masses[start] ?? 0;
    start += 1;
  }
  const kept = masses.slice(start, end);
  kept[0] = (kept[0] ?? 0) + low;
  kept[kept.length - 1] = (kept[kept.length - 1] ?? 0) + high;
  return { first: first + start, masses: kept };
}

/** A count below which hardly anything lies. */
function lowEnd(distribution: Distribution): number {
  const sd = Math.sqrt(distribution.variance);
  let low = Math.floor(distribution.mean - 9 * sd);
  while (low > 0 && distribution.cdf(low - 1) >= TAIL) low -= Math.ceil(2 * sd);
  return Math.max(low, 0);
}

/** P(D <= x) for rising x; one step of a known recursion is far cheaper than a cdf. */
function runningTotal(distribution: Distribution, from: number): (x: number) => number {
  const { a, b } = distribution;
  let chance = distribution.pmf?.(from) ?? 0;
  if (a === undefined || b === undefined || chance < 1e-200) return (x) => distribution.cdf(x);
  let total = distribution.cdf(from);
  let k = from;
  return (x) => {
    for (const end = Math.floor(x); k < end; ) {
      k += 1;
      chance *= a + b / k;
      total += chance;
    }
    return total;
  };
}

// A cdf that stops a hair below 1 because of rounding would otherwise be followed without end.
function isFarOut(distribution: Distribution, x: number): boolean {
  const spread = Math.sqrt(distribution.variance);
  return x > distribution.mean + 60 * spread + 60;
}

function cumulate(masses: Float64Array): Float64Array {
  const below = new Float64Array(masses.length);
  let sum = 0;
  for (let k = 0; k < masses.length; k += 1) {
    sum += masses[k] ?? 0;
    below[k] = sum;
  }
  return below;
}
