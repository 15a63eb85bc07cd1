import { daysBetween, type IsoDate, type Tx } from '#lib/platform';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  HOLDING_FACTS,
  type HoldingRow,
  microOf,
  quantityText,
  toConsumable,
  toLot,
  toPlace,
} from '#lib/stock';
import { LEVEL_JSON, type LevelJson, toLevel } from '../db/computed-levels.js';
import { OUTSTANDING } from '../db/orders/arrived.js';
import type { SupplyFacts } from '../domain/reorder-alert.js';
import type { ShortfallFacts } from '../domain/shortfall-alert.js';
import type { ShelfFacts } from '../domain/stock-alerts.js';
import type { Offer } from '../domain/suggest-order.js';

const ON_SHELF = `
WITH facts AS (${HOLDING_FACTS}
  AND (l.lot_status <> 'released' OR least(l.expires_on, h.use_by) <= $2::date + $3::integer))
SELECT id, on_hand, opened_on, effective_expiry, location_id, location_name, consumable_id,
       consumable_name, category, shade, size, grit, stock_unit, lot_id, lot_number, lot_expires_on,
       lot_status
FROM facts`;

type ShelfRow = Omit<
  HoldingRow,
  'layer_id' | 'dispensing' | 'received_on' | 'containers' | 'value' | 'status'
>;

/** What is on a shelf and blocked, or has its last day within so many days. */
export async function loadShelf(
  tx: Tx,
  practiceId: string,
  today: IsoDate,
  withinDays: number,
): Promise<ShelfFacts[]> {
  const rows = await tx.query<ShelfRow>(ON_SHELF, [practiceId, today, withinDays]);
  return rows.map((row) => ({
    holdingId: row.id,
    consumable: toConsumable(row),
    lot: toLot(row),
    location: toPlace(row.location_id, row.location_name),
    onHand: quantityText(row.on_hand),
    openedOn: row.opened_on,
    lastDay: row.effective_expiry,
    daysLeft: row.effective_expiry === null ? null : daysBetween(today, row.effective_expiry),
  }));
}

const SHORTFALLS = `
SELECT ${CONSUMABLE_COLUMNS}, f.open, f.visits, f.oldest, f.cost
FROM (
  SELECT consumable_id, sum(quantity - settled) AS open, count(DISTINCT visit_id)::int AS visits,
         min(used_on) AS oldest, sum(round((quantity - settled) * unit_cost, 6)) AS cost
  FROM shortfalls
  WHERE practice_id = $1 AND settled < quantity AND cancelled_at IS NULL GROUP BY consumable_id
) f JOIN consumables c ON c.id = f.consumable_id`;

interface ShortfallRow extends ConsumableColumns {
  readonly open: string;
  readonly visits: number;
  readonly oldest: string;
  readonly cost: string;
}

export async function loadShortfalls(tx: Tx, practiceId: string): Promise<ShortfallFacts[]> {
  const rows = await tx.query<ShortfallRow>(SHORTFALLS, [practiceId]);
  return rows.map((row) => ({
    consumable: toConsumable(row),
    open: microOf(row.open),
    visits: row.visits,
    oldest: row.oldest,
    estimatedCost: microOf(row.cost),
  }));
}

