import type { IsoDate, Tx } from '#lib/platform';
import { microOf } from '#lib/stock';
import { OUTSTANDING } from '../db/orders/arrived.js';
import { epochDay } from '../domain/forecast/calendar.js';
import type { Outstanding } from '../domain/planning/plan-item.js';
import type { SentOrder } from '../domain/planning/supplier-lead.js';

const ON_ITS_WAY = `
SELECT consumable_id, supplier_id, presentation_id, ordered_on::text AS ordered_on,
       expected_on::text AS expected_on, (packs * pack_content)::text AS quantity
FROM (${OUTSTANDING}) waiting ORDER BY expected_on, line_id`;

interface WaitingRow {
  readonly consumable_id: string;
  readonly supplier_id: string;
  readonly presentation_id: string;
  readonly ordered_on: IsoDate;
  readonly expected_on: IsoDate;
  readonly quantity: string;
}

/** What sent orders still have to bring, by consumable. */
export async function loadOutstanding(tx: Tx): Promise<ReadonlyMap<string, Outstanding[]>> {
  const found = new Map<string, Outstanding[]>();
  for (const row of await tx.query<WaitingRow>(ON_ITS_WAY, [tx.practiceId])) {
    const order = {
      supplierId: row.supplier_id,
      presentationId: row.presentation_id,
      quantity: microOf(row.quantity),
      orderedOn: epochDay(row.ordered_on),
      expectedOn: epochDay(row.expected_on),
    };
    const list = found.get(row.consumable_id);
    if (list) list.push(order);
    else found.set(row.consumable_id, [order]);
  }
  return found;
}

/** Older orders say little about how a supplier delivers now. */
const LONGEST_RECORD_DAYS = 731;

// What was cancelled was not ordered; a delivery of a day before the order counts on the order's day.
const SENT = `
SELECT o.supplier_id, o.ordered_on::text AS ordered_on, o.state = 'closed' AS closed,
       json_agg(json_build_object(
         'ordered', ((ol.packs - ol.cancelled_packs) * p.containers_per_pack
                     * p.content_per_container)::text,
         'parts', came.parts) ORDER BY ol.line_number) AS lines
FROM orders o
JOIN order_lines ol ON ol.order_id = o.id
JOIN presentations p ON p.id = ol.presentation_id
CROSS JOIN LATERAL (
  SELECT coalesce(json_agg(json_build_object('day', greatest(l.received_on, o.ordered_on)::text,
                    'quantity', l.received::text) ORDER BY l.received_on, l.id), '[]') AS parts
  FROM layers l JOIN deliveries d ON d.id = l.delivery_id
  WHERE l.order_line_id = ol.id AND d.reversed_at IS NULL AND l.received_on <= $2::date
) came
WHERE o.practice_id = $1 AND o.state IN ('sent', 'closed') AND ol.packs > ol.cancelled_packs
  AND o.ordered_on BETWEEN $2::date - $3::integer AND $2::date
GROUP BY o.id ORDER BY o.ordered_on, o.id`;

interface SentRow {
  readonly supplier_id: string;
  readonly ordered_on: IsoDate;
  readonly closed: boolean;
  readonly lines: readonly {
    readonly ordered: string;
    readonly parts: readonly { readonly day: IsoDate; readonly quantity: string }[];
  }[];
}

/** The orders of the last two years with what came of each line and when, by supplier. */
export async function loadSentOrders(
  tx: Tx,
  today: IsoDate,
): Promise<ReadonlyMap<string, SentOrder[]>> {
  const found = new Map<string, SentOrder[]>();
  const rows = await tx.query<SentRow>(SENT, [tx.practiceId, today, LONGEST_RECORD_DAYS]);
  for (const row of rows) {
    const order = {
      orderedOn: epochDay(row.ordered_on),
      closed: row.closed,
      lines: row.lines.map(({ ordered, parts }) => ({
        ordered: microOf(ordered),
        parts: parts.map((part) => ({ day: epochDay(part.day), quantity: microOf(part.quantity) })),
      })),
    };
    const list = found.get(row.supplier_id);
    if (list) list.push(order);
    else found.set(row.supplier_id, [order]);
  }
  return found;
}
