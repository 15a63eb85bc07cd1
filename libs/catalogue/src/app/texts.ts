import { formatMoney, formatQuantity, money, quantity } from '#lib/measure';

type Optional = string | null | undefined;

/** An optional text of a request as it is kept: trimmed, and nothing rather than blank. */
export function optionalText(text: Optional): string | null {
  return text?.trim() || null;
}

/** An optional text that a request may change: what was, unless it says otherwise. */
export function changedText(text: Optional, before: string | null): string | null {
  return text === undefined ? before : optionalText(text);
}

/** A quantity in its shortest form: the database gives 0.060000, people read 0.06. */
export function plainQuantity(text: Optional): string | null {
  return text == null ? null : formatQuantity(quantity(text));
}

export function plainMoney(text: Optional): string | null {
  return text == null ? null : formatMoney(money(text));
}
