import type { Consumable, Fee } from './api/choices.js';

/** Pastes are what has a shade; of these, what its category calls a composite, if any is. */
export function shadesOf(consumables: readonly Consumable[]): Consumable[] {
  const shaded = consumables.filter(({ shade }) => shade !== null && shade !== '');
  const composites = shaded.filter(({ category }) => /[ck]ompos/i.test(category));
  return composites.length > 0 ? composites : shaded;
}

/** The practice's fee of a template for a reason, else the one for any reason. */
export function feeFor(fees: readonly Fee[], templateId: string, reason: string): Fee | undefined {
  const own = fees.filter((fee) => fee.templateId === templateId);
  return own.find((fee) => fee.reason === reason) ?? own.find((fee) => fee.reason === null);
}
