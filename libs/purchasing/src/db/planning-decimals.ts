import { moneyText, quantityText } from '#lib/stock';

/** A share of PostgreSQL as it goes over the wire: '0.95'. */
export function levelText(numeric: string): string {
  return quantityText(numeric);
}

export function quantityOrNull(numeric: string | null): string | null {
  return numeric === null ? null : quantityText(numeric);
}

export function amountOrNull(numeric: string | null): string | null {
  return numeric === null ? null : moneyText(numeric);
}
