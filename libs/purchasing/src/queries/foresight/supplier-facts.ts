import type { IsoDate, Tx } from '#lib/platform';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  microOf,
  type StockConsumableDto,
  toConsumable,
} from '#lib/stock';
import { epochDay } from '../../domain/forecast/calendar.js';
import type { PackOffer } from '../../domain/foresight/compare-prices.js';
import type { OrderOutcome } from '../../domain/foresight/supplier-record.js';

export interface SupplierTotals {
  readonly id: string;
  readonly name: string;
  readonly active: boolean;
  readonly deliveries: number;
  readonly spend: bigint;
  readonly packs: number;
  readonly damaged: number;
  readonly missing: number;
}

// $2 today, $3 the first day of the twelve months.
const TOTALS = `
WITH year AS MATERIALIZED (
  SELECT id, supplier_id, landed_total FROM deliveries
  WHERE practice_id = $1 AND reversed_at IS NULL AND received_on BETWEEN $3::date AND $2::date
), spent AS (
  SELECT supplier_id, count(*) AS n, sum(landed_total) AS total FROM year GROUP BY supplier_id
), packs AS (
  -- Not what never was, nor the same goods again under another lot; a kit is one pack.
  SELECT y.supplier_id, sum(l.packs) AS n FROM year y JOIN layers l ON l.delivery_id = y.id
  WHERE NOT l.undone AND l.continues_layer_id IS NULL
    AND coalesce(l.kit_line, l.line_number) = l.line_number
  GROUP BY y.supplier_id
), faults AS (
  SELECT y.supplier_id, sum(f.packs) FILTER (WHERE f.kind = 'damaged') AS damaged,
         sum(f.packs) FILTER (WHERE f.kind = 'missing') AS missing
  FROM year y JOIN delivery_faults f ON f.delivery_id = y.id GROUP BY y.supplier_id
)
SELECT s.id, s.name, s.active, coalesce(p.n, 0)::integer AS deliveries,
       coalesce(p.total, 0) AS spend, coalesce(k.n, 0)::integer AS packs,
       coalesce(f.damaged, 0)::integer AS damaged, coalesce(f.missing, 0)::integer AS missing
FROM suppliers s
LEFT JOIN spent p ON p.supplier_id = s.id
LEFT JOIN packs k ON k.supplier_id = s.id
LEFT JOIN faults f ON f.supplier_id = s.id
WHERE s.practice_id = $1 ORDER BY lower(s.name), s.id`;

type TotalsRow = Omit<SupplierTotals, 'spend'> & { readonly spend: string };

export async function loadSupplierTotals(
  tx: Tx,
  today: IsoDate,
  since: IsoDate,
): Promise<SupplierTotals[]> {
  const rows = await tx.query<TotalsRow>(TOTALS, [tx.practiceId, today, since]);
  return rows.map((row) => ({ ...row, spend: microOf(row.spend) }));
}

export interface SupplierOffer extends PackOffer {
  readonly consumable: StockConsumableDto;
  readonly presentation: string;
  readonly paidOn: IsoDate | null;
}

// What each supplier asks for each pack: the price last paid there, or its list price. Free samples
// say nothing about prices. $2 today, $3 a year ago.
const OFFERS = `
WITH paid AS MATERIALIZED (
  SELECT l.presentation_id, d.supplier_id, l.pack_price, l.received_on,
         row_number() OVER (PARTITION BY l.presentation_id, d.supplier_id
                            ORDER BY l.received_on DESC, l.id DESC) AS place,
         row_number() OVER (PARTITION BY l.presentation_id, d.supplier_id, l.received_on <= $3::date
                            ORDER BY l.received_on DESC, l.id DESC) AS place_then
  FROM layers l JOIN deliveries d ON d.id = l.delivery_id
  WHERE l.practice_id = $1 AND d.reversed_at IS NULL AND NOT l.sample AND NOT l.undone
    AND l.received_on <= $2::date
), pairs AS (
  SELECT presentation_id, supplier_id FROM paid
  UNION SELECT id, supplier_id FROM presentations
  WHERE practice_id = $1 AND supplier_id IS NOT NULL
)
SELECT ${CONSUMABLE_COLUMNS}, p.id AS presentation_id, p.name AS presentation,
       s.id AS supplier_id, n.received_on::text AS paid_on,
       p.containers_per_pack * p.content_per_container AS content,
       coalesce(n.pack_price, p.list_price) AS pack_price, o.pack_price AS year_ago
FROM pairs a
JOIN presentations p ON p.id = a.presentation_id AND p.active
JOIN consumables c ON c.id = p.consumable_id AND c.active
JOIN suppliers s ON s.id = a.supplier_id AND s.active
LEFT JOIN paid n ON n.presentation_id = p.id AND n.supplier_id = s.id AND n.place = 1
LEFT JOIN paid o ON o.presentation_id = p.id AND o.supplier_id = s.id AND o.place_then = 1
  AND o.received_on <= $3::date
WHERE coalesce(n.pack_price, CASE WHEN p.supplier_id = s.id THEN p.list_price END) IS NOT NULL
ORDER BY lower(c.name), c.id, p.id, s.id`;

