import { roundTo } from './rounding.js';

interface Share {
  readonly floor: bigint;
  readonly remainder: bigint;
}

/**
 * Splits a total over weights by largest remainder: each share is its exact part rounded down to
 * `step`, and the steps left over go to the shares that lost most, the earlier one first where they
 * lost the same. The shares add up to the total exactly and none is off by a whole step.
 *
 * All-zero weights count as equal ones; otherwise a zero weight gets nothing. A negative total is
 * split like the positive one. Throws RangeError for a negative weight, a total that is no multiple
 * of `step`, a step that is not positive, or something to split over nobody.
 */
export function splitLargestRemainder(
  total: bigint,
  weights: readonly bigint[],
  step: bigint = 1n,
): bigint[] {
  if (step <= 0n) throw new RangeError('A splitting step must be more than zero.');
  if (total % step !== 0n) throw new RangeError('The total is not a multiple of the step.');
  if (weights.some((weight) => weight < 0n)) throw new RangeError('A weight is negative.');
  if (weights.length === 0) {
    if (total === 0n) return [];
    throw new RangeError('There is nothing to split the total over.');
  }
  const even = weights.every((weight) => weight === 0n);
  const parts = even ? weights.map(() => 1n) : weights;
  const whole = parts.reduce((a, b) => a + b, 0n);
  const steps = (total < 0n ? -total : total) / step;
  const shares = parts.map((part) => ({
    floor: (steps * part) / whole,
    remainder: (steps * part) % whole,
  }));
  const sign = total < 0n ? -step : step;
  return handOut(shares, steps).map((share) => share * sign);
}

/**
 * Rounds micro values to multiples of `step` so that they still add up to their rounded sum (a half
 * away from zero). No value is off by a whole step, none changes its sign, and where two lost the
 * same the earlier one is rounded up. Throws RangeError when the step is not positive.
 */
export function roundKeepingSum(values: readonly bigint[], step: bigint): bigint[] {
  const exact = values.reduce((a, b) => a + b, 0n);
  // Amounts owed back are rounded like the same amounts owed.
  const sign = exact < 0n ? -1n : 1n;
  const target = roundTo(exact * sign, step, 'half-up') / step;
  const shares = values.map((value) => floorDivide(value * sign, step));
  return handOut(shares, target).map((share) => share * sign * step);
}

/** Raises the floors with the largest remainders by one until they add up to the target. */
function handOut(shares: readonly Share[], target: bigint): bigint[] {
  const missing = Number(target - shares.reduce((total, share) => total + share.floor, 0n));
  const order = shares.map((share, index) => ({ index, remainder: share.remainder }));
  order.sort((a, b) => {
    if (a.remainder !== b.remainder) return a.remainder > b.remainder ? -1 : 1;
    return a.index - b.index;
  });
  const raised = new Set(order.slice(0, missing).map((entry) => entry.index));
  return shares.map((share, index) => (raised.has(index) ? share.floor + 1n : share.floor));
}

function floorDivide(value: bigint, step: bigint): Share {
  const rest = value % step;
  return rest < 0n
    ? { floor: value / step - 1n, remainder: rest + step }
    : { floor: value / step, remainder: rest };
}
