import { minorStep } from '#lib/measure';

const digits = new Map<string, 0 | 1 | 2 | 3>();

/** Digits after the point in which a currency (ISO 4217) is paid: 2 for EUR, 0 for JPY, 3 for KWD. */
export function currencyDigits(currency: string): 0 | 1 | 2 | 3 {
  const known = digits.get(currency);
  if (known !== undefined) return known;
  const format = new Intl.NumberFormat('en', { style: 'currency', currency });
  const found = format.resolvedOptions().maximumFractionDigits ?? 2;
  const usable = found === 0 || found === 1 || found === 3 ? found : 2;
  digits.set(currency, usable);
  return usable;
}

/** The smallest amount that is paid, in micro currency units: 10000 for a cent. */
export function currencyStep(currency: string): bigint {
  return minorStep(currencyDigits(currency));
}
