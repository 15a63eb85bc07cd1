import { minorStep } from '#lib/measure';

/** Digits after the point in which a currency is paid. */
function coinDigits(currency: string): 0 | 1 | 2 | 3 {
  const { maximumFractionDigits: digits } = new Intl.NumberFormat('en', {
    style: 'currency',
    currency,
  }).resolvedOptions();
  return digits === 0 || digits === 1 || digits === 3 ? digits : 2;
}

/** The smallest amount that is paid, in millionths. */
export function coinStep(currency: string): bigint {
  return minorStep(coinDigits(currency));
}
