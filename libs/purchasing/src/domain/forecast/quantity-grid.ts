import { checkProbability, type Distribution } from './distribution.js';

/**
 * The only place where a quantity (bigint, millionths of a stock unit) becomes a statistical number
 * and back. Use is counted in steps of a grid, so that a lattice distribution fits 0.06 g portions
 * as well as pieces.
 */
const FINE = 20n;

/** Steps of a smaller size than this share of the usual use would only slow the sums down. */
const COARSE_STEPS = 10n;

/**
 * The step for an item: the greatest common divisor of the amounts used, as long as the usual
 * (median) amount has at most 20 such steps; else a tenth of the usual amount, and amounts are then
 * told in parts of a step. Without amounts one stock unit. Millionths in, millionths out.
 */
export function gridStep(amounts: readonly bigint[]): bigint {
  const used = amounts.filter((amount) => amount > 0n).sort(ascending);
  const median = used[Math.floor((used.length - 1) / 2)];
  if (median === undefined) return 1_000_000n;
  const divisor = used.reduce(greatestCommonDivisor);
  if (median <= divisor * FINE) return divisor;
  const step = median / COARSE_STEPS;
  return step > 0n ? step : 1n;
}

function ascending(a: bigint, b: bigint): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [x, y] = [a, b];
  while (y > 0n) [x, y] = [y, x % y];
  return x;
}

/** An amount in steps. Throws RangeError unless the step is positive. */
export function toSteps(amount: bigint, step: bigint): number {
  checkStep(step);
  const whole = amount / step;
  return Number(whole) + Number(amount - whole * step) / Number(step);
}

/** An expected amount, to the nearest millionth. */
export function expectedFromSteps(steps: number, step: bigint): bigint {
  checkStep(step);
  if (!Number.isFinite(steps)) throw new RangeError(`not an amount: ${steps} steps`);
  const whole = Math.trunc(steps);
  return BigInt(whole) * step + BigInt(Math.round((steps - whole) * Number(step)));
}

function checkStep(step: bigint): void {
  if (step <= 0n) throw new RangeError(`a grid step must be positive, not ${step}`);
}

/** A distribution of use told in quantities (millionths of a stock unit). */
export interface QuantityDistribution {
  readonly mean: bigint;
  /** Standard deviation, to the nearest millionth. */
  readonly deviation: bigint;
  /** The least quantity that suffices with probability p, in whole steps where use is. */
  quantile(p: number): bigint;
  /** P(use <= quantity). */
  certainty(quantity: bigint): number;
  /** What is expected to be missing when so much is there. */
  expectedMissing(quantity: bigint): bigint;
}

/** A distribution in steps told in quantities. */
export function inQuantities(of: Distribution, step: bigint): QuantityDistribution {
  return {
    mean: expectedFromSteps(of.mean, step),
    deviation: expectedFromSteps(Math.sqrt(of.variance), step),
    quantile: (p) => {
      checkProbability(p);
      return upFromSteps(of.quantile(p), step);
    },
    certainty: (quantity) => of.cdf(toSteps(quantity, step)),
    expectedMissing: (quantity) => expectedFromSteps(of.loss(toSteps(quantity, step)), step),
  };
}

/** Up to the next millionth: an amount told in parts of a step must still suffice. */
function upFromSteps(steps: number, step: bigint): bigint {
  const whole = Math.floor(steps + 1e-9);
  const rest = Math.max(0, steps - whole);
  return BigInt(whole) * step + BigInt(Math.ceil(rest * Number(step) - 1e-6));
}
