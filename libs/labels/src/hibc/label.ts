import { daysInMonth } from '../dates.js';
import type { Carrier } from '../gs1/scan.js';
import type { Label, OtherElement } from '../label.js';
import type { HibcExpiry } from './dates.js';
import type { HibcSymbol } from './read.js';
import { writeHibc, writeHibcSecondary } from './write.js';

export function hibcLabel(symbol: HibcSymbol, carrier: Carrier | null): Label {
  const { product, production, link, structure } = symbol;
  const expiry = production?.expiry ?? null;
  return {
    standard: 'HIBC',
    form: structure,
    carrier,
    deviceIdentifier: product && product.lic + product.pcn + product.uom,
    gtin14: null,
    labeler: product?.lic ?? null,
    lot: production?.lot ?? null,
    expiry: expiry && (expiry.date ?? lastDay(expiry.month)),
    expiryTime: expiry && timeOf(expiry),
    productionDate: production?.manufactured ?? null,
    serial: production?.serial ?? null,
    quantity: production?.quantity ?? null,
    others: othersOf(symbol),
    canonical: product
      ? writeHibc(product, production)
      : production
        ? writeHibcSecondary(production, link ?? '')
        : '',
    notes: expiry !== null && expiry.date === null ? ['day_not_stated'] : [],
  };
}

function othersOf({ product, structure, link }: HibcSymbol): OtherElement[] {
  return [
    ...(product ? [{ identifier: 'unit', title: 'Unit of measure', value: product.uom }] : []),
    ...(structure === 'secondary' && link !== null
      ? [{ identifier: 'link', title: 'Check character of the product', value: link }]
      : []),
  ];
}

/** A month without a day, as GS1 reads day 00: good until its last day. */
function lastDay(month: string): string {
  const [year, number] = month.split('-').map(Number) as [number, number];
  return `${month}-${daysInMonth(year, number)}`;
}

function timeOf({ hour }: HibcExpiry): string | null {
  return hour === null ? null : `${String(hour).padStart(2, '0')}:00`;
}
