import { formatMoney, formatQuantity, moneyFromMicro, quantityFromMicro } from '#lib/measure';

const NUMERIC = /^(-?)(\d+)(?:\.(\d+))?$/;

/** A numeric of PostgreSQL in millionths. Unlike what people type, a sum may have any length. */
export function microOf(numeric: string): bigint {
  const match = NUMERIC.exec(numeric);
  if (!match) throw new Error(`${numeric} is not a number of the book`);
  const [, sign = '', whole = '', fraction = ''] = match;
  if (/[1-9]/.test(fraction.slice(6))) throw new Error(`${numeric} is finer than the book holds`);
  const size = BigInt(whole + fraction.slice(0, 6).padEnd(6, '0'));
  return sign === '-' ? -size : size;
}

/** A quantity of PostgreSQL as it goes over the wire: '0.06', '4'. */
export function quantityText(numeric: string): string {
  return formatQuantity(quantityFromMicro(microOf(numeric)));
}

/** An amount of PostgreSQL as it goes over the wire: '72.00', '0.123456'. */
export function moneyText(numeric: string): string {
  return formatMoney(moneyFromMicro(microOf(numeric)));
}

export function instantText(instant: Date): string {
  return instant.toISOString();
}
