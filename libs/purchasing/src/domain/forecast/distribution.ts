/**
 * A random amount of use. Amounts are plain numbers in one unit that the maker states (grid steps
 * or stock units); what leaves the forecast goes through `quantity-grid`.
 */
export interface Distribution {
  readonly mean: number;
  readonly variance: number;
  /** P(X <= x). */
  cdf(x: number): number;
  /** P(X > x), accurate where it is small. */
  exceed(x: number): number;
  /** Smallest x with P(X <= x) >= p, for 0 < p < 1. Throws RangeError otherwise. */
  quantile(p: number): number;
  /** E[max(X - x, 0)]: what is expected to be missing when x is there. */
  loss(x: number): number;
}

/** Distributions on 0, 1, 2, ... also know their points. */
export interface LatticeLike extends Distribution {
  pmf(k: number): number;
}

export function checkProbability(p: number): void {
  if (!(p > 0 && p < 1)) throw new RangeError(`probability must be between 0 and 1, not ${p}`);
}

export function checkMoment(name: string, value: number, least = 0): void {
  if (!Number.isFinite(value) || value < least) {
    throw new RangeError(`${name} must be a number of at least ${least}, not ${value}`);
  }
}

/** Rounding of a cdf must not push a quantile one point up: what R and SciPy do as well. */
export const FUZZ = 1 - 64 * Number.EPSILON;

/** The same use told in another unit: X times a positive factor. */
export function scaled(of: Distribution, factor: number): Distribution {
  if (!(factor > 0)) throw new RangeError(`factor must be positive, not ${factor}`);
  if (factor === 1) return of;
  // x / factor may fall a rounding error below the point that it was made from.
  const back = (x: number) => snap(x / factor);
  return {
    mean: of.mean * factor,
    variance: of.variance * factor * factor,
    cdf: (x) => of.cdf(back(x)),
    exceed: (x) => of.exceed(back(x)),
    quantile: (p) => of.quantile(p) * factor,
    loss: (x) => of.loss(x / factor) * factor,
  };
}

function snap(x: number): number {
  const near = Math.round(x);
  return near !== 0 && Math.abs(x - near) <= 1e-9 * Math.abs(near) ? near : x;
}

/** All weight on one amount. */
export function certain(amount: number): LatticeLike {
  return {
    mean: amount,
    variance: 0,
    pmf: (k) => (k === amount ? 1 : 0),
    cdf: (x) => (x >= amount ? 1 : 0),
    exceed: (x) => (x >= amount ? 0 : 1),
    quantile: (p) => {
      checkProbability(p);
      return amount;
    },
    loss: (x) => Math.max(0, amount - x),
  };
}

export interface Weighted<T> {
  readonly weight: number;
  readonly of: T;
}

/**
 * One of several distributions, each with its probability; weights are made to add up to 1. Throws
 * RangeError without a positive weight.
 */
export function mixture(parts: readonly Weighted<Distribution>[]): Distribution {
  const total = parts.reduce((sum, part) => sum + part.weight, 0);
  if (!(total > 0) || parts.some((part) => part.weight < 0)) {
    throw new RangeError('a mixture needs weights of at least 0 that are not all 0');
  }
  const used = parts.filter((part) => part.weight > 0);
  const over = (value: (of: Distribution) => number) =>
    used.reduce((sum, part) => sum + (part.weight / total) * value(part.of), 0);
  const mean = over((of) => of.mean);
  const cdf = (x: number) => over((of) => of.cdf(x));
  return {
    mean,
    variance: over((of) => of.variance + (of.mean - mean) ** 2),
    cdf,
    exceed: (x) => over((of) => of.exceed(x)),
    loss: (x) => over((of) => of.loss(x)),
    quantile: (p) => {
      checkProbability(p);
      return mixtureQuantile(
        used.map((part) => part.of),
        p,
        cdf,
      );
    },
  };
}

/** The quantile of a mixture lies between those of its parts; jumps are met by their own points. */
function mixtureQuantile(
  parts: readonly Distribution[],
  p: number,
  cdf: (x: number) => number,
): number {
  const each = parts.map((of) => of.quantile(p));
  let low = Math.min(...each);
  let high = Math.max(...each);
  if (cdf(low) >= p * FUZZ) return low;
  for (let i = 0; i < 200 && high - low > 1e-12 * Math.abs(high); i += 1) {
    const middle = (low + high) / 2;
    if (cdf(middle) >= p * FUZZ) high = middle;
    else low = middle;
  }
  return atJump(parts, low, high, cdf, p);
}

/** Bisection stops beside a jump; the jump itself is a quantile of one of the parts. */
function atJump(
  parts: readonly Distribution[],
  low: number,
  high: number,
  cdf: (x: number) => number,
  p: number,
): number {
  const near = Math.round(high);
  if (near >= low && Math.abs(near - high) < 1e-9 * Math.max(1, near) && cdf(near) >= p * FUZZ) {
    return near;
  }
  for (const of of parts) {
    const share = of.cdf(high);
    if (share <= 0 || share >= 1) continue;
    const point = of.quantile(share);
    const beside = Math.abs(point - high) <= 1e-8 * Math.abs(high);
    if (beside && cdf(point) >= p * FUZZ) return point;
  }
  return high;
}
