import type { Reason } from '#lib/dentition';
import { formatQuantity, money, quantity } from '#lib/measure';
import { type IsoDate, newId, type Tx } from '#lib/platform';
import { moneyText } from '#lib/stock';
import type { PlanTerm } from '../domain/plan-terms.js';

/** A term as it was written down, decimals as text. */
export interface StoredTerm {
  readonly id: string;
  readonly fee_id: string | null;
  readonly fee_code: string | null;
  readonly fee_class: string | null;
  readonly valid_from: IsoDate;
  readonly allowed_fee: string | null;
  readonly alternate_fee: string | null;
  readonly coverage: string | null;
  readonly deductible_applies: boolean;
  readonly reasons: readonly Reason[];
  readonly cosmetic_note: string | null;
  readonly recorded_at: Date;
}

/** All that was ever written down for a plan, the latest day first. */
export async function loadTerms(tx: Tx, planId: string): Promise<StoredTerm[]> {
  return tx.query<StoredTerm>(
    `SELECT t.id, t.fee_id, f.code AS fee_code, t.fee_class, t.valid_from, t.allowed_fee,
       t.alternate_fee, t.coverage, t.deductible_applies, t.reasons, t.cosmetic_note, t.recorded_at
     FROM fee_plan_terms t LEFT JOIN fees f ON f.id = t.fee_id
     WHERE t.plan_id = $1 ORDER BY t.valid_from DESC, t.id DESC`,
    [planId],
  );
}

export function toTerm(row: StoredTerm): PlanTerm {
  return {
    id: row.id,
    feeId: row.fee_id,
    feeClass: row.fee_class,
    validFrom: row.valid_from,
    allowed: row.allowed_fee === null ? null : money(row.allowed_fee),
    alternate: row.alternate_fee === null ? null : money(row.alternate_fee),
    coverage: row.coverage === null ? null : quantity(row.coverage),
    deductibleApplies: row.deductible_applies,
    reasons: row.reasons,
    cosmeticNote: row.cosmetic_note,
  };
}

export function termTexts(row: StoredTerm) {
  return {
    allowedFee: row.allowed_fee === null ? null : moneyText(row.allowed_fee),
    alternateFee: row.alternate_fee === null ? null : moneyText(row.alternate_fee),
    coverage: row.coverage === null ? null : formatQuantity(quantity(row.coverage)),
  };
}

export interface NewTerm {
  readonly planId: string;
  readonly feeId: string | null;
  readonly feeClass: string | null;
  readonly validFrom: IsoDate;
  readonly allowedFee: string | null;
  readonly alternateFee: string | null;
  readonly coverage: string | null;
  readonly deductibleApplies: boolean;
  readonly reasons: readonly Reason[];
  readonly cosmeticNote: string | null;
}

export async function insertTerm(tx: Tx, personId: string, term: NewTerm): Promise<void> {
  await tx.query(
    `INSERT INTO fee_plan_terms (id, practice_id, plan_id, fee_id, fee_class, valid_from,
       allowed_fee, alternate_fee, coverage, deductible_applies, reasons, cosmetic_note, recorded_by)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13)`,
    [
      newId(),
      tx.practiceId,
      term.planId,
      term.feeId,
      term.feeClass,
      term.validFrom,
      term.allowedFee,
      term.alternateFee,
      term.coverage,
      term.deductibleApplies,
      term.reasons,
      term.cosmeticNote,
      personId,
    ],
  );
}
