import {
  formatMoney,
  formatQuantity,
  type Money,
  money,
  moneyFromMicro,
  multiplyRatio,
  quantity,
  quantityFromMicro,
} from '#lib/measure';
import { asDecimal } from '../../../ui/decimal-text.js';
import type { Presentation } from '../api/list-presentations.js';
import type { Consumable } from '../api/list-summary.js';

/** What a line brings: one way in which a consumable is bought. */
export interface Product {
  readonly presentation: Presentation;
  readonly consumable: Consumable;
}

/** A line as it is being written; `key` stays when lines before it are taken away. */
export interface Line {
  readonly key: string;
  readonly product: Product | null;
  readonly packs: string;
  readonly packPrice: string;
  readonly locationId: string;
  readonly lotNumber: string;
  readonly noLot: boolean;
  readonly expiresOn: string;
}

export interface Values {
  readonly supplierId: string;
  readonly receivedOn: string;
  readonly reference: string;
  readonly freight: string;
  readonly discount: string;
  readonly spreadKey: 'value' | 'quantity';
  readonly lines: readonly Line[];
}

export function emptyLine(key: string, locationId: string): Line {
  return {
    ...{ key, product: null, packs: '', packPrice: '', locationId },
    ...{ lotNumber: '', noLot: false, expiresOn: '' },
  };
}

/** A line that nobody has written on. */
export function isUntouched({ product, packs, packPrice, lotNumber, expiresOn }: Line): boolean {
  return product === null && [packs, packPrice, lotNumber, expiresOn].every((one) => one === '');
}

export function packsOf(typed: string): number | undefined {
  const text = typed.trim();
  if (!/^\d{1,6}$/.test(text)) return undefined;
  const packs = Number(text);
  return packs >= 1 && packs <= 100_000 ? packs : undefined;
}

/** An amount of money that is not less than nothing; an empty one is nothing. */
export function moneyOf(typed: string): Money | undefined {
  const text = typed.trim() === '' ? '0' : asDecimal(typed);
  if (text === undefined) return undefined;
  const amount = money(text);
  return amount < 0n ? undefined : amount;
}

/** What a line brings in stock units; undefined while it cannot be told. */
export function broughtBy({ product, packs }: Line): string | undefined {
  const count = packsOf(packs);
  if (!product || count === undefined) return undefined;
  const { containersPerPack, contentPerContainer } = product.presentation;
  const one = BigInt(containersPerPack) * quantity(contentPerContainer);
  return formatQuantity(quantityFromMicro(BigInt(count) * one));
}

export interface Totals {
  readonly goods: string;
  readonly landed: string;
  readonly discountTooLarge: boolean;
}

/** The running totals; what cannot be read yet counts as nothing. */
export function totalsOf({ lines, freight, discount }: Values): Totals {
  const goods = lines.reduce((total, line) => {
    const price = moneyOf(line.packPrice) ?? 0n;
    return total + BigInt(packsOf(line.packs) ?? 0) * price;
  }, 0n);
  const less = moneyOf(discount) ?? 0n;
  const landed = goods + (moneyOf(freight) ?? 0n) - less;
  return {
    goods: formatMoney(moneyFromMicro(goods)),
    landed: formatMoney(moneyFromMicro(landed)),
    discountTooLarge: less > goods,
  };
}

/** By how much a price is above (or below) the last one: '0.125'; undefined when nobody can say. */
export function priceChange(typed: string, last: string): string | undefined {
  const price = typed.trim() === '' ? undefined : moneyOf(typed);
  const before = money(last);
  if (price === undefined || before === 0n) return undefined;
  const share = multiplyRatio(price - before, 1_000_000n, before, 'half-up');
  return formatQuantity(quantityFromMicro(share));
}

/** The lines as the service takes them; only of a form that was checked. */
export function bodyOf(values: Values) {
  const { supplierId, receivedOn, spreadKey } = values;
  const reference = values.reference.trim();
  const extra = (typed: string) => (typed.trim() === '' ? undefined : asDecimal(typed));
  const freight = extra(values.freight);
  const discount = extra(values.discount);
  return {
    ...{ supplierId, receivedOn, spreadKey },
    ...(reference === '' ? {} : { reference }),
    ...(freight === undefined ? {} : { freight }),
    ...(discount === undefined ? {} : { discount }),
    lines: written(values.lines).map((line) => ({
      presentationId: line.product?.presentation.id ?? '',
      packs: packsOf(line.packs) ?? 0,
      packPrice: asDecimal(line.packPrice) ?? line.packPrice,
      locationId: line.locationId,
      ...(line.noLot ? {} : { lotNumber: line.lotNumber.trim() }),
      ...(line.expiresOn === '' ? {} : { expiresOn: line.expiresOn }),
    })),
  };
}

/** What is sent: an untouched line at the end is only the next one to write on. */
export function written(lines: readonly Line[]): readonly Line[] {
  const some = lines.filter((line) => !isUntouched(line));
  return some.length === 0 ? lines.slice(0, 1) : some;
}
