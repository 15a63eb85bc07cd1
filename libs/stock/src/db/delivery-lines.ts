import { type Money, money, type Quantity, quantity, quantityFromMicro } from '#lib/measure';
import { refuse, StartAgain, type Tx } from '#lib/platform';
import type { Day, Dispensing, LayerState, LotStatus } from '../domain/candidate.js';
import type { SpreadKey } from '../domain/land-delivery.js';
import { refuseStock } from '../stock.refusals.js';
import { lockConsumables } from './lock-candidates.js';

/** A layer as a line of its delivery. */
export interface LineState extends LayerState {
  readonly lineNumber: number;
  readonly deliveryId: string;
  readonly consumableId: string;
  readonly presentationId: string;
  readonly locationId: string;
  readonly receivedOn: Day;
  readonly lotId: string;
  readonly lotNumber: string | null;
  readonly lotStatus: LotStatus;
  readonly expiresOn: Day | null;
  readonly packs: number;
  readonly packPrice: Money;
  readonly dispensing: Dispensing;
  readonly content: Quantity;
  readonly sample: boolean;
  readonly weight: Quantity;
  readonly orderLineId: string | null;
  readonly undone: boolean;
  readonly continuesId: string | null;
  readonly kit: KitState | null;
  /** Received, less what went back to the supplier's side by a reversal or a correction. */
  readonly net: Quantity;
}

export interface KitState {
  readonly lotId: string;
  readonly line: number;
  readonly share: bigint;
  readonly packPrice: Money;
}

interface Row {
  readonly id: string;
  readonly line_number: number;
  readonly delivery_id: string;
  readonly consumable_id: string;
  readonly presentation_id: string;
  readonly location_id: string;
  readonly received_on: string;
  readonly lot_id: string;
  readonly lot_status: LotStatus;
  readonly lot_number: string | null;
  readonly expires_on: string | null;
  readonly packs: number;
  readonly pack_price: string;
  readonly dispensing: Dispensing;
  readonly content_per_container: string;
  readonly sample: boolean;
  readonly weight_grams: string | null;
  readonly order_line_id: string | null;
  readonly undone: boolean;
  readonly continues_layer_id: string | null;
  readonly kit_lot_id: string | null;
  readonly kit_line: number | null;
  readonly kit_share: string | null;
  readonly kit_pack_price: string | null;
  readonly received: string;
  readonly landed_cost: string;
  readonly out_quantity: string;
  readonly out_cost: string;
  readonly back: string;
}

const COLUMNS = `
SELECT l.id, l.line_number, l.delivery_id, l.consumable_id, l.presentation_id, l.location_id,
  l.received_on, l.lot_id, l.lot_status, t.lot_number, l.expires_on, l.packs, l.pack_price, l.dispensing, l.content_per_container,
  l.sample, l.weight_grams, l.order_line_id, l.undone, l.continues_layer_id, l.kit_lot_id,
  l.kit_line, l.kit_share, l.kit_pack_price, l.received, l.landed_cost, l.out_quantity, l.out_cost,
  b.quantity AS back
FROM layers l
JOIN lots t ON t.id = l.lot_id
CROSS JOIN LATERAL (
  SELECT coalesce(sum(quantity), 0) AS quantity FROM movements
  WHERE layer_id = l.id AND to_account = 'supplier') b`;

export interface LockedDelivery {
  readonly id: string;
  readonly supplierId: string;
  readonly receivedOn: Day;
  readonly spreadKey: SpreadKey;
  readonly goodsTotal: Money;
  readonly landedTotal: Money;
  readonly freight: Money;
  readonly duty: Money;
  readonly discount: Money;
  readonly lines: readonly LineState[];
}

interface DeliveryRow {
  readonly supplier_id: string;
  readonly received_on: string;
  readonly spread_key: SpreadKey;
  readonly goods_total: string;
  readonly landed_total: string;
  readonly freight: string;
  readonly duty: string;
  readonly discount: string;
  readonly reversed_at: Date | null;
}

/**
 * A delivery with its lines, to be changed: locks its consumables (and others, in the same statement),
 * then the delivery. Refuses one that was reversed.
 */
