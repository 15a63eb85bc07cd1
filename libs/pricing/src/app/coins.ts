import { money } from '#lib/measure';
import { type Actor, currencyStep } from '#lib/platform';
import { refusePricing } from '../pricing.refusals.js';

/** Refuses amounts that nobody can pay, e.g. a tenth of a cent; the keys name the fields. */
export function refuseFractions(
  actor: Actor,
  amounts: Readonly<Record<string, string | null | undefined>>,
): void {
  const step = currencyStep(actor.currency);
  const fields = Object.entries(amounts)
    .filter(([, text]) => typeof text === 'string' && money(text) % step !== 0n)
    .map(([field]) => ({
      field,
      message: `must not be finer than the smallest coin of ${actor.currency}`,
    }));
  if (fields.length === 0) return;
  throw refusePricing('finer_than_coin', `${fields[0]?.field} ${fields[0]?.message}.`, fields);
}

/** Blank text says nothing. */
export function textOrNull(text: string | null | undefined): string | null {
  return text?.trim() || null;
}
