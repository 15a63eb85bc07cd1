import type { Consumable } from '../api/list-summary.js';

type Named = Pick<Consumable, 'name' | 'shade' | 'size' | 'grit'>;

/** What tells one consumable from another of the same name. */
function variantOf({ shade, size, grit }: Named): string {
  return [shade, size, grit].filter((part) => part !== null && part !== '').join(', ');
}

/** 'Paste, Body 2': how a sentence names a consumable. */
export function nameOf(consumable: Named): string {
  const variant = variantOf(consumable);
  return variant === '' ? consumable.name : `${consumable.name}, ${variant}`;
}
