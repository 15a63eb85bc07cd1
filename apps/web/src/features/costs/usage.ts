import { formatQuantity, quantityFromMicro } from '#lib/measure';
import { micro } from '../../ui/drawn.js';
import type { UsageRow } from './api/report-usage.js';

export interface Version {
  readonly version: string;
  readonly latest: boolean;
}

/** The versions that were used, the latest first. */
export function versionsOf(rows: readonly UsageRow[]): Version[] {
  const found = new Map(rows.map((row) => [row.version, row.latest]));
  return [...found]
    .sort(([a], [b]) => b - a)
    .map(([version, latest]) => ({ version: String(version), latest }));
}

/** The rows of one version; of the latest that was used when none is asked for. */
export function versionOf(rows: readonly UsageRow[], wanted: string | undefined): UsageRow[] {
  const version = wanted ?? versionsOf(rows)[0]?.version;
  return rows.filter((row) => String(row.version) === version);
}

export function differenceOf(row: UsageRow): bigint {
  return micro(row.difference);
}

/** How much more or less than planned, as a part of what was planned; null: nothing was planned. */
export function shareOfPlan(row: UsageRow): number | null {
  const planned = micro(row.planned);
  if (planned === 0n) return null;
  return Number((differenceOf(row) * 10_000n) / planned) / 10_000;
}

/** A mean to three digits that count: 1.149333 -> 1.15. The CSV has all of them. */
export function shortMean(value: string): string {
  const exact = micro(value);
  const size = exact < 0n ? -exact : exact;
  const step = 10n ** BigInt(Math.max(String(size).length - 3, 0));
  const rounded = ((size + step / 2n) / step) * step;
  return formatQuantity(quantityFromMicro(exact < 0n ? -rounded : rounded));
}
