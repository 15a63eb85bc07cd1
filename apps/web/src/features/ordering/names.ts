import type { Consumable } from './api/planned-items.js';

/** 'Paste, Body 2': how a person tells consumables apart. */
export function nameOf({ name, shade, size, grit }: Consumable): string {
  return [name, shade, size, grit].filter((part) => part !== null && part !== '').join(', ');
}