interface OfferRow extends ConsumableColumns {
  readonly presentation_id: string;
  readonly presentation: string;
  readonly supplier_id: string;
  readonly paid_on: string | null;
  readonly content: string;
  readonly pack_price: string;
  readonly year_ago: string | null;
}

export async function loadOffers(
  tx: Tx,
  today: IsoDate,
  yearAgo: IsoDate,
): Promise<SupplierOffer[]> {
  const rows = await tx.query<OfferRow>(OFFERS, [tx.practiceId, today, yearAgo]);
  return rows.map((row) => ({
    supplierId: row.supplier_id,
    consumableId: row.consumable_id,
    consumable: toConsumable(row),
    presentationId: row.presentation_id,
    presentation: row.presentation,
    content: microOf(row.content),
    packPrice: microOf(row.pack_price),
    yearAgo: row.year_ago === null ? null : microOf(row.year_ago),
    paidOn: row.paid_on,
  }));
}

/** Older orders say little about how a supplier delivers today. */
const LONGEST_RECORD_DAYS = 1096;

const ORDERS = `
WITH sent AS MATERIALIZED (
  SELECT id, supplier_id, ordered_on, expected_on FROM orders
  WHERE practice_id = $1 AND ordered_on IS NOT NULL AND state IN ('sent', 'closed')
    AND ordered_on BETWEEN $2::date - $3::integer AND $2::date
), came AS (
  SELECT n.id AS line_id, json_agg(json_build_object('day', l.received_on::text,
           'packs', l.packs) ORDER BY l.received_on) AS parts
  FROM sent o JOIN order_lines n ON n.order_id = o.id
  JOIN layers l ON l.order_line_id = n.id
  JOIN deliveries d ON d.id = l.delivery_id
  WHERE d.reversed_at IS NULL AND l.received_on <= $2::date
  GROUP BY n.id
)
SELECT o.supplier_id, o.ordered_on::text AS ordered_on, o.expected_on::text AS expected_on,
       json_agg(json_build_object('packs', n.packs - n.cancelled_packs,
         'parts', coalesce(c.parts, '[]')) ORDER BY n.line_number) AS lines
FROM sent o JOIN order_lines n ON n.order_id = o.id
LEFT JOIN came c ON c.line_id = n.id
GROUP BY o.id, o.supplier_id, o.ordered_on, o.expected_on ORDER BY o.ordered_on, o.id`;

interface OrderRow {
  readonly supplier_id: string;
  readonly ordered_on: string;
  readonly expected_on: string | null;
  readonly lines: readonly {
    readonly packs: number;
    readonly parts: readonly { readonly day: string; readonly packs: number }[];
  }[];
}

/** What came of the orders that were sent, by supplier. */
export async function loadOrderOutcomes(
  tx: Tx,
  today: IsoDate,
): Promise<ReadonlyMap<string, readonly OrderOutcome[]>> {
  const parameters = [tx.practiceId, today, LONGEST_RECORD_DAYS];
  const found = new Map<string, OrderOutcome[]>();
  for (const row of await tx.query<OrderRow>(ORDERS, parameters)) {
    const order: OrderOutcome = {
      orderedOn: epochDay(row.ordered_on),
      expectedOn: row.expected_on === null ? null : epochDay(row.expected_on),
      lines: row.lines.map(({ packs, parts }) => ({
        packs,
        parts: parts.map((part) => ({ day: epochDay(part.day), packs: part.packs })),
      })),
    };
    const orders = found.get(row.supplier_id);
    if (orders) orders.push(order);
    else found.set(row.supplier_id, [order]);
  }
  return found;
}
