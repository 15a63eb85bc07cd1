import type { Tx } from '#lib/platform';
import { CONSUMABLE_COLUMNS, type ConsumableColumns, quantityText, toConsumable } from '#lib/stock';
import type { TracedShortfallDto } from '../http/trace.dto.js';

const SHORTFALLS = `
SELECT f.id, f.visit_id, f.used_on, f.quantity,
       CASE WHEN f.cancelled_at IS NULL THEN f.quantity - f.settled ELSE 0 END AS open,
       t.id AS lot_id, t.lot_number, t.expires_on AS lot_expires_on, t.status AS lot_status,
       ${CONSUMABLE_COLUMNS}
FROM shortfalls f
JOIN consumables c ON c.id = f.consumable_id
LEFT JOIN lots t ON t.id = f.lot_id
WHERE f.practice_id = $1 AND ($2::uuid[] IS NULL OR f.visit_id = ANY($2))
  AND ($3::uuid IS NULL OR f.lot_id = $3)
ORDER BY f.used_on, f.id`;

interface ShortfallRow extends ConsumableColumns {
  readonly id: string;
  readonly visit_id: string;
  readonly used_on: string;
  readonly quantity: string;
  readonly open: string;
  readonly lot_id: string | null;
  readonly lot_number: string | null;
  readonly lot_expires_on: string | null;
  readonly lot_status: string | null;
}

interface Which {
  readonly visitIds: readonly string[] | null;
  readonly lotId: string | null;
}

/** Usage that the book had no stock for: of some visits, of one scanned lot, or both. */
export async function loadShortfalls(
  tx: Tx,
  practiceId: string,
  which: Which,
): Promise<TracedShortfallDto[]> {
  const values = [practiceId, which.visitIds, which.lotId];
  return (await tx.query<ShortfallRow>(SHORTFALLS, values)).map((row) => ({
    id: row.id,
    visitId: row.visit_id,
    usedOn: row.used_on,
    consumable: toConsumable(row),
    lot:
      row.lot_id === null
        ? null
        : {
            id: row.lot_id,
            lotNumber: row.lot_number,
            labelExpiry: row.lot_expires_on,
            status: row.lot_status ?? 'released',
          },
    open: quantityText(row.open),
    quantity: quantityText(row.quantity),
  }));
}
