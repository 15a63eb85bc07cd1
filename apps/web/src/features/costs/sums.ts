import { formatMoney, moneyFromMicro } from '#lib/measure';
import type { Shape } from '../../api/client.js';
import { micro } from '../../ui/drawn.js';

export type WasteReport = Shape<'WasteReportDto'>;

export interface Ranked {
  readonly name: string;
  readonly cost: string;
}

const text = (sum: bigint) => formatMoney(moneyFromMicro(sum));

/** Exact sums by name, the largest first. */
export function rankedBy<T extends { readonly cost: string }>(
  rows: readonly T[],
  nameOf: (row: T) => string,
): Ranked[] {
  const sums = new Map<string, bigint>();
  for (const row of rows) sums.set(nameOf(row), (sums.get(nameOf(row)) ?? 0n) + micro(row.cost));
  return [...sums]
    .sort(([a, x], [b, y]) => (x === y ? a.localeCompare(b) : x < y ? 1 : -1))
    .map(([name, sum]) => ({ name, cost: text(sum) }));
}

export function sumOf(costs: readonly string[]): string {
  return text(costs.reduce((sum, cost) => sum + micro(cost), 0n));
}

export interface MonthOfWaste {
  readonly month: string;
  readonly thrown: string;
  readonly chairside: string;
  readonly sum: string;
}

/** The latest month first. */
export function wasteByMonth(report: WasteReport): MonthOfWaste[] {
  const all = [...report.writeOffs, ...report.chairside];
  const months = [...new Set(all.map((row) => row.month))].sort().reverse();
  const of = (rows: readonly { readonly month: string; readonly cost: string }[], month: string) =>
    sumOf(rows.filter((row) => row.month === month).map((row) => row.cost));
  return months.map((month) => ({
    month,
    thrown: of(report.writeOffs, month),
    chairside: of(report.chairside, month),
    sum: of(all, month),
  }));
}
