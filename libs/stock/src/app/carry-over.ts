import { effectiveExpiry } from '#lib/catalogue';
import { moneyFromMicro, type Quantity, quantity, quantityFromMicro } from '#lib/measure';
import { type Actor, newId, type Tx } from '#lib/platform';
import { insertLayers } from '../db/delivery.repository.js';
import { type LineState, lineOfLayer, nextLineNumber } from '../db/delivery-lines.js';
import type { LotRow } from '../db/lots.js';
import { applyStockChanges, type NewHolding, type NewMovement } from '../db/stock-changes.js';
import type { Day, LayerState } from '../domain/candidate.js';
import { takeFromLayer } from '../domain/holding-change.js';
import { unitOf } from './checks.js';

interface HoldingRow {
  readonly id: string;
  readonly location_id: string;
  readonly on_hand: string;
  readonly opened_on: string | null;
  readonly receipt_id: string;
}

const HOLDINGS = `
SELECT h.id, h.location_id, h.on_hand, h.opened_on,
  (SELECT m.id FROM movements m WHERE m.layer_id = h.layer_id AND m.from_account = 'supplier'
   ORDER BY m.to_holding_id = h.id DESC, m.sequence LIMIT 1) AS receipt_id
FROM holdings h WHERE h.layer_id = $1 AND h.on_hand > 0 ORDER BY h.id`;

interface Right {
  readonly lot: LotRow;
  readonly expiresOn: Day | null;
  readonly day: Day;
  readonly note: string;
}

interface CarryOver {
  readonly line: LineState;
  /** Of the line that is to come. */
  readonly number: number;
  readonly to: Right;
}

/**
 * Carries what is left of a line over to a new line under the right lot and expiry, place by place. Its
 * consumable is locked.
 */
export async function carryOver(
  tx: Tx,
  actor: Actor,
  { line, number, to }: CarryOver,
): Promise<void> {
  const { lot, expiresOn, note } = to;
  const rows = await tx.query<HoldingRow>(HOLDINGS, [line.layerId]);
  const unit = await unitOf(tx, line.consumableId);
  const { life_after_opening: value, life_after_opening_unit: in_ } = unit;
  const life = value === null || in_ === null ? null : { value, unit: in_ };
  const layerId = newId();
  const moved = carriedOver(rows, line, { layerId, ...to });
  const all = quantityFromMicro(line.received - line.outQuantity);
  await insertLayers(tx, line.deliveryId, line.receivedOn, [
    {
      ...line,
      ...{ index: 0, field: '', contentPerContainer: line.content, quantity: all },
      ...{ lotId: lot.id, lotStatus: lot.status, expiresOn },
      ...{ layerId, holdingId: '', lineNumber: number, landedCost: moneyFromMicro(moved.value) },
      // The order was answered by the line that this one continues.
      orderLineId: null,
      kit: line.kit && { ...line.kit, lotNumber: null, expiresOn: null },
      ...{ kitLotId: line.kit?.lotId ?? null, kitLine: line.kit?.line ?? null },
      correction: { continues: line.layerId, replaces: null, note },
    },
  ]);
  await applyStockChanges(tx, actor.personId, {
    newHoldings: moved.newHoldings.map(
      (holding): NewHolding => ({
        ...holding,
        useBy:
          holding.openedOn === null
            ? null
            : effectiveExpiry({ labelExpiry: expiresOn, openedOn: holding.openedOn, life }),
      }),
    ),
    holdings: new Map(rows.map((row) => [row.id, 0n as Quantity])),
    layers: new Map([[line.layerId, moved.state]]),
    movements: moved.movements,
  });
}

