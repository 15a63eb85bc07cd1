import { formatMoney, formatQuantity, type Money, type Quantity } from '#lib/measure';
import { newId, type Tx } from '#lib/platform';
import type { Day, Dispensing, LotStatus } from '../domain/candidate.js';
import type { LandedDelivery } from '../domain/land-delivery.js';
import type { ReceiveDeliveryDto } from '../http/stock.dto.js';
import { refuseStock } from '../stock.refusals.js';

export interface LotInput {
  readonly consumableId: string;
  readonly lotNumber: string | null;
  readonly expiresOn: Day | null;
}

export interface LotRow {
  readonly id: string;
  readonly status: LotStatus;
}

export interface DeliveryLineFacts {
  readonly layerId: string;
  readonly holdingId: string;
  readonly lineNumber: number;
  readonly lotId: string;
  readonly lotStatus: LotStatus;
  readonly consumableId: string;
  readonly presentationId: string;
  readonly locationId: string;
  readonly packs: number;
  readonly packPrice: Money;
  readonly dispensing: Dispensing;
  readonly content: Quantity;
  readonly expiresOn: Day | null;
  readonly quantity: Quantity;
  readonly landedCost: Money;
}

const UPSERT = `
INSERT INTO lots (id, practice_id, consumable_id, lot_number, expires_on)
SELECT DISTINCT ON (r.consumable_id, r.lot_number)
       r.id, current_practice(), r.consumable_id, r.lot_number, r.expires_on
FROM json_to_recordset($1::json) AS r(id uuid, consumable_id uuid, lot_number text, expires_on date)
ORDER BY r.consumable_id, r.lot_number, r.id
ON CONFLICT (practice_id, consumable_id, lot_number) WHERE lot_number IS NOT NULL
DO UPDATE SET expires_on = CASE WHEN EXISTS (
    SELECT FROM layers l JOIN deliveries d ON d.id = l.delivery_id
    WHERE l.lot_id = lots.id AND d.reversed_at IS NULL)
  THEN lots.expires_on ELSE excluded.expires_on END
RETURNING id, consumable_id, lot_number, expires_on::text, status`;

interface UpsertedRow extends LotRow {
  readonly consumable_id: string;
  readonly lot_number: string;
  readonly expires_on: Day | null;
}

/**
 * The lot of each line: the recorded one where this product has a lot of that number, a new one
 * otherwise. A line without a number gets a lot of its own, never an invented number. An expiry that was
 * typed wrongly is put right once the delivery it came with was reversed. The consumables are locked,
 * so that a hold placed meanwhile on a lot is either seen here or waits.
 */
export async function insertLots(tx: Tx, lines: readonly LotInput[]): Promise<LotRow[]> {
  const numbered = lines.filter((line) => line.lotNumber !== null);
  const rows = await tx.query<UpsertedRow>(UPSERT, [JSON.stringify(numbered.map(lotJson))]);
  const byKey = new Map(rows.map((row) => [`${row.consumable_id}/${row.lot_number}`, row]));
  const result: LotRow[] = [];
  const unnumbered: object[] = [];
  lines.forEach((line, i) => {
    if (line.lotNumber === null) {
      const fresh = lotJson(line);
      unnumbered.push(fresh);
      result.push({ id: fresh.id, status: 'released' });
      return;
    }
    const row = byKey.get(`${line.consumableId}/${line.lotNumber}`);
    if (!row) throw new Error('A lot just written is missing');
    if (row.expires_on !== line.expiresOn) throw wrongExpiry(i, line, row.expires_on);
    result.push({ id: row.id, status: row.status });
  });
  if (unnumbered.length > 0) {
    await tx.query(
      `INSERT INTO lots (id, practice_id, consumable_id, lot_number, expires_on)
       SELECT r.id, current_practice(), r.consumable_id, NULL, r.expires_on
       FROM json_to_recordset($1::json) AS r(id uuid, consumable_id uuid, expires_on date)`,
      [JSON.stringify(unnumbered)],
    );
  }
  return result;
}

function lotJson(line: LotInput) {
  return {
    id: newId(),
    consumable_id: line.consumableId,
    lot_number: line.lotNumber,
    expires_on: line.expiresOn,
  };
}

function wrongExpiry(index: number, line: LotInput, recorded: Day | null) {
  const known = recorded ?? 'no expiry date';
  return refuseStock(
    'wrong_expiry',
    `Lot ${line.lotNumber} of this product is recorded with ${known}, not ${line.expiresOn ?? 'none'}. Check the label.`,
    [{ field: `lines[${index}].expiresOn`, message: `differs from the recorded ${known}` }],
  );
}

export interface NewDelivery {
  readonly id: string;
  readonly receivedOn: Day;
  readonly command: ReceiveDeliveryDto;
  readonly landed: LandedDelivery;
  readonly lines: readonly DeliveryLineFacts[];
}

export async function insertDelivery(tx: Tx, personId: string, d: NewDelivery): Promise<void> {
  const { command } = d;
  await tx.query(
    `INSERT INTO deliveries (id, practice_id, supplier_id, received_on, reference, freight, discount,
       spread_key, goods_total, landed_total, recorded_by)
     VALUES ($1, current_practice(), $2, $3, $4, $5, $6, $7, $8, $9, $10)`,
    [
      d.id,
      command.supplierId,
      d.receivedOn,
      command.reference ?? null,
      command.freight ?? '0',
      command.discount ?? '0',
      command.spreadKey ?? 'value',
      formatMoney(d.landed.goodsTotal),
      formatMoney(d.landed.landedTotal),
      personId,
    ],
  );
  await tx.query(
    `INSERT INTO layers (id, practice_id, delivery_id, line_number, lot_id, consumable_id,
       presentation_id, location_id, packs, pack_price, dispensing, content_per_container,
       received_on, expires_on, lot_status, received, landed_cost)
     SELECT r.id, current_practice(), $2, r.line_number, r.lot_id, r.consumable_id,
       r.presentation_id, r.location_id, r.packs, r.pack_price, r.dispensing, r.content,
       $3, r.expires_on, r.lot_status, r.received, r.landed_cost
     FROM json_to_recordset($1::json) AS r(id uuid, line_number int, lot_id uuid,
       consumable_id uuid, presentation_id uuid, location_id uuid, packs int, pack_price numeric,
       dispensing text, content numeric, expires_on date, lot_status text, received numeric,
       landed_cost numeric)`,
    [JSON.stringify(d.lines.map(layerJson)), d.id, d.receivedOn],
  );
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
    content: formatQuantity(line.content),
    expires_on: line.expiresOn,
    lot_status: line.lotStatus,
    received: formatQuantity(line.quantity),
    landed_cost: formatMoney(line.landedCost),
  };
}
