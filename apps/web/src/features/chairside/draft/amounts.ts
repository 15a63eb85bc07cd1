import { formatQuantity, isWholeUnit, quantity, quantityFromMicro } from '#lib/measure';

/** How far one tap goes: a piece, a centimetre, or about a tenth of what is there. */
export function stepOf(unit: string, around: string): string {
  if (isWholeUnit(unit) || unit === 'cm') return '1';
  const size = quantity(around);
  if (size < quantity('0.1')) return '0.01';
  return size < quantity('1') ? '0.05' : '0.1';
}

/** One step more (1) or less (-1), never below nothing. */
export function stepped(amount: string, step: string, direction: 1 | -1): string {
  const next = quantity(amount) + BigInt(direction) * quantity(step);
  return formatQuantity(quantityFromMicro(next < 0n ? 0n : next));
}

export function isSame(one: string, other: string): boolean {
  return quantity(one) === quantity(other);
}
