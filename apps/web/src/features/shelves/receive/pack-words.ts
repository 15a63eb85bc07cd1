import { formatQuantity, quantity, quantityFromMicro } from '#lib/measure';
import type { Format } from '../../../text/format.js';
import type { Text } from '../../../text/text.js';
import type { Product } from './lines.js';

/** '20 × 0.25 g, single-dose': what is in a pack. */
export function packWords({ presentation, consumable }: Product, format: Format, t: Text): string {
  const { dispensing, containersPerPack, contentPerContainer } = presentation;
  const { unit } = consumable;
  if (dispensing === 'by-piece') {
    const total = BigInt(containersPerPack) * quantity(contentPerContainer);
    return format.quantity(formatQuantity(quantityFromMicro(total)), unit);
  }
  const content = format.quantity(contentPerContainer, unit);
  return t.receive.pack[dispensing](format.number(String(containersPerPack)), content);
}
