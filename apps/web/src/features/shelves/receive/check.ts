import type { Text } from '../../../text/text.js';
import { asDecimal } from '../../../ui/decimal-text.js';
import type { FieldErrors } from '../../../ui/use-form.js';
import { dayTrouble } from '../holding/checks.js';
import {
  isOnlyFaults,
  type Line,
  moneyOf,
  packsOf,
  totalsOf,
  type Values,
  written,
} from './lines.js';

/** Where the error of a line's field is kept: it stays with the line when others go. */
export const pathOf = (key: string, field: string) => `${key}.${field}`;

/**
 * The service's 'lines[2].packs' as the path of that line. What is wrong with one of its lots or parts is
 * said at the list of them.
 */
export function fieldOf(path: string, sent: readonly Line[]): string {
  const [, index, field] = /^lines\[(\d+)\]\.(.+)$/.exec(path) ?? [];
  const line = index === undefined ? undefined : sent[Number(index)];
  if (!line || !field) return path;
  const [list] = /^(lots|parts)\b/.exec(field) ?? [];
  return pathOf(line.key, list ?? field);
}

function priceTrouble(typed: string, t: Text): string | undefined {
  if (typed.trim() === '') return t.ui.required;
  if (asDecimal(typed) === undefined) return t.ui.decimal;
  return moneyOf(typed) === undefined ? t.shelves.form.notNegative : undefined;
}

function extraTrouble(typed: string, t: Text): string | undefined {
  return typed.trim() === '' ? undefined : priceTrouble(typed, t);
}

function countTrouble(typed: string, t: Text): string | undefined {
  return typed.trim() === '' || packsOf(typed) ? undefined : t.receive.packsWrong;
}

function weightTrouble(typed: string, t: Text): string | undefined {
  const grams = typed.trim() === '' ? undefined : moneyOf(typed);
  return grams === undefined || grams === 0n ? t.receiveMore.weightWanted : undefined;
}

/** The packs of the lots are those of the line. */
function lotsTrouble({ lots, packs }: Line, t: Text): string | undefined {
  const counts = lots.map((lot) => packsOf(lot.packs));
  if (counts.includes(undefined)) return t.receive.packsWrong;
  const sum = counts.reduce<number>((total, one) => total + (one ?? 0), 0);
  return sum === packsOf(packs) ? undefined : t.receiveMore.lotsAddUp(packs, String(sum));
}

function lineErrors(line: Line, byWeight: boolean, t: Text): FieldErrors {
  const { receive, ui } = t;
  const faults = {
    [pathOf(line.key, 'presentationId')]: line.product ? undefined : receive.chooseProduct,
    [pathOf(line.key, 'damaged')]: countTrouble(line.damaged, t),
    [pathOf(line.key, 'missing')]: countTrouble(line.missing, t),
  };
  if (isOnlyFaults(line)) return faults;
  const several = line.lots.length > 0;
  const lotMissing = !several && !line.noLot && line.lotNumber.trim() === '';
  const weighs = line.weight.trim() !== '' || (byWeight && !line.sample);
  return {
    ...faults,
    [pathOf(line.key, 'weightGrams')]: weighs ? weightTrouble(line.weight, t) : undefined,
    [pathOf(line.key, 'lots')]: several ? lotsTrouble(line, t) : undefined,
    [pathOf(line.key, 'packs')]: packsOf(line.packs) ? undefined : receive.packsWrong,
    [pathOf(line.key, 'packPrice')]: priceTrouble(line.packPrice, t),
    [pathOf(line.key, 'locationId')]: line.locationId === '' ? ui.choose : undefined,
    [pathOf(line.key, 'lotNumber')]: lotMissing ? receive.lotWanted : undefined,
  };
}

/** What can be seen to be wrong with a delivery before it is sent. */
export function checkDelivery(values: Values, today: string, t: Text): FieldErrors {
  const day = dayTrouble(values.receivedOn, today, '');
  const discount = extraTrouble(values.discount, t);
  const tooLarge = totalsOf(values).discountTooLarge ? t.receive.discountTooLarge : undefined;
  return {
    supplierId: values.supplierId === '' ? t.ui.choose : undefined,
    receivedOn: day && (day === 'future' ? t.shelves.form.notFuture : t.ui.required),
    ...Object.assign(
      {},
      ...written(values.lines).map((line) => lineErrors(line, values.spreadKey === 'weight', t)),
    ),
    freight: extraTrouble(values.freight, t),
    duty: extraTrouble(values.duty, t),
    discount: discount ?? tooLarge,
  };
}
