import { effectiveExpiry } from '#lib/catalogue';
import { moneyFromMicro, type Quantity, quantity, quantityFromMicro } from '#lib/measure';
import { type Actor, newId, type Tx } from '#lib/platform';
import { insertLayers } from '../db/delivery.repository.js';
import { type LineState, lineOfLayer, linesOfLot, nextLineNumber } from '../db/delivery-lines.js';
import { holdWithKit } from '../db/kit-lots.js';
import { insertLots, type LotRow } from '../db/lots.js';
import { applyStockChanges, type NewHolding, type NewMovement } from '../db/stock-changes.js';
import type { LayerState } from '../domain/candidate.js';
import { takeFromLayer } from '../domain/holding-change.js';
import { refuseStock } from '../stock.refusals.js';
import { unitOf } from './checks.js';
import type { Correction } from './correction.js';

/**
 * Carries what is left of a line over to the right lot or expiry, wherever it is and opened or not; what
 * had left stays under the wrong one. A wrong expiry is put right for the whole lot, in every delivery.
 * Answers the number of the line under which the goods of this delivery stand now.
 */
export async function relabelLine(tx: Tx, actor: Actor, the: Correction): Promise<number> {
  const { wrong } = the;
  const onlyExpiry = wrong.lotNumber !== null && wrong.lotNumber === the.lotNumber;
  const lines = onlyExpiry
    ? await linesOfLot(tx, wrong.lotId)
    : [await lineOfLayer(tx, wrong.layerId)];
  const own = lines.find((line) => line.layerId === wrong.layerId);
  if (!own || own.outQuantity === own.received) {
    throw refuseStock(
      'stock_moved_on',
      'Nothing of this line is left: what was used stays explainable under the lot it was booked with.',
    );
  }
  if (onlyExpiry) {
    await tx.query('UPDATE lots SET expires_on = $2 WHERE id = $1', [wrong.lotId, the.expiresOn]);
  }
  const lot = await rightLot(tx, actor, the);
  let newLine = wrong.lineNumber;
  for (const line of lines) {
    const number = await nextLineNumber(tx, line.deliveryId);
    await carryOver(tx, actor, { the, line, lot, number });
    if (line.layerId === wrong.layerId) newLine = number;
  }
  return newLine;
}

/** Goods that are held back stay held back under another number: releasing is a decision of its own. */
async function rightLot(tx: Tx, actor: Actor, the: Correction): Promise<LotRow> {
  const { wrong, lotNumber, expiresOn } = the;
  const consumableId = wrong.consumableId;
  const [lot] = await insertLots(tx, [{ consumableId, lotNumber, expiresOn, field: '' }]);
  if (!lot) throw new Error('A lot just written is missing');
  if (wrong.lotStatus === 'released' || lot.status !== 'released') return lot;
  const status = wrong.lotStatus;
  const note = `Corrected from lot ${wrong.lotNumber ?? 'not stated'}, which is ${status}.`;
  await holdWithKit(tx, actor.personId, [{ lotId: lot.id, status, note }]);
  return { ...lot, status };
}

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

interface CarryOver {
  readonly the: Correction;
  readonly line: LineState;
  readonly lot: LotRow;
  readonly number: number;
}

async function carryOver(
  tx: Tx,
  actor: Actor,
  { the, line, lot, number }: CarryOver,
): Promise<void> {
  const rows = await tx.query<HoldingRow>(HOLDINGS, [line.layerId]);
  const unit = await unitOf(tx, line.consumableId);
  const { life_after_opening: value, life_after_opening_unit: in_ } = unit;
  const life = value === null || in_ === null ? null : { value, unit: in_ };
  const layerId = newId();
  const moved = carriedOver(rows, line, { layerId, the });
  const all = quantityFromMicro(line.received - line.outQuantity);
  await insertLayers(tx, line.deliveryId, line.receivedOn, [
    {
      ...line,
      ...{ index: 0, field: '', contentPerContainer: line.content, quantity: all },
      ...{ lotId: lot.id, lotStatus: lot.status, expiresOn: the.expiresOn },
      ...{ layerId, holdingId: '', lineNumber: number, landedCost: moneyFromMicro(moved.value) },
      // The order was answered by the line that this one continues.
      orderLineId: null,
      kit: line.kit && { ...line.kit, lotNumber: null, expiresOn: null },
      ...{ kitLotId: line.kit?.lotId ?? null, kitLine: line.kit?.line ?? null },
      correction: { continues: line.layerId, replaces: null, note: the.right.note },
    },
  ]);
  await applyStockChanges(tx, actor.personId, {
    newHoldings: moved.newHoldings.map(
      (holding): NewHolding => ({
        ...holding,
        useBy:
          holding.openedOn === null
            ? null
            : effectiveExpiry({ labelExpiry: the.expiresOn, openedOn: holding.openedOn, life }),
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
  to: { readonly layerId: string; readonly the: Correction },
) {
  const { layerId, the } = to;
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
      occurredOn: the.day,
      note: the.right.note,
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
