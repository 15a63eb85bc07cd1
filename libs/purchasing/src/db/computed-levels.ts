import { formatMoney, formatQuantity, moneyFromMicro, quantityFromMicro } from '#lib/measure';
import type { IsoDate, Tx } from '#lib/platform';
import { microOf } from '#lib/stock';
import type { ComputedLevel, LevelReason } from '../domain/computed-level.js';
import type { ServiceMeasure } from '../domain/policy/index.js';

/** What was computed from what the book held at one moment, for the whole practice. */
export interface LevelReading {
  readonly computedOn: IsoDate;
  /** The time of the database when the facts were read. */
  readonly readAt: string;
  readonly levels: readonly KeptLevel[];
}

export interface KeptLevel extends ComputedLevel {
  /** Null: nobody ever said or sent. */
  readonly supplierId: string | null;
}

// Of two readings the one of newer facts stays, whichever was faster. A row that says the same is left
// as it is, so that who looks often writes little.
const NOTE = `
INSERT INTO computed_level_readings AS r (practice_id, computed_on, read_at) VALUES ($1, $2, $3)
ON CONFLICT (practice_id) DO UPDATE SET computed_on = $2, read_at = $3
WHERE r.read_at <= $3::timestamptz
RETURNING practice_id`;

const COLUMNS = `consumable_id, computed_on, reason, reorder_point, order_up_to, position,
  expiring_first, expected_use, lead_days, review_days, service_measure, service_level, hardly_used,
  presentation_id, supplier_id, packs, total`;

const KEEP = `
WITH wanted AS (
  SELECT * FROM json_to_recordset($2::json) AS w (consumable_id uuid, computed_on date, reason text,
    reorder_point numeric, order_up_to numeric, position numeric, expiring_first numeric,
    expected_use numeric, lead_days numeric, review_days smallint, service_measure text,
    service_level numeric, hardly_used boolean, presentation_id uuid, supplier_id uuid, packs integer,
    total numeric)
), gone AS (
  DELETE FROM computed_levels
  WHERE practice_id = $1 AND consumable_id NOT IN (SELECT consumable_id FROM wanted)
)
INSERT INTO computed_levels AS kept (practice_id, ${COLUMNS})
SELECT $1, ${COLUMNS} FROM wanted
ON CONFLICT (practice_id, consumable_id) DO UPDATE SET
  (${COLUMNS}) = ROW (${COLUMNS.replace(/\b([a-z_]+)/g, 'EXCLUDED.$1')})
WHERE kept.* IS DISTINCT FROM EXCLUDED.*`;

/** Keeps a reading in place of the one before; does nothing when that was of newer facts. */
export async function keepLevels(tx: Tx, reading: LevelReading): Promise<void> {
  const { computedOn, readAt, levels } = reading;
  const noted = await tx.query(NOTE, [tx.practiceId, computedOn, readAt]);
  if (noted.length === 0) return;
  await tx.query(KEEP, [tx.practiceId, JSON.stringify(levels.map(toRow))]);
}

function toRow(level: KeptLevel): object {
  const told = (micro: bigint) => formatQuantity(quantityFromMicro(micro));
  return {
    consumable_id: level.consumableId,
    computed_on: level.computedOn,
    reason: level.reason,
    reorder_point: told(level.reorderPoint),
    order_up_to: told(level.orderUpTo),
    position: told(level.position),
    expiring_first: told(level.expiringFirst),
    expected_use: told(level.expectedUse),
    lead_days: level.leadDays.toFixed(2),
    review_days: level.reviewDays,
    service_measure: level.serviceMeasure,
    service_level: String(level.serviceLevel),
    hardly_used: level.hardlyUsed,
    presentation_id: level.presentationId,
    supplier_id: level.supplierId,
    packs: Number(level.packs),
    total: level.total === null ? null : formatMoney(moneyFromMicro(level.total)),
  };
}

