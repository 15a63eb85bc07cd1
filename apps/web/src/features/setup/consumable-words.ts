import type { Consumable } from './api/list-consumables.js';

type Attributes = Pick<Consumable, 'shade' | 'opacity' | 'viscosity' | 'size' | 'grit'>;

/** 'Body 2 · medium': what tells a consumable from others of its name. */
export function attributesOf({ shade, opacity, viscosity, size, grit }: Attributes): string {
  return [shade, opacity, viscosity, size, grit].filter((part) => part !== null).join(' · ');
}

/** 'Paste, Body 2' */
export function fullName(consumable: Attributes & Pick<Consumable, 'name'>): string {
  const attributes = attributesOf(consumable);
  return attributes === '' ? consumable.name : `${consumable.name}, ${attributes}`;
}
