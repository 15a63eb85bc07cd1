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
  /** The line of an order that it answers, and how many packs of it are still to come. */
  readonly orderLineId: string | null;
  readonly ordered: number | null;
  readonly sample: boolean;
  /** Of the whole line, in grams. */
  readonly weight: string;
  /** Where its packs are of several lots; the line's own lot does not count then. */
  readonly lots: readonly LotLine[];
  /** Of a kit: lots of parts, by what they are, where they differ from the kit's. */
  readonly parts: Readonly<Record<string, PartLot>>;
  readonly damaged: string;
  readonly damagedLot: string;
  readonly missing: string;
}

export interface PartLot {
  readonly lotNumber: string;
  readonly expiresOn: string;
}

export interface LotLine extends PartLot {
  readonly key: string;
  readonly packs: string;
}

export type SpreadKey = 'value' | 'quantity' | 'weight';

export interface Values {
  readonly supplierId: string;
  readonly receivedOn: string;
  readonly reference: string;
  readonly freight: string;
  readonly duty: string;
  readonly discount: string;
  readonly spreadKey: SpreadKey;
  readonly lines: readonly Line[];
}

export function emptyLine(key: string, locationId: string): Line {
  return {
    ...{ key, product: null, packs: '', packPrice: '', locationId },
    ...{ lotNumber: '', noLot: false, expiresOn: '', orderLineId: null, ordered: null },
    ...{ sample: false, weight: '', lots: [], parts: {}, damaged: '', damagedLot: '', missing: '' },
  };
}

/** A line that nobody has written on; one of an order is, when something of it has come. */
export function isUntouched(line: Line): boolean {
  const { product, packs, packPrice, lotNumber, expiresOn, damaged, missing, lots } = line;
  const written = [packs, lotNumber, expiresOn, damaged, missing];
  if (line.orderLineId === null) written.push(packPrice);
  else if (lots.length > 0) return false;
  const isBlank = written.every((one) => one === '');
  return isBlank && (product === null || line.orderLineId !== null);
}

/** Only damaged or missing packs: nothing of it goes into stock. */
export function isOnlyFaults({ packs, damaged, missing }: Line): boolean {
  return packs.trim() === '' && `${damaged}${missing}`.trim() !== '';
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
export function totalsOf({ lines, freight, duty, discount }: Values): Totals {
  const goods = lines.reduce((total, line) => {
    const price = moneyOf(line.packPrice) ?? 0n;
    return total + BigInt(packsOf(line.packs) ?? 0) * price;
  }, 0n);
  const less = moneyOf(discount) ?? 0n;
  const landed = goods + (moneyOf(freight) ?? 0n) + (moneyOf(duty) ?? 0n) - less;
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
  const duty = extra(values.duty);
  const discount = extra(values.discount);
  const sent = written(values.lines);
  const faults = sent.flatMap(faultsOf);
  return {
    ...{ supplierId, receivedOn, spreadKey },
    ...(reference === '' ? {} : { reference }),
    ...(freight === undefined ? {} : { freight }),
    ...(duty === undefined ? {} : { duty }),
    ...(discount === undefined ? {} : { discount }),
    ...(faults.length === 0 ? {} : { faults }),
    lines: received(values.lines).map(lineOf),
  };
}

function lineOf(line: Line) {
  const { orderLineId, sample, weight } = line;
  const parts = Object.entries(line.parts)
    .map(([consumableId, part]) => ({ consumableId, ...lotOf(part) }))
    .filter((part) => 'lotNumber' in part || 'expiresOn' in part);
  const several = line.lots.length > 0;
  const lots = line.lots.map((lot) => ({ packs: packsOf(lot.packs) ?? 0, ...lotOf(lot) }));
  const own = lotOf({ ...line, lotNumber: line.noLot ? '' : line.lotNumber });
  return {
    presentationId: line.product?.presentation.id ?? '',
    packs: packsOf(line.packs) ?? 0,
    packPrice: asDecimal(line.packPrice) ?? line.packPrice,
    locationId: line.locationId,
    ...(several ? { lots } : own),
    ...(parts.length === 0 ? {} : { parts }),
    ...(orderLineId === null ? {} : { orderLineId }),
    ...(sample ? { sample } : {}),
    ...(weight.trim() === '' ? {} : { weightGrams: asDecimal(weight) ?? weight }),
  };
}

function lotOf({ lotNumber, expiresOn }: PartLot) {
  const number = lotNumber.trim();
  return {
    ...(number === '' ? {} : { lotNumber: number }),
    ...(expiresOn === '' ? {} : { expiresOn }),
  };
}

/** What came damaged or not at all: it is told, and never becomes stock. */
function faultsOf({ product, damaged, damagedLot, missing, orderLineId }: Line) {
  const common = {
    presentationId: product?.presentation.id ?? '',
    ...(orderLineId === null ? {} : { orderLineId }),
  };
  const broken = packsOf(damaged);
  const absent = packsOf(missing);
  const lot = damagedLot.trim() === '' ? {} : { lotNumber: damagedLot.trim() };
  return [
    ...(broken === undefined
      ? []
      : [{ ...common, kind: 'damaged' as const, packs: broken, ...lot }]),
    ...(absent === undefined ? [] : [{ ...common, kind: 'missing' as const, packs: absent }]),
  ];
}

/** The lines of which something goes into stock. */
export function received(lines: readonly Line[]): readonly Line[] {
  return written(lines).filter((line) => !isOnlyFaults(line));
}

/** What is sent: an untouched line at the end is only the next one to write on. */
export function written(lines: readonly Line[]): readonly Line[] {
  const some = lines.filter((line) => !isUntouched(line));
  return some.length === 0 ? lines.slice(0, 1) : some;
}