/** A level as it leaves the database. */
export interface LevelJson {
  readonly consumable_id: string;
  readonly computed_on: string;
  readonly reason: LevelReason;
  readonly reorder_point: string;
  readonly order_up_to: string;
  readonly position: string;
  readonly expiring_first: string;
  readonly expected_use: string;
  readonly lead_days: string;
  readonly review_days: number;
  readonly service_measure: ServiceMeasure;
  readonly service_level: string;
  readonly hardly_used: boolean;
  readonly presentation_id: string;
  readonly packs: number;
  readonly total: string | null;
}

/** A row of computed_levels `cl` as one JSON value, decimals as texts; to be read by `toLevel`. */
export const LEVEL_JSON = `CASE WHEN cl.consumable_id IS NOT NULL THEN json_build_object(
  'consumable_id', cl.consumable_id, 'computed_on', cl.computed_on, 'reason', cl.reason,
  'reorder_point', cl.reorder_point::text, 'order_up_to', cl.order_up_to::text,
  'position', cl.position::text, 'expiring_first', cl.expiring_first::text,
  'expected_use', cl.expected_use::text, 'lead_days', cl.lead_days::text,
  'review_days', cl.review_days, 'service_measure', cl.service_measure,
  'service_level', cl.service_level::text, 'hardly_used', cl.hardly_used,
  'presentation_id', cl.presentation_id, 'packs', cl.packs, 'total', cl.total::text) END`;

export function toLevel(json: LevelJson): ComputedLevel {
  return {
    consumableId: json.consumable_id,
    computedOn: json.computed_on,
    reason: json.reason,
    reorderPoint: microOf(json.reorder_point),
    orderUpTo: microOf(json.order_up_to),
    position: microOf(json.position),
    expiringFirst: microOf(json.expiring_first),
    expectedUse: microOf(json.expected_use),
    leadDays: Number(json.lead_days),
    reviewDays: json.review_days,
    serviceMeasure: json.service_measure,
    serviceLevel: Number(json.service_level),
    hardlyUsed: json.hardly_used,
    presentationId: json.presentation_id,
    packs: BigInt(json.packs),
    total: json.total === null ? null : microOf(json.total),
  };
}

/** The presentation that planning would order of each of these consumables, by consumable. */
export async function loadComputedOffers(
  tx: Tx,
  ids: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const rows = await tx.query<{ readonly id: string; readonly presentation: string }>(
    `SELECT consumable_id AS id, presentation_id AS presentation FROM computed_levels
     WHERE practice_id = $1 AND consumable_id = ANY ($2::uuid[])`,
    [tx.practiceId, ids],
  );
  return new Map(rows.map(({ id, presentation }) => [id, presentation]));
}

// What books something leaves its key, what changes master data its entry in the audit trail. Both bear
// the time at which their transaction began: it may have been at work when the facts were read.
const DUE = `
SELECT CASE
  WHEN r.practice_id IS NULL OR r.computed_on <> $2::date THEN true
  WHEN r.read_at > now() - $3 * interval '1 second' THEN false
  WHEN r.read_at < now() - interval '1 hour' THEN true
  ELSE EXISTS (SELECT FROM idempotency_keys k
               WHERE k.practice_id = $1 AND k.created_at > r.read_at - interval '1 minute')
    OR EXISTS (SELECT FROM audit_entries a
               WHERE a.practice_id = $1 AND a.recorded_at > r.read_at - interval '1 minute')
END AS due
FROM (SELECT) one LEFT JOIN computed_level_readings r ON r.practice_id = $1`;

/**
 * Whether the levels should be computed again: for a new day, after an hour, and some seconds after the
 * last time when anything was booked or changed since.
 */
export async function levelsAreDue(tx: Tx, today: IsoDate, restSeconds: number): Promise<boolean> {
  const [row] = await tx.query<{ readonly due: boolean }>(DUE, [tx.practiceId, today, restSeconds]);
  return row?.due === true;
}

/** The time of the database at which the running transaction sees the book. */
export async function readTime(tx: Tx): Promise<string> {
  const [row] = await tx.query<{ readonly at: string }>('SELECT now()::text AS at');
  if (!row) throw new Error('The database does not know what time it is');
  return row.at;
}
