import { Injectable } from '@nestjs/common';
import { type Actor, refuse, type Tx } from '#lib/platform';
import type { DeliveryDto, DeliveryLineDto, DeliverySummaryDto } from '../http/stock-reads.dto.js';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  LOT_COLUMNS,
  type LotColumns,
  toConsumable,
  toLot,
  toPlace,
} from './consumable-ref.js';
import { readFaults, readInvoices } from './delivery-parts.js';
import { instantText, moneyText, quantityText } from './wire.js';

export interface DeliveryRow {
  readonly id: string;
  readonly supplier_id: string;
  readonly supplier_name: string;
  readonly received_on: string;
  readonly reference: string | null;
  readonly goods_total: string;
  readonly freight: string;
  readonly duty: string;
  readonly discount: string;
  readonly landed_total: string;
  readonly line_count: number;
  readonly reversed_at: Date | null;
}

interface FullDeliveryRow extends DeliveryRow {
  readonly spread_key: string;
  readonly reversal_note: string | null;
  readonly recorded_by: string;
  readonly recorded_by_name: string;
  readonly recorded_at: Date;
}

interface LineRow extends ConsumableColumns, LotColumns {
  readonly layer_id: string;
  readonly line_number: number;
  readonly presentation_id: string;
  readonly presentation_name: string;
  readonly location_id: string;
  readonly location_name: string;
  readonly packs: number;
  readonly pack_price: string;
  readonly received: string;
  readonly landed_cost: string;
  readonly remaining: string;
  readonly remaining_value: string;
  readonly order_line_id: string | null;
  readonly sample: boolean;
  readonly weight_grams: string | null;
  readonly kit_lot_id: string | null;
  readonly kit_lot_number: string | null;
  readonly kit_line: number | null;
  readonly kit_pack_price: string | null;
  readonly undone: boolean;
  readonly continues_line: number | null;
  readonly replaces_line: number | null;
  readonly correction_note: string | null;
}

export const DELIVERY_COLUMNS = `d.id, d.supplier_id, s.name AS supplier_name, d.received_on,
  d.reference, d.goods_total, d.freight, d.duty, d.discount, d.landed_total, d.reversed_at,
  (SELECT count(*)::int FROM layers n WHERE n.delivery_id = d.id) AS line_count`;

const DELIVERY = `
SELECT ${DELIVERY_COLUMNS}, d.spread_key, d.reversal_note, d.recorded_at, d.recorded_by,
       p.display_name AS recorded_by_name
FROM deliveries d
JOIN suppliers s ON s.id = d.supplier_id
JOIN people p ON p.id = d.recorded_by
WHERE d.practice_id = $1 AND d.id = $2`;

const LINES = `
SELECT l.id AS layer_id, l.line_number, l.presentation_id, q.name AS presentation_name,
       l.location_id, o.name AS location_name, l.packs, l.pack_price, l.received, l.landed_cost,
       l.received - l.out_quantity AS remaining, l.landed_cost - l.out_cost AS remaining_value,
       l.order_line_id, l.sample, l.weight_grams, l.kit_lot_id, k.lot_number AS kit_lot_number,
       l.kit_line, l.kit_pack_price, l.undone, l.correction_note,
       (SELECT o.line_number FROM layers o WHERE o.id = l.continues_layer_id) AS continues_line,
       (SELECT o.line_number FROM layers o WHERE o.id = l.replaces_layer_id) AS replaces_line,
       ${CONSUMABLE_COLUMNS}, ${LOT_COLUMNS}
FROM layers l
JOIN consumables c ON c.id = l.consumable_id
JOIN lots t ON t.id = l.lot_id
JOIN presentations q ON q.id = l.presentation_id
JOIN locations o ON o.id = l.location_id
LEFT JOIN kit_lots k ON k.id = l.kit_lot_id
WHERE l.practice_id = $1 AND l.delivery_id = $2
ORDER BY l.line_number`;

/** One delivery with its lines, inside the transaction of whoever asks. */
@Injectable()
export class DeliveryReader {
  async get(tx: Tx, actor: Actor, id: string): Promise<DeliveryDto> {
    const [row] = await tx.query<FullDeliveryRow>(DELIVERY, [actor.practiceId, id]);
    if (!row) throw refuse('not_found', 'There is no delivery with this id.');
    const lines = await tx.query<LineRow>(LINES, [actor.practiceId, id]);
    return {
      ...toSummary(row),
      spreadKey: row.spread_key,
      recordedBy: { id: row.recorded_by, name: row.recorded_by_name },
      recordedAt: instantText(row.recorded_at),
      reversedAt: row.reversed_at === null ? null : instantText(row.reversed_at),
      reversalNote: row.reversal_note,
      lines: lines.map(toLine),
      faults: await readFaults(tx, id),
      invoices: await readInvoices(tx, id),
    };
  }
}

export function toSummary(row: DeliveryRow): DeliverySummaryDto {
  return {
    id: row.id,
    supplier: { id: row.supplier_id, name: row.supplier_name },
    receivedOn: row.received_on,
    reference: row.reference,
    goodsTotal: moneyText(row.goods_total),
    freight: moneyText(row.freight),
    duty: moneyText(row.duty),
    discount: moneyText(row.discount),
    landedTotal: moneyText(row.landed_total),
    lineCount: row.line_count,
    reversed: row.reversed_at !== null,
  };
}

function toLine(row: LineRow): DeliveryLineDto {
  return {
    layerId: row.layer_id,
    lineNumber: row.line_number,
    consumable: toConsumable(row),
    presentationId: row.presentation_id,
    presentationName: row.presentation_name,
    lot: toLot(row),
    location: toPlace(row.location_id, row.location_name),
    packs: row.packs,
    packPrice: moneyText(row.pack_price),
    quantity: quantityText(row.received),
    landedCost: moneyText(row.landed_cost),
    remaining: quantityText(row.remaining),
    remainingValue: moneyText(row.remaining_value),
    orderLineId: row.order_line_id,
    sample: row.sample,
    weightGrams: row.weight_grams === null ? null : quantityText(row.weight_grams),
    kit: kitOf(row),
    undone: row.undone,
    continuesLine: row.continues_line,
    replacesLine: row.replaces_line,
    correctionNote: row.correction_note,
  };
}

function kitOf(row: LineRow): DeliveryLineDto['kit'] {
  if (row.kit_lot_id === null || row.kit_line === null || row.kit_pack_price === null) return null;
  return {
    kitLotId: row.kit_lot_id,
    lotNumber: row.kit_lot_number,
    firstLine: row.kit_line,
    packPrice: moneyText(row.kit_pack_price),
  };
}