/** Out of the wrong layer by counter-entries of its receipt, and into the right one, place by place. */
function carriedOver(
  rows: readonly HoldingRow[],
  line: LineState,
  { layerId, day, note }: Pick<Right, 'day' | 'note'> & { readonly layerId: string },
) {
  let state: LayerState = line;
  let value = 0n;
  const movements: NewMovement[] = [];
  const newHoldings: NewHolding[] = [];
  for (const row of rows) {
    const amount = quantity(row.on_hand);
    const change = takeFromLayer(state, amount);
    state = change.layer;
    value += change.cost;
    const id = newId();
    const common = {
      quantity: amount,
      cost: change.cost,
      occurredOn: day,
      note,
    };
    const at = { account: 'location' as const, locationId: row.location_id };
    movements.push(
      {
        ...common,
        ...{ id: newId(), layerId: line.layerId, reversesId: row.receipt_id },
        ...{ from: { ...at, holdingId: row.id }, to: { account: 'supplier' } },
      },
      {
        ...common,
        ...{ id: newId(), layerId },
        ...{ from: { account: 'supplier' }, to: { ...at, holdingId: id } },
      },
    );
    const place = { layerId, locationId: row.location_id, openedOn: row.opened_on };
    newHoldings.push({ id, ...place, onHand: amount, useBy: null });
  }
  return { state, value, movements, newHoldings };
}

// The first line that continues one is the correction that a person made, and may go on as another; those
// after it are what came back since. Each table is read once and compared by hash, whatever the database
// takes the number of rows for.
const CAME_BACK = `
WITH RECURSIVE next AS MATERIALIZED (
  SELECT DISTINCT ON (continues_layer_id) continues_layer_id AS layer_id, id, lot_id
  FROM layers WHERE consumable_id = ANY($1::uuid[]) AND continues_layer_id IS NOT NULL
  ORDER BY continues_layer_id, line_number
), there AS MATERIALIZED (
  SELECT id, lot_id, expires_on, coalesce(expires_on, 'infinity') AS last_day
  FROM layers WHERE consumable_id = ANY($1::uuid[]) AND live
), known AS MATERIALIZED (
  SELECT id, status, expires_on, coalesce(expires_on, 'infinity') AS last_day
  FROM lots WHERE consumable_id = ANY($1::uuid[])
), later AS (
  SELECT id AS layer_id, id AS end_id, lot_id FROM there WHERE id IN (SELECT layer_id FROM next)
  UNION ALL
  SELECT later.layer_id, n.id, n.lot_id FROM later JOIN next n ON n.layer_id = later.end_id
), wrong AS MATERIALIZED (
  SELECT layer_id, lot_id FROM later WHERE end_id NOT IN (SELECT layer_id FROM next)
  UNION ALL
  SELECT id, lot_id FROM there
  WHERE id NOT IN (SELECT layer_id FROM next)
    AND (lot_id, last_day) NOT IN (SELECT id, last_day FROM known)
)
SELECT w.layer_id, t.id AS lot_id, t.status, t.expires_on::text
FROM wrong w JOIN known t ON t.id = w.lot_id ORDER BY w.layer_id`;

interface CameBack {
  readonly layer_id: string;
  readonly lot_id: string;
  readonly status: LotRow['status'];
  readonly expires_on: Day | null;
}

/**
 * Goods that came back to a line whose lot or expiry was corrected meanwhile (a visit was reversed, a
 * count found them) go on under the right one as well: under the wrong one they might be issued although
 * they have expired, and a recall would miss them. Their consumables are locked.
 */
export async function carryOverWhatCameBack(
  tx: Tx,
  actor: Actor,
  { consumableIds, day }: { readonly consumableIds: readonly string[]; readonly day: Day },
): Promise<void> {
  const rows = await tx.query<CameBack>(CAME_BACK, [consumableIds]);
  for (const { layer_id, lot_id, status, expires_on } of rows) {
    const line = await lineOfLayer(tx, layer_id);
    const number = await nextLineNumber(tx, line.deliveryId);
    const to = { lot: { id: lot_id, status }, expiresOn: expires_on, day, note: CAME_BACK_NOTE };
    await carryOver(tx, actor, { line, number, to });
  }
}

const CAME_BACK_NOTE = 'Came back after the lot or expiry of its line was put right.';
