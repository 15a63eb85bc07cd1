import { compare, isWholeUnit, quantity } from '#lib/measure';
import { asDecimal } from '../../../ui/decimal-text.js';

/** What is wrong with an amount that is to leave a holding; undefined when nothing is. */
export type AmountTrouble = 'missing' | 'decimal' | 'positive' | 'whole' | 'too much';

interface Held {
  readonly onHand: string;
  readonly consumable: { readonly unit: string };
}

export function amountTrouble(typed: string, held: Held): AmountTrouble | undefined {
  if (typed.trim() === '') return 'missing';
  const text = asDecimal(typed);
  if (text === undefined) return 'decimal';
  const amount = quantity(text);
  if (amount <= 0n) return 'positive';
  if (isWholeUnit(held.consumable.unit) && amount % 1_000_000n !== 0n) return 'whole';
  return compare(amount, quantity(held.onHand)) > 0 ? 'too much' : undefined;
}

/** What is wrong with an amount that was counted: nothing at all is allowed. */
export function countTrouble(
  typed: string,
  unit: string,
): 'decimal' | 'negative' | 'whole' | undefined {
  const text = asDecimal(typed);
  if (text === undefined) return 'decimal';
  const amount = quantity(text);
  if (amount < 0n) return 'negative';
  return isWholeUnit(unit) && amount % 1_000_000n !== 0n ? 'whole' : undefined;
}

/** What is wrong with the day of a booking. */
export function dayTrouble(
  day: string,
  today: string,
  since: string,
): 'missing' | 'future' | 'before' | undefined {
  if (day === '') return 'missing';
  if (day > today) return 'future';
  return day < since ? 'before' : undefined;
}

/** The day as the service wants it: today goes without saying. */
export function dayIfNotToday(day: string, today: string): { occurredOn?: string } {
  return day === today ? {} : { occurredOn: day };
}
