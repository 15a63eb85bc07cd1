import { daysBetween, type IsoDate, type Tx } from '#lib/platform';
import { CONSUMABLE_COLUMNS, type ConsumableColumns, toConsumable } from '#lib/stock';
import { OUTSTANDING } from '../../db/orders/arrived.js';
import { PLAIN_RULES } from '../../db/orders/order-rules.js';
import type { OverdueFacts } from '../../domain/orders/overdue-alert.js';

const OVERDUE = `
WITH late AS (
  SELECT w.*, row_number() OVER (PARTITION BY order_id ORDER BY line_id) AS place,
         count(*) OVER (PARTITION BY order_id)::int AS lines,
         sum(packs) OVER (PARTITION BY order_id)::int AS all_packs
  FROM (${OUTSTANDING}) w
  WHERE w.expected_on + coalesce((SELECT late_after_days FROM order_rules
    WHERE practice_id = $1), $3::smallint) < $2::date
)
SELECT l.order_id, l.number, l.ordered_on, l.expected_on, l.lines, l.all_packs,
       s.name AS supplier_name, ${CONSUMABLE_COLUMNS}
FROM late l
JOIN suppliers s ON s.id = l.supplier_id
JOIN consumables c ON c.id = l.consumable_id
WHERE l.place = 1 ORDER BY l.expected_on, l.number`;

interface OverdueRow extends ConsumableColumns {
  readonly order_id: string;
  readonly number: number;
  readonly ordered_on: string;
  readonly expected_on: string;
  readonly lines: number;
  readonly all_packs: number;
  readonly supplier_name: string;
}

/** Orders whose goods are late by more than the practice's days of grace. */
export async function loadOverdue(tx: Tx, today: IsoDate): Promise<OverdueFacts[]> {
  const rows = await tx.query<OverdueRow>(OVERDUE, [
    ...[tx.practiceId, today, PLAIN_RULES.lateAfterDays],
  ]);
  return rows.map((row) => ({
    orderId: row.order_id,
    number: row.number,
    supplier: row.supplier_name,
    orderedOn: row.ordered_on,
    expectedOn: row.expected_on,
    daysLate: daysBetween(row.expected_on, today),
    consumable: toConsumable(row),
    outstandingLines: row.lines,
    outstandingPacks: row.all_packs,
  }));
}
