import { formatQuantity, type Quantity, quantity } from '#lib/measure';
import type { IsoDate, Tx } from '#lib/platform';
import type { IssuedConsumable } from '../domain/issue-visit.js';

export interface OpenShortfall
  extends Pick<IssuedConsumable, 'life_after_opening' | 'life_after_opening_unit'> {
  readonly id: string;
  readonly visitId: string;
  readonly usageLineId: string;
  readonly consumableId: string;
  readonly locationId: string;
  readonly lotId: string | null;
  readonly usedOn: IsoDate;
  readonly open: Quantity;
  /** Settled together with the others of its visit that share single doses. */
  readonly sharesDose: boolean;
}

interface Row {
  id: string;
  visit_id: string;
  usage_line_id: string;
  consumable_id: string;
  location_id: string;
  lot_id: string | null;
  used_on: IsoDate;
  open: string;
  shares_dose: boolean;
  life_after_opening: number | null;
  life_after_opening_unit: 'day' | 'month' | null;
}

const OPEN = `
SELECT s.id, s.visit_id, s.usage_line_id, s.consumable_id, s.location_id, s.lot_id,
       s.used_on::text, s.quantity - s.settled AS open, u.shares_dose, c.life_after_opening,
       c.life_after_opening_unit
FROM shortfalls s JOIN consumables c ON c.id = s.consumable_id
JOIN usage_lines u ON u.id = s.usage_line_id
WHERE s.practice_id = current_practice() AND s.consumable_id = ANY($1::uuid[])
  AND s.settled < s.quantity AND s.cancelled_at IS NULL
ORDER BY s.used_on, s.id`;

/** The open shortfalls of consumables whose stock is locked, the earliest use first. */
export async function openShortfalls(
  tx: Tx,
  consumableIds: readonly string[],
): Promise<OpenShortfall[]> {
  const rows = await tx.named<Row>('shortfalls-open', OPEN, [consumableIds]);
  return rows.map((row) => ({
    id: row.id,
    visitId: row.visit_id,
    usageLineId: row.usage_line_id,
    consumableId: row.consumable_id,
    locationId: row.location_id,
    lotId: row.lot_id,
    usedOn: row.used_on,
    open: quantity(row.open),
    sharesDose: row.shares_dose,
    life_after_opening: row.life_after_opening,
    life_after_opening_unit: row.life_after_opening_unit,
  }));
}

/** Adds what each shortfall was served. */
export async function writeSettlement(
  tx: Tx,
  settled: readonly { readonly id: string; readonly served: Quantity }[],
): Promise<void> {
  await tx.query(
    `UPDATE shortfalls s SET settled = s.settled + r.served
     FROM unnest($1::uuid[], $2::numeric[]) AS r(id, served) WHERE s.id = r.id AND r.served > 0`,
    [settled.map((s) => s.id), settled.map((s) => formatQuantity(s.served))],
  );
}

/** Sets what each shortfall was served to what still is moved to it. */
export async function reopenShortfalls(tx: Tx, ids: readonly string[]): Promise<void> {
  await tx.query(
    `UPDATE shortfalls s SET settled = least(s.quantity, (
       SELECT coalesce(sum(CASE to_account WHEN 'visit' THEN quantity ELSE -quantity END), 0)
       FROM movements WHERE shortfall_id = s.id))
     WHERE s.id = ANY($1::uuid[])`,
    [ids],
  );
}