// Offers are read only for what is at or below a level that may be in force: see `levelInForce`.
const SUPPLY = `
WITH usable AS MATERIALIZED (
  SELECT l.consumable_id, sum(h.on_hand) AS quantity
  FROM holdings h JOIN layers l ON l.id = h.layer_id
  WHERE h.practice_id = $1 AND h.live AND l.lot_status = 'released'
    AND l.received_on <= $2::date AND (h.opened_on IS NULL OR h.opened_on <= $2::date)
    AND (least(l.expires_on, h.use_by) IS NULL OR least(l.expires_on, h.use_by) >= $2::date)
  GROUP BY l.consumable_id
), owed AS MATERIALIZED (
  SELECT consumable_id, sum(quantity - settled) AS quantity FROM shortfalls
  WHERE practice_id = $1 AND settled < quantity AND cancelled_at IS NULL GROUP BY consumable_id
), coming AS MATERIALIZED (
  SELECT consumable_id, sum(packs * pack_content) AS quantity FROM (${OUTSTANDING}) waiting
  GROUP BY consumable_id
)
SELECT ${CONSUMABLE_COLUMNS}, c.reorder_at, c.reorder_up_to, pl.reorder_at AS planned_at,
       pl.order_up_to AS planned_up_to, ${LEVEL_JSON} AS computed, coalesce(u.quantity, 0) AS usable,
       coalesce(o.quantity, 0) AS owed, coalesce(g.quantity, 0) AS coming, offers.list AS offers
FROM consumables c
LEFT JOIN consumable_planning pl ON pl.practice_id = $1 AND pl.consumable_id = c.id
LEFT JOIN computed_levels cl ON cl.practice_id = $1 AND cl.consumable_id = c.id
LEFT JOIN usable u ON u.consumable_id = c.id
LEFT JOIN owed o ON o.consumable_id = c.id
LEFT JOIN coming g ON g.consumable_id = c.id
CROSS JOIN LATERAL (
  SELECT coalesce(u.quantity, 0) + coalesce(g.quantity, 0) - coalesce(o.quantity, 0) AS there,
         coalesce(u.quantity, 0) + coalesce(g.quantity, 0) - coalesce(o.quantity, 0)
           - coalesce(cl.expiring_first, 0) AS lasting
) position
CROSS JOIN LATERAL (
  SELECT coalesce(json_agg(json_build_object('id', p.id, 'name', p.name, 'supplier', s.name,
           'content', (p.containers_per_pack * p.content_per_container)::text,
           'price', coalesce(paid.pack_price, p.list_price)::text)), '[]') AS list
  FROM presentations p
  LEFT JOIN suppliers s ON s.id = p.supplier_id
  LEFT JOIN LATERAL (
    SELECT coalesce(l.kit_pack_price, l.pack_price) AS pack_price
    FROM layers l JOIN deliveries d ON d.id = l.delivery_id
    WHERE l.practice_id = $1 AND l.consumable_id = c.id AND l.presentation_id = p.id
      AND d.reversed_at IS NULL AND NOT l.undone AND NOT l.sample
    ORDER BY l.received_on DESC, l.id DESC LIMIT 1
  ) paid ON true
  WHERE p.practice_id = $1 AND p.consumable_id = c.id AND p.active
) offers
WHERE c.practice_id = $1 AND c.active
  AND (lasting <= coalesce(pl.reorder_at, cl.reorder_point)
       OR pl.reorder_at IS NULL AND there <= c.reorder_at)`;

interface OfferJson {
  readonly id: string;
  readonly name: string;
  readonly supplier: string | null;
  readonly content: string;
  readonly price: string | null;
}

interface SupplyRow extends ConsumableColumns {
  readonly reorder_at: string | null;
  readonly reorder_up_to: string | null;
  readonly planned_at: string | null;
  readonly planned_up_to: string | null;
  readonly computed: LevelJson | null;
  readonly usable: string;
  readonly owed: string;
  readonly coming: string;
  readonly offers: readonly OfferJson[];
}

export async function loadSupply(
  tx: Tx,
  practiceId: string,
  today: IsoDate,
): Promise<SupplyFacts[]> {
  const rows = await tx.query<SupplyRow>(SUPPLY, [practiceId, today]);
  return rows.map((row) => ({
    consumable: toConsumable(row),
    stock: {
      usable: microOf(row.usable),
      onOrder: microOf(row.coming),
      owed: microOf(row.owed),
    },
    levels: {
      planning: { at: microOrNull(row.planned_at), upTo: microOrNull(row.planned_up_to) },
      typedIn: { at: microOrNull(row.reorder_at), upTo: microOrNull(row.reorder_up_to) },
      computed: row.computed === null ? null : toLevel(row.computed),
    },
    offers: row.offers.map(toOffer),
  }));
}

function microOrNull(numeric: string | null): bigint | null {
  return numeric === null ? null : microOf(numeric);
}

function toOffer(json: OfferJson): Offer {
  return {
    presentationId: json.id,
    name: json.name,
    supplierName: json.supplier,
    packContent: microOf(json.content),
    packPrice: json.price === null ? null : microOf(json.price),
  };
}
