import type { Tx } from '#lib/platform';
import {
  type ConsumablePlanning,
  NOTHING_OWN,
  PLAIN_SETTINGS,
  PLAIN_TERMS,
  type PlanningSettings,
  type SupplyTerms,
} from '../domain/planning/planning-settings.js';
import { amountOrNull, levelText, quantityOrNull } from './planning-decimals.js';

const PRACTICE = `SELECT service_measure AS "serviceMeasure", service_level AS "serviceLevel",
  review_days AS "reviewDays", expiry_certainty AS "expiryCertainty",
  carrying_rate AS "carryingRate", order_cost AS "orderCost", lead_days AS "leadDays",
  leave_out_retakes AS "leaveOutRetakes" FROM planning_settings WHERE practice_id = $1`;

/** The settings of the practice, or the plain ones where nobody set any. */
export async function loadPlanningSettings(tx: Tx): Promise<PlanningSettings> {
  const [row] = await tx.query<PlanningSettings>(PRACTICE, [tx.practiceId]);
  if (!row) return PLAIN_SETTINGS;
  return {
    ...row,
    serviceLevel: levelText(row.serviceLevel),
    expiryCertainty: levelText(row.expiryCertainty),
    carryingRate: levelText(row.carryingRate),
    orderCost: amountOrNull(row.orderCost) ?? PLAIN_SETTINGS.orderCost,
  };
}

export async function savePlanningSettings(tx: Tx, settings: PlanningSettings): Promise<void> {
  await tx.query(
    `INSERT INTO planning_settings (practice_id, service_measure, service_level, review_days,
       expiry_certainty, carrying_rate, order_cost, lead_days, leave_out_retakes)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)
     ON CONFLICT (practice_id) DO UPDATE SET service_measure = $2, service_level = $3,
       review_days = $4, expiry_certainty = $5, carrying_rate = $6, order_cost = $7, lead_days = $8,
       leave_out_retakes = $9`,
    [
      ...[tx.practiceId, settings.serviceMeasure, settings.serviceLevel, settings.reviewDays],
      ...[settings.expiryCertainty, settings.carryingRate, settings.orderCost, settings.leadDays],
      settings.leaveOutRetakes,
    ],
  );
}

const OWN = `SELECT consumable_id AS "consumableId", service_measure AS "serviceMeasure",
  service_level AS "serviceLevel", review_days AS "reviewDays",
  expiry_certainty AS "expiryCertainty", reorder_at AS "reorderAt", order_up_to AS "orderUpTo", note
  FROM consumable_planning WHERE practice_id = $1 AND ($2::uuid IS NULL OR consumable_id = $2)`;

type OwnRow = ConsumablePlanning & { readonly consumableId: string };

/** What consumables have of their own, by id; all of them, or one. */
export async function loadOwnPlanning(
  tx: Tx,
  consumableId: string | null = null,
): Promise<ReadonlyMap<string, ConsumablePlanning>> {
  const rows = await tx.query<OwnRow>(OWN, [tx.practiceId, consumableId]);
  return new Map(rows.map(({ consumableId: id, ...row }) => [id, ownOf(row)]));
}

function ownOf(row: ConsumablePlanning): ConsumablePlanning {
  return {
    ...NOTHING_OWN,
    ...row,
    serviceLevel: row.serviceLevel === null ? null : levelText(row.serviceLevel),
    expiryCertainty: row.expiryCertainty === null ? null : levelText(row.expiryCertainty),
    reorderAt: quantityOrNull(row.reorderAt),
    orderUpTo: quantityOrNull(row.orderUpTo),
  };
}

export async function saveOwnPlanning(
  tx: Tx,
  consumableId: string,
  own: ConsumablePlanning,
): Promise<void> {
  await tx.query(
    `INSERT INTO consumable_planning (practice_id, consumable_id, service_measure, service_level,
       review_days, expiry_certainty, reorder_at, order_up_to, note)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)
     ON CONFLICT (practice_id, consumable_id) DO UPDATE SET service_measure = $3,
       service_level = $4, review_days = $5, expiry_certainty = $6, reorder_at = $7,
       order_up_to = $8, note = $9`,
    [
      ...[tx.practiceId, consumableId, own.serviceMeasure, own.serviceLevel, own.reviewDays],
      ...[own.expiryCertainty, own.reorderAt, own.orderUpTo, own.note],
    ],
  );
}

const TERMS = `SELECT supplier_id AS "supplierId", lead_days AS "leadDays",
  order_cost AS "orderCost", minimum_order AS "minimumOrder", freight,
  free_freight_from AS "freeFreightFrom", working_days AS "workingDays"
  FROM supplier_terms WHERE practice_id = $1 AND ($2::uuid IS NULL OR supplier_id = $2)`;

type TermsRow = SupplyTerms & { readonly supplierId: string };

/** What suppliers ask for, by id; all of them, or one. */
export async function loadSupplyTerms(
  tx: Tx,
  supplierId: string | null = null,
): Promise<ReadonlyMap<string, SupplyTerms>> {
  const rows = await tx.query<TermsRow>(TERMS, [tx.practiceId, supplierId]);
  return new Map(
    rows.map(({ supplierId: id, ...row }) => [
      id,
      {
        ...row,
        orderCost: amountOrNull(row.orderCost),
        minimumOrder: amountOrNull(row.minimumOrder),
        freight: amountOrNull(row.freight) ?? PLAIN_TERMS.freight,
        freeFreightFrom: amountOrNull(row.freeFreightFrom),
      },
    ]),
  );
}

export async function saveSupplyTerms(
  tx: Tx,
  supplierId: string,
  terms: SupplyTerms,
): Promise<void> {
  await tx.query(
    `INSERT INTO supplier_terms (practice_id, supplier_id, lead_days, order_cost, minimum_order,
       freight, free_freight_from, working_days)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8)
     ON CONFLICT (practice_id, supplier_id) DO UPDATE SET lead_days = $3, order_cost = $4,
       minimum_order = $5, freight = $6, free_freight_from = $7, working_days = $8`,
    [
      ...[tx.practiceId, supplierId, terms.leadDays, terms.orderCost, terms.minimumOrder],
      ...[terms.freight, terms.freeFreightFrom, [...terms.workingDays]],
    ],
  );
}
