import type { Tx } from '#lib/platform';
import {
  type ConsumablePlanning,
  NOTHING_OWN,
  PLAIN_SETTINGS,
  type PlanningSettings,
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
  expiry_certainty AS "expiryCertainty", reorder_at AS "reorderAt", order_up_to AS "orderUpTo",
  shelf_room AS "shelfRoom", note
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
    shelfRoom: quantityOrNull(row.shelfRoom),
  };
}

export function saveOwnPlanning(tx: Tx, id: string, own: ConsumablePlanning): Promise<void> {
  return saveManyOwnPlanning(tx, [{ id, said: own }]);
}

/** Replaces what each consumable had of its own before. */
export async function saveManyOwnPlanning(
  tx: Tx,
  all: readonly { readonly id: string; readonly said: ConsumablePlanning }[],
): Promise<void> {
  if (all.length === 0) return;
  await tx.query(
    `INSERT INTO consumable_planning (practice_id, consumable_id, service_measure, service_level,
       review_days, expiry_certainty, reorder_at, order_up_to, note, shelf_room)
     SELECT $1, r.id, r."serviceMeasure", r."serviceLevel", r."reviewDays", r."expiryCertainty",
       r."reorderAt", r."orderUpTo", r.note, r."shelfRoom"
     FROM json_to_recordset($2::json) AS r(id uuid, "serviceMeasure" text, "serviceLevel" numeric,
       "reviewDays" smallint, "expiryCertainty" numeric, "reorderAt" numeric,
       "orderUpTo" numeric, note text, "shelfRoom" numeric)
     ON CONFLICT (practice_id, consumable_id) DO UPDATE SET
       service_measure = excluded.service_measure, service_level = excluded.service_level,
       review_days = excluded.review_days, expiry_certainty = excluded.expiry_certainty,
       reorder_at = excluded.reorder_at, order_up_to = excluded.order_up_to,
       note = excluded.note, shelf_room = excluded.shelf_room`,
    [tx.practiceId, JSON.stringify(all.map(({ id, said }) => ({ id, ...said })))],
  );
}
