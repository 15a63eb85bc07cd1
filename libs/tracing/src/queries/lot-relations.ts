import type { Tx } from '#lib/platform';
import { CONSUMABLE_COLUMNS, type ConsumableColumns, quantityText, toConsumable } from '#lib/stock';
import type { DamagedPacksDto, KitOfLotDto, LotCorrectionDto } from '../http/lot-relations.dto.js';

const KITS = `
SELECT k.id AS kit_lot_id, k.lot_number AS kit_number, k.expires_on::text, k.status,
       q.name AS presentation_name, t.id AS lot_id, t.lot_number, t.status AS lot_status,
       ${CONSUMABLE_COLUMNS}
FROM kit_lots k
JOIN presentations q ON q.id = k.presentation_id
JOIN (SELECT DISTINCT l.kit_lot_id, l.lot_id FROM layers l
      JOIN deliveries d ON d.id = l.delivery_id WHERE d.reversed_at IS NULL) m
  ON m.kit_lot_id = k.id
JOIN lots t ON t.id = m.lot_id
JOIN consumables c ON c.id = t.consumable_id
WHERE k.practice_id = $1 AND k.id IN (SELECT kit_lot_id FROM layers WHERE lot_id = $2)
ORDER BY k.id, c.name, t.id`;

interface KitRow extends ConsumableColumns {
  readonly kit_lot_id: string;
  readonly kit_number: string | null;
  readonly expires_on: string | null;
  readonly status: string;
  readonly presentation_name: string;
  readonly lot_id: string;
  readonly lot_number: string | null;
  readonly lot_status: string;
}

/** The kits in which a lot came, each with the lots of all its parts. */
export async function kitsOfLot(tx: Tx, lotId: string): Promise<KitOfLotDto[]> {
  const rows = await tx.query<KitRow>(KITS, [tx.practiceId, lotId]);
  const kits = new Map<string, KitOfLotDto>();
  for (const row of rows) {
    const kit = kits.get(row.kit_lot_id) ?? {
      kitLotId: row.kit_lot_id,
      lotNumber: row.kit_number,
      labelExpiry: row.expires_on,
      status: row.status,
      presentationName: row.presentation_name,
      parts: [],
    };
    kits.set(row.kit_lot_id, kit);
    kit.parts.push({
      lotId: row.lot_id,
      lotNumber: row.lot_number,
      status: row.lot_status,
      consumable: toConsumable(row),
    });
  }
  return [...kits.values()];
}

const DAMAGED = `
SELECT f.delivery_id, d.received_on, s.name AS supplier_name, q.name AS presentation_name, f.packs,
       f.lot_number, f.note, ${CONSUMABLE_COLUMNS}
FROM delivery_faults f
JOIN deliveries d ON d.id = f.delivery_id
JOIN suppliers s ON s.id = d.supplier_id
JOIN presentations q ON q.id = f.presentation_id
JOIN consumables c ON c.id = q.consumable_id
WHERE f.practice_id = $1 AND lower(f.lot_number) = lower($2) AND d.reversed_at IS NULL
ORDER BY d.received_on, f.id`;

interface DamagedRow extends ConsumableColumns {
  readonly delivery_id: string;
  readonly received_on: string;
  readonly supplier_name: string;
  readonly presentation_name: string;
  readonly packs: number;
  readonly lot_number: string;
  readonly note: string | null;
}

/** Packs of a lot number that came damaged and never became stock. */
export async function damagedPacks(tx: Tx, lotNumber: string): Promise<DamagedPacksDto[]> {
  const rows = await tx.query<DamagedRow>(DAMAGED, [tx.practiceId, lotNumber]);
  return rows.map((row) => ({
    deliveryId: row.delivery_id,
    receivedOn: row.received_on,
    supplierName: row.supplier_name,
    presentationName: row.presentation_name,
    consumable: toConsumable(row),
    packs: row.packs,
    lotNumber: row.lot_number,
    note: row.note,
  }));
}

// What came back later follows in lines of its own; the first one says it all.
const FIRST = `NOT EXISTS (SELECT FROM layers e WHERE e.continues_layer_id = o.id
  AND e.lot_id = n.lot_id AND e.line_number < n.line_number)`;

// Both ways: goods of this lot that were booked under another number first, and the other way round.
const CORRECTIONS = `
SELECT 'was booked as' AS way, o.lot_id, t.lot_number, n.correction_note AS note,
       n.delivery_id, n.line_number, o.out_quantity - b.quantity AS left_before
FROM layers n JOIN layers o ON o.id = n.continues_layer_id JOIN lots t ON t.id = o.lot_id
CROSS JOIN LATERAL (SELECT coalesce(sum(quantity), 0) AS quantity FROM movements
  WHERE layer_id = o.id AND to_account = 'supplier') b
WHERE n.practice_id = $1 AND n.lot_id = $2 AND o.lot_id <> n.lot_id AND ${FIRST}
UNION ALL
SELECT 'goes on as', n.lot_id, t.lot_number, n.correction_note, n.delivery_id, n.line_number,
       o.out_quantity - b.quantity
FROM layers o JOIN layers n ON n.continues_layer_id = o.id JOIN lots t ON t.id = n.lot_id
CROSS JOIN LATERAL (SELECT coalesce(sum(quantity), 0) AS quantity FROM movements
  WHERE layer_id = o.id AND to_account = 'supplier') b
WHERE o.practice_id = $1 AND o.lot_id = $2 AND o.lot_id <> n.lot_id AND ${FIRST}
ORDER BY delivery_id, line_number`;

interface CorrectionRow {
  readonly way: string;
  readonly lot_id: string;
  readonly lot_number: string | null;
  readonly note: string;
  readonly delivery_id: string;
  readonly line_number: number;
  readonly left_before: string;
}

/** Lots under which the same goods were, or are: what was used there may be of this one. */
export async function correctionsOfLot(tx: Tx, lotId: string): Promise<LotCorrectionDto[]> {
  const rows = await tx.query<CorrectionRow>(CORRECTIONS, [tx.practiceId, lotId]);
  return rows.map((row) => ({
    way: row.way,
    lotId: row.lot_id,
    lotNumber: row.lot_number,
    note: row.note,
    deliveryId: row.delivery_id,
    lineNumber: row.line_number,
    leftUnderWrongLot: quantityText(row.left_before),
  }));
}
