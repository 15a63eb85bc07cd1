declare const unit: unique symbol;

/** An exact quantity in millionths of a stock unit: 1500000n is 1.5 g, mL, pieces, cm or uses. */
export type Quantity = bigint & { readonly [unit]: 'quantity' };

/** An exact amount in millionths of the practice's currency: 12340000n is 12.34. */
export type Money = bigint & { readonly [unit]: 'money' };

/** Any of the numbers that have six digits after the point. */
export type Decimal6 = Quantity | Money;

type DecimalProblem = 'not_a_decimal' | 'too_precise' | 'too_large';

/** A text is no decimal that the book can hold; `code` says why. */
export class MeasureError extends Error {
  constructor(
    readonly code: DecimalProblem,
    text: string,
  ) {
    super(`${MESSAGES[code]}: ${JSON.stringify(text.slice(0, 40))}`);
    this.name = 'MeasureError';
  }
}

const MESSAGES: Record<DecimalProblem, string> = {
  not_a_decimal: 'not a plain decimal number',
  too_precise: 'more digits after the point than can be kept',
  too_large: 'more than twelve digits before the point',
};

const SCALE = 6;
const MAX_INTEGER_DIGITS = 12;
const PLAIN_DECIMAL = /^(-?)(\d+)(?:\.(\d+))?$/;

type Parsed =
  | { readonly ok: true; readonly value: bigint }
  | { readonly ok: false; readonly code: DecimalProblem };

/**
 * Reads a plain decimal ('-12.5') as a whole number of 10^-scale. No exponent, no plus sign, no
 * spaces, no bare point; at most `scale` digits after the point (zeros count) and 12 before it.
 */
export function parseDecimal(text: string, scale: number): Parsed {
  const match = PLAIN_DECIMAL.exec(text);
  if (match === null) return { ok: false, code: 'not_a_decimal' };
  const [, sign = '', whole = '', fraction = ''] = match;
  if (fraction.length > scale) return { ok: false, code: 'too_precise' };
  if (whole.replace(/^0+/, '').length > MAX_INTEGER_DIGITS) return { ok: false, code: 'too_large' };
  const size = BigInt(whole + fraction.padEnd(scale, '0'));
  return { ok: true, value: sign === '-' ? -size : size };
}

/** Reads a quantity in stock units, at most six digits after the point. Throws MeasureError. */
export function quantity(text: string): Quantity {
  return quantityFromMicro(parseOrThrow(text));
}

/** Reads an amount in currency units, at most six digits after the point. Throws MeasureError. */
export function money(text: string): Money {
  return moneyFromMicro(parseOrThrow(text));
}

function parseOrThrow(text: string): bigint {
  const parsed = parseDecimal(text, SCALE);
  if (!parsed.ok) throw new MeasureError(parsed.code, text);
  return parsed.value;
}

/** Takes millionths of a stock unit as a quantity. */
export function quantityFromMicro(n: bigint): Quantity {
  return n as Quantity;
}

/** Takes millionths of a currency unit as money. */
export function moneyFromMicro(n: bigint): Money {
  return n as Money;
}

export const ZERO_QUANTITY: Quantity = quantityFromMicro(0n);
export const ZERO_MONEY: Money = moneyFromMicro(0n);
