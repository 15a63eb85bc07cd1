import type { Shape } from '../../api/client.js';

/** 'Paste, Body 2': a consumable with what tells it from its sisters. */
export function fullNameOf({ name, shade, size, grit }: Shape<'StockConsumableDto'>): string {
  return [name, shade, size, grit].filter((part) => part !== null && part !== '').join(', ');
}
