import type { Money, Quantity } from './decimals.js';
import { roundTo } from './rounding.js';

const SCALE = 6;

/**
 * Shortest plain decimal in stock units: '0.06', '4', '-1.5'. `quantity` reads it back unchanged.
 */
export function formatQuantity(q: Quantity): string {
  return plain(q, 0);
}

/**
 * Plain decimal in currency units. Without `fractionDigits`: as many digits as it has, at least
 * two, so `money` reads it back unchanged. With `fractionDigits` (0 to 6): exactly that many, half
 * away from zero; throws RangeError for any other number.
 */
export function formatMoney(m: Money, fractionDigits?: number): string {
  if (fractionDigits === undefined) return plain(m, 2);
  if (!Number.isInteger(fractionDigits) || fractionDigits < 0 || fractionDigits > SCALE) {
    throw new RangeError(`Money has 0 to ${SCALE} digits after the point, not ${fractionDigits}.`);
  }
  const step = 10n ** BigInt(SCALE - fractionDigits);
  return plain(roundTo(m, step, 'half-up'), fractionDigits);
}

function plain(micro: bigint, leastDigits: number): string {
  const sign = micro < 0n ? '-' : '';
  const digits = (micro < 0n ? -micro : micro).toString().padStart(SCALE + 1, '0');
  const whole = digits.slice(0, -SCALE);
  const fraction = digits.slice(-SCALE).replace(/0+$/, '').padEnd(leastDigits, '0');
  return fraction === '' ? `${sign}${whole}` : `${sign}${whole}.${fraction}`;
}
