import { formatMoney, formatQuantity, type Money, type Quantity } from '#lib/measure';
import type { Tx } from '#lib/platform';
import type { Day, LotStatus } from '../domain/candidate.js';

export interface OpeningDelivery {
  readonly id: string;
  readonly supplierId: string;
  readonly receivedOn: Day;
  readonly total: Money;
}

export interface OpeningLayer {
  readonly id: string;
  readonly deliveryId: string;
  readonly lineNumber: number;
  readonly lotId: string;
  readonly lotStatus: LotStatus;
  readonly presentationId: string;
  readonly locationId: string;
  readonly packs: number;
  readonly packPrice: Money;
  readonly receivedOn: Day;
  readonly expiresOn: Day | null;
  readonly quantity: Quantity;
  readonly value: Money;
}

/** Writes whole deliveries of opening stock; what is in the packs is taken from the catalogue. */
export async function insertOpeningDeliveries(
  tx: Tx,
  by: { readonly personId: string; readonly reference: string },
  deliveries: readonly OpeningDelivery[],
): Promise<void> {
  const rows = deliveries.map((d) => ({ ...d, total: formatMoney(d.total) }));
  await tx.query(
    `INSERT INTO deliveries (id, practice_id, supplier_id, received_on, reference, goods_total,
       landed_total, recorded_by)
     SELECT r."id", current_practice(), r."supplierId", r."receivedOn", $2, r."total", r."total", $3
     FROM json_to_recordset($1::json) AS r("id" uuid, "supplierId" uuid, "receivedOn" date,
       "total" numeric)`,
    [JSON.stringify(rows), by.reference, by.personId],
  );
}

export async function insertOpeningLayers(tx: Tx, layers: readonly OpeningLayer[]): Promise<void> {
  const rows = layers.map((layer) => ({
    ...layer,
    packPrice: formatMoney(layer.packPrice),
    quantity: formatQuantity(layer.quantity),
    value: formatMoney(layer.value),
  }));
  await tx.query(
    `INSERT INTO layers (id, practice_id, delivery_id, line_number, lot_id, consumable_id,
       presentation_id, location_id, packs, pack_price, dispensing, content_per_container,
       received_on, expires_on, lot_status, received, landed_cost)
     SELECT r."id", current_practice(), r."deliveryId", r."lineNumber", r."lotId", t.consumable_id,
       p.id, r."locationId", r."packs", r."packPrice", coalesce(q.dispensing, p.dispensing),
       coalesce(q.content_per_container, p.content_per_container),
       r."receivedOn", r."expiresOn", r."lotStatus", r."quantity", r."value"
     FROM json_to_recordset($1::json) AS r("id" uuid, "deliveryId" uuid, "lineNumber" int,
       "lotId" uuid, "presentationId" uuid, "locationId" uuid, "packs" int, "packPrice" numeric,
       "receivedOn" date, "expiresOn" date, "lotStatus" text, "quantity" numeric, "value" numeric)
     JOIN presentations p ON p.id = r."presentationId"
     JOIN lots t ON t.id = r."lotId"
     LEFT JOIN presentation_parts q
       ON q.presentation_id = p.id AND q.consumable_id = t.consumable_id`,
    [JSON.stringify(rows)],
  );
}
