import { formatMoney, money, moneyFromMicro, multiplyRatio, quantity } from '#lib/measure';

/** What one stock unit cost to get here, to a hundredth of a cent; undefined of nothing. */
export function unitCost(landedCost: string, amount: string): string | undefined {
  const of = quantity(amount);
  if (of === 0n) return undefined;
  const each = multiplyRatio(money(landedCost), 1_000_000n, of, 'half-up');
  return formatMoney(moneyFromMicro(each), 4);
}
