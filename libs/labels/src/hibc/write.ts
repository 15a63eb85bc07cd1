import { checkCharacter } from './check-character.js';
import type { HibcProduct } from './read.js';
import type { HibcProduction } from './secondary.js';

/** The label in one symbol, as edition 2.6 wants it: what has a supplement of its own is in one. */
export function writeHibc(product: HibcProduct, production: HibcProduction | null): string {
  const { lic, pcn, uom } = product;
  const parts = production ? productionParts(production) : [];
  return withCheck([`+${lic}${pcn}${uom}`, ...parts].join('/'));
}

/** A secondary symbol of its own that names the check character of its primary symbol. */
export function writeHibcSecondary(production: HibcProduction, link: string): string {
  return withCheck(`+${productionParts(production).join('/')}${link}`);
}

function withCheck(text: string): string {
  return text + checkCharacter(text);
}

function productionParts(production: HibcProduction): string[] {
  const { serial, quantity, expiry, manufactured } = production;
  const supplements = [
    ...(expiry?.date != null && expiry.hour === null ? [`14D${compact(expiry.date)}`] : []),
    ...(manufactured === null ? [] : [`16D${compact(manufactured)}`]),
    ...(serial === null ? [] : [`S${serial}`]),
    ...(quantity === null ? [] : [`Q${quantity}`]),
  ];
  return [firstPart(production), ...supplements];
}

/** A month without a day and an hour have no supplement; they stand before the lot. */
function firstPart({ lot, expiry }: HibcProduction): string {
  if (expiry?.date === null) {
    return `$$${expiry.month.slice(5)}${expiry.month.slice(2, 4)}${lot ?? ''}`;
  }
  if (expiry && expiry.hour !== null) {
    const hour = String(expiry.hour).padStart(2, '0');
    return `$$4${compact(expiry.date ?? '').slice(2)}${hour}${lot ?? ''}`;
  }
  return `$${lot ?? ''}`;
}

function compact(date: string): string {
  return date.replaceAll('-', '');
}
