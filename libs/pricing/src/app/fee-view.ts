import type { Reason } from '#lib/dentition';
import type { IsoDate } from '#lib/platform';
import { instantText, moneyText } from '#lib/stock';
import type { FeeEntity } from '../db/fee.entity.js';
import type { FeeVersionRow } from '../db/fee-versions.js';

export interface FeeVersionView {
  readonly id: string;
  readonly validFrom: IsoDate;
  readonly fee: string;
  readonly points: string | null;
  readonly pointValue: string | null;
  readonly factor: string | null;
  readonly recordedAt: string;
}

export interface FeeSummary {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly feeClass: string | null;
  readonly templateId: string | null;
  readonly reason: Reason | null;
  readonly active: boolean;
}

export interface FeeView extends FeeSummary {
  /** The version that counts on the day asked for; null: not valid yet. */
  readonly current: FeeVersionView | null;
}

export interface FeeHistoryView extends FeeView {
  readonly versions: readonly FeeVersionView[];
}

export function feeSummary(row: FeeEntity): FeeSummary {
  const { id, code, name, feeClass, templateId, reason, active } = row;
  return { id, code, name, feeClass, templateId, reason, active };
}

export function versionView(row: FeeVersionRow): FeeVersionView {
  return {
    id: row.id,
    validFrom: row.valid_from,
    fee: moneyText(row.fee),
    points: row.points,
    pointValue: row.point_value,
    factor: row.factor,
    recordedAt: instantText(row.recorded_at),
  };
}

/** Versions come latest day first, and of one day the one recorded last first. */
export function feeHistory(
  row: FeeEntity,
  versions: readonly FeeVersionRow[],
  day: IsoDate,
): FeeHistoryView {
  const views = versions.map(versionView);
  const current = views.find((version) => version.validFrom <= day) ?? null;
  return { ...feeSummary(row), current, versions: views };
}
