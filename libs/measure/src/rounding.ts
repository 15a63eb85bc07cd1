import { type Quantity, quantityFromMicro } from './decimals.js';

/**
 * half-up: to the nearest, a half away from zero (commercial rounding).
 * half-even: to the nearest, a half to the even neighbour.
 * down: towards zero. up: away from zero.
 */
export type RoundingMode = 'half-up' | 'half-even' | 'down' | 'up';

const ONE = 1_000_000n;

/**
 * value * numerator / denominator, rounded once to a whole number; exact up to that rounding.
 * Throws RangeError when the denominator is zero.
 */
export function multiplyRatio(
  value: bigint,
  numerator: bigint,
  denominator: bigint,
  mode: RoundingMode,
): bigint {
  if (denominator === 0n) throw new RangeError('A ratio needs a denominator other than zero.');
  const product = value * numerator;
  const negative = product < 0n !== denominator < 0n;
  const size = divideRounded(absolute(product), absolute(denominator), mode);
  return negative ? -size : size;
}

/** Product of two numbers with six digits after the point, rounded to six again. */
export function multiplyQuantity(q: Quantity, factor: Quantity, mode: RoundingMode): Quantity {
  return quantityFromMicro(multiplyRatio(q, factor, ONE, mode));
}

/** Rounds to a multiple of `step` (micro units, more than zero; RangeError otherwise). */
export function roundTo(value: bigint, step: bigint, mode: RoundingMode): bigint {
  if (step <= 0n) throw new RangeError('A rounding step must be more than zero.');
  return multiplyRatio(value, 1n, step, mode) * step;
}

/** The smallest amount paid in a currency with so many digits, in micro units: 2 gives 10000n. */
export function minorStep(fractionDigits: 0 | 1 | 2 | 3): bigint {
  return 10n ** BigInt(6 - fractionDigits);
}

/** Both operands must be at least zero. */
function divideRounded(dividend: bigint, divisor: bigint, mode: RoundingMode): bigint {
  const floor = dividend / divisor;
  const rest = dividend % divisor;
  if (rest === 0n || mode === 'down') return floor;
  if (mode === 'up') return floor + 1n;
  if (2n * rest === divisor) {
    return mode === 'half-up' || floor % 2n === 1n ? floor + 1n : floor;
  }
  return 2n * rest > divisor ? floor + 1n : floor;
}

function absolute(n: bigint): bigint {
  return n < 0n ? -n : n;
}
