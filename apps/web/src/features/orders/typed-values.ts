import type { Text } from '../../text/text.js';
import { asDecimal } from '../../ui/decimal-text.js';

/** What is wrong with an amount that may be left empty. */
export function amountProblem(typed: string, t: Text): string | undefined {
  if (typed.trim() === '') return undefined;
  const decimal = asDecimal(typed);
  return decimal === undefined || decimal.startsWith('-') ? t.ui.decimal : undefined;
}

/** What is wrong with a whole number that must be given. */
export function wholeProblem(
  typed: string,
  [least, most]: readonly [number, number],
  t: Text,
): string | undefined {
  const fits = /^\d{1,6}$/.test(typed.trim()) && Number(typed) >= least && Number(typed) <= most;
  return fits ? undefined : t.orders.wholeBetween(least, most);
}
