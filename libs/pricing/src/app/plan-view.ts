import type { Reason } from '#lib/dentition';
import { formatMoney, money } from '#lib/measure';
import type { IsoDate } from '#lib/platform';
import { instantText } from '#lib/stock';
import type { FeePlanEntity } from '../db/fee-plan.entity.js';
import { type StoredTerm, termTexts } from '../db/plan-terms.js';
import type { FeeCeiling } from '../domain/plan-share.js';

export interface PlanSummary {
  readonly id: string;
  readonly name: string;
  readonly inNetwork: boolean;
  readonly deductible: string;
  readonly yearlyMaximum: string | null;
  readonly feeCeiling: FeeCeiling;
  readonly ceilingSource: string;
  readonly ceilingCheckedOn: IsoDate;
  readonly downgradeBilled: boolean;
  readonly active: boolean;
}

export interface TermView {
  readonly id: string;
  readonly feeId: string | null;
  readonly feeCode: string | null;
  readonly feeClass: string | null;
  readonly validFrom: IsoDate;
  readonly allowedFee: string | null;
  readonly alternateFee: string | null;
  readonly coverage: string | null;
  readonly deductibleApplies: boolean;
  readonly reasons: readonly Reason[];
  readonly cosmeticNote: string | null;
  readonly recordedAt: string;
}

export interface PlanView extends PlanSummary {
  readonly terms: readonly TermView[];
}

export function planSummary(row: FeePlanEntity): PlanSummary {
  const { practiceId: _, ...rest } = row;
  return {
    ...rest,
    deductible: formatMoney(money(row.deductible)),
    yearlyMaximum: row.yearlyMaximum === null ? null : formatMoney(money(row.yearlyMaximum)),
  };
}

export function planView(row: FeePlanEntity, terms: readonly StoredTerm[]): PlanView {
  return { ...planSummary(row), terms: terms.map(termView) };
}

function termView(row: StoredTerm): TermView {
  return {
    id: row.id,
    feeId: row.fee_id,
    feeCode: row.fee_code,
    feeClass: row.fee_class,
    validFrom: row.valid_from,
    ...termTexts(row),
    deductibleApplies: row.deductible_applies,
    reasons: row.reasons,
    cosmeticNote: row.cosmetic_note,
    recordedAt: instantText(row.recorded_at),
  };
}
