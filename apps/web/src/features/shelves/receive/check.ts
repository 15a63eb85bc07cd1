import type { Text } from '../../../text/text.js';
import { asDecimal } from '../../../ui/decimal-text.js';
import type { FieldErrors } from '../../../ui/use-form.js';
import { dayTrouble } from '../holding/checks.js';
import { type Line, moneyOf, packsOf, totalsOf, type Values, written } from './lines.js';

/** Where the error of a line's field is kept: it stays with the line when others go. */
export const pathOf = (key: string, field: string) => `${key}.${field}`;

/** The service's 'lines[2].packs' as the path of that line. */
export function fieldOf(path: string, sent: readonly Line[]): string {
  const [, index, field] = /^lines\[(\d+)\]\.(.+)$/.exec(path) ?? [];
  const line = index === undefined ? undefined : sent[Number(index)];
  return line && field ? pathOf(line.key, field) : path;
}

function priceTrouble(typed: string, t: Text): string | undefined {
  if (typed.trim() === '') return t.ui.required;
  if (asDecimal(typed) === undefined) return t.ui.decimal;
  return moneyOf(typed) === undefined ? t.shelves.form.notNegative : undefined;
}

function extraTrouble(typed: string, t: Text): string | undefined {
  return typed.trim() === '' ? undefined : priceTrouble(typed, t);
}

function lineErrors(line: Line, t: Text): FieldErrors {
  const { receive, ui } = t;
  const lotMissing = !line.noLot && line.lotNumber.trim() === '';
  return {
    [pathOf(line.key, 'presentationId')]: line.product ? undefined : receive.chooseProduct,
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
    ...Object.assign({}, ...written(values.lines).map((line) => lineErrors(line, t))),
    freight: extraTrouble(values.freight, t),
    discount: discount ?? tooLarge,
  };
}
