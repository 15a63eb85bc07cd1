import { formatMoney, formatQuantity, type Money, quantityFromMicro } from '#lib/measure';
import { newId, type Tx } from '#lib/platform';
import type { Day, LotStatus } from '../domain/candidate.js';
import type { LandedDelivery } from '../domain/land-delivery.js';
import type { PlannedLine } from '../domain/plan-lines.js';
import type { ReceiveDeliveryDto } from '../http/delivery.dto.js';

/** A planned line with all that makes it a layer. */
export interface DeliveryLineFacts extends PlannedLine {
  readonly layerId: string;
  readonly holdingId: string;
  readonly lineNumber: number;
  readonly lotId: string;
  readonly lotStatus: LotStatus;
  readonly landedCost: Money;
  /** The lot of its kit, and the line at which the kit begins. */
  readonly kitLotId: string | null;
  readonly kitLine: number | null;
  readonly correction?: LineCorrection;
}

/** The layer that a new one puts right: its goods go on in it, or it is replaced altogether. */
export interface LineCorrection {
  readonly continues: string | null;
  readonly replaces: string | null;
  readonly note: string;
}

export interface NewDelivery {
  readonly id: string;
  readonly receivedOn: Day;
  readonly command: ReceiveDeliveryDto;
  readonly landed: LandedDelivery;
  readonly lines: readonly DeliveryLineFacts[];
}

const INSERT_DELIVERY = `
INSERT INTO deliveries (id, practice_id, supplier_id, received_on, reference, freight, duty, discount,
  spread_key, goods_total, landed_total, recorded_by)
VALUES ($1, current_practice(), $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)`;

const INSERT_FAULTS = `
INSERT INTO delivery_faults (id, practice_id, delivery_id, position, order_line_id, presentation_id,
  kind, packs, lot_number, note)
SELECT r.id, current_practice(), $2, r.position, r.order_line_id, r.presentation_id, r.kind, r.packs,
  r.lot_number, r.note
FROM json_to_recordset($1::json) AS r(id uuid, position int, order_line_id uuid,
  presentation_id uuid, kind text, packs int, lot_number text, note text)`;

export async function insertDelivery(tx: Tx, personId: string, d: NewDelivery): Promise<void> {
  const { command } = d;
  await tx.query(INSERT_DELIVERY, [
    d.id,
    command.supplierId,
    d.receivedOn,
    command.reference ?? null,
    command.freight ?? '0',
    command.duty ?? '0',
    command.discount ?? '0',
    command.spreadKey ?? 'value',
    formatMoney(d.landed.goodsTotal),
    formatMoney(d.landed.landedTotal),
    personId,
  ]);
  await insertLayers(tx, d.id, d.receivedOn, d.lines);
  const faults = (command.faults ?? []).map((fault, i) => ({
    id: newId(),
    position: i + 1,
    order_line_id: fault.orderLineId ?? null,
    presentation_id: fault.presentationId,
    kind: fault.kind,
    packs: fault.packs,
    lot_number: fault.lotNumber?.trim() ?? null,
    note: fault.note?.trim() ?? null,
  }));
  if (faults.length > 0) await tx.query(INSERT_FAULTS, [JSON.stringify(faults), d.id]);
}

const INSERT_LAYERS = `
INSERT INTO layers (id, practice_id, delivery_id, line_number, lot_id, consumable_id,
  presentation_id, location_id, packs, pack_price, dispensing, content_per_container,
  received_on, expires_on, lot_status, received, landed_cost, order_line_id, sample, weight_grams,
  kit_lot_id, kit_line, kit_share, kit_pack_price, continues_layer_id, replaces_layer_id,
  correction_note)
SELECT r.id, current_practice(), $2, r.line_number, r.lot_id, r.consumable_id,
  r.presentation_id, r.location_id, r.packs, r.pack_price, r.dispensing, r.content,
  $3, r.expires_on, r.lot_status, r.received, r.landed_cost, r.order_line_id, r.sample,
  r.weight_grams, r.kit_lot_id, r.kit_line, r.kit_share, r.kit_pack_price, r.continues,
  r.replaces, r.note
FROM json_to_recordset($1::json) AS r(id uuid, line_number int, lot_id uuid,
  consumable_id uuid, presentation_id uuid, location_id uuid, packs int, pack_price numeric,
  dispensing text, content numeric, expires_on date, lot_status text, received numeric,
  landed_cost numeric, order_line_id uuid, sample boolean, weight_grams numeric,
  kit_lot_id uuid, kit_line int, kit_share numeric, kit_pack_price numeric,
  continues uuid, replaces uuid, note text)`;

export async function insertLayers(
  tx: Tx,
  deliveryId: string,
  receivedOn: Day,
  lines: readonly DeliveryLineFacts[],
): Promise<void> {
  if (lines.length === 0) return;
  await tx.query(INSERT_LAYERS, [JSON.stringify(lines.map(layerJson)), deliveryId, receivedOn]);
}

function layerJson(line: DeliveryLineFacts): object {
  return {
    id: line.layerId,
    line_number: line.lineNumber,
    lot_id: line.lotId,
    consumable_id: line.consumableId,
    presentation_id: line.presentationId,
    location_id: line.locationId,
    packs: line.packs,
    pack_price: formatMoney(line.packPrice),
    dispensing: line.dispensing,
    content: formatQuantity(line.contentPerContainer),
    expires_on: line.expiresOn,
    lot_status: line.lotStatus,
    received: formatQuantity(line.quantity),
    landed_cost: formatMoney(line.landedCost),
    order_line_id: line.orderLineId,
    sample: line.sample,
    weight_grams: line.weight === 0n ? null : formatQuantity(line.weight),
    kit_lot_id: line.kitLotId,
    kit_line: line.kitLine,
    kit_share: line.kit === null ? null : formatQuantity(quantityFromMicro(line.kit.share)),
    kit_pack_price: line.kit === null ? null : formatMoney(line.kit.packPrice),
    continues: line.correction?.continues ?? null,
    replaces: line.correction?.replaces ?? null,
    note: line.correction?.note ?? null,
  };
}
