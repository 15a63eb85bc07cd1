import { formatMoney, money } from '#lib/measure';
import type { Shape } from '../../api/client.js';
import type { Text } from '../../text/text.js';
import { asDecimal } from '../../ui/decimal-text.js';
import type { FieldErrors } from '../../ui/use-form.js';
import type { FeeVersion } from './api/list-fees.js';

/** A price as it is typed. */
export type PriceValues = {
  validFrom: string;
  how: 'amount' | 'points';
  fee: string;
  points: string;
  pointValue: string;
  factor: string;
};

type Typed = (decimal: string) => string;

/** The price before as a start, so that a new one is a change of it; a new fee begins empty. */
export function priceValues(
  before: FeeVersion | null,
  validFrom: string,
  typed: Typed,
): PriceValues {
  const part = (text: string | null | undefined) => (text == null ? '' : typed(text));
  const how = before?.points == null ? 'amount' : 'points';
  return {
    validFrom,
    how,
    fee: how === 'amount' ? part(before?.fee) : '',
    points: part(before?.points),
    pointValue: part(before?.pointValue),
    factor: part(before?.factor),
  };
}

const PARTS = [
  ['points', 6],
  ['pointValue', 8],
  ['factor', 6],
] as const;

/** What is read from points, value and factor; a part that is not a number is empty. */
export function pointsOf(values: PriceValues) {
  const read = (name: (typeof PARTS)[number][0], scale: number) =>
    asDecimal(values[name], scale) ?? '';
  return {
    points: read('points', 6),
    pointValue: read('pointValue', 8),
    factor: read('factor', 6),
  };
}

interface Coin {
  readonly step: bigint;
  /** '€0.01' */
  readonly words: string;
}

/** What is wrong with an amount of money; undefined: nothing. */
export function moneyError(typed: string, coin: Coin, t: Text): string | undefined {
  if (typed.trim() === '') return t.ui.required;
  const amount = asDecimal(typed);
  if (amount === undefined || amount.startsWith('-')) return t.ui.decimal;
  return money(amount) % coin.step === 0n ? undefined : t.fees.finer(coin.words);
}

export function priceErrors(values: PriceValues, coin: Coin, t: Text): FieldErrors {
  const validFrom = values.validFrom === '' ? t.ui.required : undefined;
  if (values.how === 'amount') return { validFrom, fee: moneyError(values.fee, coin, t) };
  const partError = (name: (typeof PARTS)[number][0], scale: number) => {
    if (values[name].trim() === '') return t.ui.required;
    const amount = asDecimal(values[name], scale);
    if (amount === undefined) return scale === 8 ? t.fees.pointDecimal : t.ui.decimal;
    return /^-|^0*(\.0*)?$/.test(amount) ? t.fees.zeroPoints : undefined;
  };
  const parts = PARTS.map(([name, scale]) => [name, partError(name, scale)] as const);
  return { validFrom, ...Object.fromEntries(parts) };
}

export function priceBody(values: PriceValues): Shape<'NewFeeVersionDto'> {
  const { validFrom, how } = values;
  if (how === 'points') return { validFrom, ...pointsOf(values) };
  return { validFrom, fee: formatMoney(money(asDecimal(values.fee) ?? '')) };
}
