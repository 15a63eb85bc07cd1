import {
  formatMoney,
  formatQuantity,
  isZero,
  money,
  moneyFromMicro,
  multiplyQuantity,
  multiplyRatio,
  parseDecimal,
  type Quantity,
  quantity,
} from '#lib/measure';
import type { Format } from '../../text/format.js';
import type { Text } from '../../text/text.js';
import type { Presentation } from './api/list-presentations.js';

const ONE = 1_000_000n;

/** What is in one pack, in stock units; undefined when one of the numbers is none. */
export function packTotal(containers: string, content: string): Quantity | undefined {
  if (!/^\d{1,6}$/.test(containers) || !parseDecimal(content, 6).ok) return undefined;
  return multiplyQuantity(quantity(content), quantity(containers), 'half-up');
}

/** What one stock unit costs at the list price; undefined without a price or a content. */
export function unitPrice(listPrice: string | null, total: Quantity | undefined) {
  if (listPrice === null || total === undefined || isZero(total)) return undefined;
  if (!parseDecimal(listPrice, 6).ok) return undefined;
  return formatMoney(moneyFromMicro(multiplyRatio(money(listPrice), ONE, total, 'half-up')));
}

interface Pack extends Pick<Presentation, 'dispensing' | 'contentPerContainer'> {
  readonly containersPerPack: string;
}

/**
 * '1 pack = 20 single doses of 0.25 g = 5 g'; undefined when one of the numbers is none. What is
 * taken piece by piece, a piece at a time, is not called a portion of one piece.
 */
export function packSentence(
  { dispensing, containersPerPack, contentPerContainer }: Pack,
  unit: string,
  format: Format,
  t: Text,
): string | undefined {
  const total = packTotal(containersPerPack, contentPerContainer);
  if (total === undefined || isZero(total)) return undefined;
  const w = t.setupCatalogue;
  const one = Number(containersPerPack) === 1;
  const all = format.quantity(formatQuantity(total), unit);
  const loose = dispensing === 'by-piece' && quantity(contentPerContainer) === ONE;
  if (loose) return `${w.onePack} = ${all}`;
  const count = w.container[dispensing](format.number(containersPerPack), one);
  const inside = w.of(count, format.quantity(contentPerContainer, unit));
  return [w.onePack, inside, ...(one ? [] : [all])].join(' = ');
}