export async function lockDelivery(
  tx: Tx,
  id: string,
  otherConsumables: readonly string[] = [],
): Promise<LockedDelivery> {
  const brought = await tx.query<{ consumable_id: string }>(
    'SELECT DISTINCT consumable_id FROM layers WHERE delivery_id = $1',
    [id],
  );
  const locked = [...brought.map((row) => row.consumable_id), ...otherConsumables];
  await lockConsumables(tx, locked);
  const [row] = await tx.query<DeliveryRow>(
    `SELECT supplier_id, received_on, spread_key, goods_total, landed_total, freight, duty,
       discount, reversed_at
     FROM deliveries WHERE id = $1 FOR NO KEY UPDATE`,
    [id],
  );
  if (!row) throw refuse('not_found', 'There is no delivery with this id.');
  if (row.reversed_at) {
    throw refuseStock('already_reversed', 'This delivery was reversed: book it again instead.');
  }
  const lines = await tx.query<Row>(`${COLUMNS} WHERE l.delivery_id = $1 ORDER BY l.line_number`, [
    id,
  ]);
  // A correction may have brought another consumable while this waited: its stock is not locked.
  if (lines.some((line) => !locked.includes(line.consumable_id))) {
    throw new StartAgain('The delivery was corrected at the same moment');
  }
  return {
    id,
    supplierId: row.supplier_id,
    receivedOn: row.received_on,
    spreadKey: row.spread_key,
    goodsTotal: money(row.goods_total),
    landedTotal: money(row.landed_total),
    freight: money(row.freight),
    duty: money(row.duty),
    discount: money(row.discount),
    lines: lines.map(toLine),
  };
}

/** One line as it is now. */
export async function lineOfLayer(tx: Tx, layerId: string): Promise<LineState> {
  const [row] = await tx.query<Row>(`${COLUMNS} WHERE l.id = $1`, [layerId]);
  if (!row) throw new Error(`Layer ${layerId} is missing`);
  return toLine(row);
}

/** The number of the next line of a delivery that is locked. */
export async function nextLineNumber(tx: Tx, deliveryId: string): Promise<number> {
  const [row] = await tx.query<{ next: number }>(
    'SELECT max(line_number) + 1 AS next FROM layers WHERE delivery_id = $1',
    [deliveryId],
  );
  if (!row) throw new Error(`Delivery ${deliveryId} has no lines`);
  return row.next;
}

/** All lines of a lot of which something is left, in whichever delivery. The consumable is locked. */
export async function linesOfLot(tx: Tx, lotId: string): Promise<LineState[]> {
  const rows = await tx.query<Row>(
    `${COLUMNS} JOIN deliveries d ON d.id = l.delivery_id
     WHERE l.lot_id = $1 AND d.reversed_at IS NULL AND l.out_quantity < l.received
     ORDER BY l.id`,
    [lotId],
  );
  return rows.map(toLine);
}

function toLine(row: Row): LineState {
  const received = quantity(row.received);
  return {
    layerId: row.id,
    lineNumber: row.line_number,
    deliveryId: row.delivery_id,
    consumableId: row.consumable_id,
    presentationId: row.presentation_id,
    locationId: row.location_id,
    receivedOn: row.received_on,
    lotId: row.lot_id,
    lotStatus: row.lot_status,
    lotNumber: row.lot_number,
    expiresOn: row.expires_on,
    packs: row.packs,
    packPrice: money(row.pack_price),
    dispensing: row.dispensing,
    content: quantity(row.content_per_container),
    sample: row.sample,
    weight: quantity(row.weight_grams ?? '0'),
    orderLineId: row.order_line_id,
    undone: row.undone,
    continuesId: row.continues_layer_id,
    kit: kitOf(row),
    received,
    landedCost: money(row.landed_cost),
    outQuantity: quantity(row.out_quantity),
    outCost: money(row.out_cost),
    net: quantityFromMicro(received - quantity(row.back)),
  };
}

function kitOf(row: Row): KitState | null {
  const { kit_lot_id, kit_line, kit_share, kit_pack_price } = row;
  if (kit_lot_id === null || kit_line === null) return null;
  return {
    lotId: kit_lot_id,
    line: kit_line,
    share: quantity(kit_share ?? '0'),
    packPrice: money(kit_pack_price ?? '0'),
  };
}
