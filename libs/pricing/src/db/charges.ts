import type { IsoTooth, Reason } from '#lib/dentition';
import { formatMoney, type Money } from '#lib/measure';
import { type IsoDate, newId, type Tx } from '#lib/platform';

/** A visit whose restorations are charged. */
export interface ChargedVisit {
  readonly id: string;
  readonly chart_reference: string;
  readonly visited_on: IsoDate;
  readonly reversed: boolean;
}

/** Locked: nobody else charges or reverses the visit until the transaction ends. */
export async function lockVisit(tx: Tx, id: string): Promise<ChargedVisit | undefined> {
  const [row] = await tx.query<ChargedVisit>(
    `SELECT id, chart_reference, visited_on, reversed_at IS NOT NULL AS reversed
     FROM visits WHERE id = $1 FOR NO KEY UPDATE`,
    [id],
  );
  return row;
}

export async function findVisit(tx: Tx, id: string): Promise<ChargedVisit | undefined> {
  const [row] = await tx.query<ChargedVisit>(
    `SELECT id, chart_reference, visited_on, reversed_at IS NOT NULL AS reversed
     FROM visits WHERE id = $1`,
    [id],
  );
  return row;
}

export interface ChargedRestoration {
  readonly id: string;
  readonly reason: Reason;
  readonly template_id: string;
  readonly template_name: string;
  readonly tooth: IsoTooth;
  readonly surfaces: string;
  /** The record of its charge that counts; null: none yet. */
  readonly charge_id: string | null;
}

const RESTORATIONS = `
SELECT r.id, r.reason, r.template_id, t.name AS template_name, r.tooth, r.surfaces,
       c.id AS charge_id
FROM restorations r
JOIN procedure_templates t ON t.id = r.template_id
LEFT JOIN current_charges c ON c.restoration_id = r.id
WHERE r.visit_id = $1 ORDER BY r.position`;

export async function restorationsOf(tx: Tx, visitId: string): Promise<ChargedRestoration[]> {
  return tx.named<ChargedRestoration>('pricing.restorations', RESTORATIONS, [visitId]);
}

export interface NewCharge {
  readonly restorationId: string;
  readonly replacesId: string | null;
  readonly feeId: string | null;
  readonly planId: string | null;
  readonly fee: Money;
  readonly planPays: Money;
  readonly patientPays: Money;
  readonly writeOff: Money;
  readonly deductibleUsed: Money;
  readonly stated: boolean;
}

const INSERT = `
INSERT INTO charges (id, practice_id, restoration_id, replaces_id, charged_on, fee_id, plan_id,
  fee, plan_pays, patient_pays, write_off, deductible_used, stated, note, recorded_by)
SELECT c.id, $1, c.restoration_id, c.replaces_id, $2, c.fee_id, c.plan_id, c.fee, c.plan_pays,
  c.patient_pays, c.write_off, c.deductible_used, c.stated, $3, $4
FROM unnest($5::uuid[], $6::uuid[], $7::uuid[], $8::uuid[], $9::uuid[], $10::numeric[],
  $11::numeric[], $12::numeric[], $13::numeric[], $14::numeric[], $15::boolean[])
  AS c (id, restoration_id, replaces_id, fee_id, plan_id, fee, plan_pays, patient_pays,
    write_off, deductible_used, stated)`;

export async function insertCharges(
  tx: Tx,
  by: { readonly personId: string; readonly day: IsoDate; readonly note: string | null },
  charges: readonly NewCharge[],
): Promise<void> {
  const amounts = (of: (charge: NewCharge) => Money) => charges.map((c) => formatMoney(of(c)));
  await tx.named('pricing.insert-charges', INSERT, [
    ...[tx.practiceId, by.day, by.note, by.personId, charges.map(() => newId())],
    charges.map((c) => c.restorationId),
    charges.map((c) => c.replacesId),
    charges.map((c) => c.feeId),
    charges.map((c) => c.planId),
    amounts((c) => c.fee),
    amounts((c) => c.planPays),
    amounts((c) => c.patientPays),
    amounts((c) => c.writeOff),
    amounts((c) => c.deductibleUsed),
    charges.map((c) => c.stated),
  ]);
}

export interface ChargeRow {
  readonly id: string;
  readonly restoration_id: string;
  readonly visit_id: string;
  readonly chart_reference: string;
  readonly charged_on: IsoDate;
  readonly tooth: IsoTooth;
  readonly surfaces: string;
  readonly reason: Reason;
  readonly template_id: string;
  readonly template_name: string;
  readonly fee_code: string | null;
  readonly fee_name: string | null;
  readonly fee: string;
  readonly plan_id: string | null;
  readonly plan_name: string | null;
  readonly plan_pays: string;
  readonly patient_pays: string;
  readonly write_off: string;
  readonly deductible_used: string;
  readonly stated: boolean;
  readonly note: string | null;
  readonly replaces_id: string | null;
  readonly is_current: boolean;
  readonly visit_reversed: boolean;
  readonly recorded_by: string;
  readonly recorded_at: Date;
}

/** Records of charges with the names that people read: of `charges c`, `visits v`, `restorations r`. */
export const CHARGES = `
SELECT c.id, c.restoration_id, r.visit_id, v.chart_reference, c.charged_on, r.tooth, r.surfaces,
       r.reason, r.template_id, t.name AS template_name, f.code AS fee_code, f.name AS fee_name,
       c.fee, c.plan_id, p.name AS plan_name, c.plan_pays, c.patient_pays, c.write_off,
       c.deductible_used, c.stated, c.note, c.replaces_id, n.id IS NULL AS is_current,
       v.reversed_at IS NOT NULL AS visit_reversed, w.display_name AS recorded_by, c.recorded_at
FROM charges c
JOIN restorations r ON r.id = c.restoration_id
JOIN visits v ON v.id = r.visit_id
JOIN procedure_templates t ON t.id = r.template_id
JOIN people w ON w.id = c.recorded_by
LEFT JOIN charges n ON n.replaces_id = c.id
LEFT JOIN fees f ON f.id = c.fee_id
LEFT JOIN fee_plans p ON p.id = c.plan_id`;

const OF_VISIT = `${CHARGES} WHERE r.visit_id = $1 AND n.id IS NULL ORDER BY r.position`;

/** What counts now for a visit, restoration by restoration. */
export async function chargesOfVisit(tx: Tx, visitId: string): Promise<ChargeRow[]> {
  return tx.named<ChargeRow>('pricing.charges-of-visit', OF_VISIT, [visitId]);
}
