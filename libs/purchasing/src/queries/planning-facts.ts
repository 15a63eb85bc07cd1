import { money } from '#lib/measure';
import type { IsoDate, Tx } from '#lib/platform';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  microOf,
  type StockConsumableDto,
  toConsumable,
} from '#lib/stock';
import { loadOneOffs } from '../db/one-off-marks.js';
import { loadOwnPlanning, loadPlanningSettings } from '../db/planning-settings.js';
import { loadPresentationTerms } from '../db/presentation-terms.js';
import { loadSupplyTerms } from '../db/supply-terms.js';
import { type EpochDay, epochDay } from '../domain/forecast/calendar.js';
import type { OneOffSpan } from '../domain/planning/item-history.js';
import type { PlannedOffer, PlanningRules, ShelfItem } from '../domain/planning/plan-item.js';
import {
  NOTHING_OWN,
  PLAIN_PRESENTATION,
  PLAIN_TERMS,
  type PresentationTerms,
} from '../domain/planning/planning-settings.js';
import type { ProductAttributes } from '../domain/policy/substitutes.js';
import { budgetLeft } from './orders/budget-left.js';
import { loadSupplierLeads } from './supplier-leads.js';
import { loadOutstanding } from './supply-facts.js';

// Usual life of goods when they come: the median of the last five deliveries of the presentation.
const ITEMS = `
WITH usable AS MATERIALIZED (
  SELECT l.consumable_id, least(l.expires_on, h.use_by) AS last_day, sum(h.on_hand) AS quantity
  FROM holdings h JOIN layers l ON l.id = h.layer_id
  WHERE h.practice_id = $1 AND h.live AND l.lot_status = 'released'
    AND l.received_on <= $2::date AND (h.opened_on IS NULL OR h.opened_on <= $2::date)
    AND (least(l.expires_on, h.use_by) IS NULL OR least(l.expires_on, h.use_by) >= $2::date)
  GROUP BY l.consumable_id, least(l.expires_on, h.use_by)
), lots AS MATERIALIZED (
  SELECT consumable_id, json_agg(json_build_object('quantity', quantity::text,
           'lastDay', last_day::text) ORDER BY last_day) AS list
  FROM usable GROUP BY consumable_id
), owed AS MATERIALIZED (
  SELECT consumable_id, sum(quantity - settled) AS quantity FROM shortfalls
  WHERE practice_id = $1 AND settled < quantity AND cancelled_at IS NULL GROUP BY consumable_id
), received AS MATERIALIZED (
  SELECT l.id, l.consumable_id, l.presentation_id, l.sample, l.received_on, d.supplier_id,
         coalesce(l.kit_pack_price, l.pack_price) AS pack_price,
         CASE WHEN l.expires_on >= l.received_on THEN l.expires_on - l.received_on + 1
              WHEN l.expires_on < l.received_on THEN 0 END AS life,
         row_number() OVER (PARTITION BY l.presentation_id
                            ORDER BY l.received_on DESC, l.id DESC) AS place
  FROM layers l JOIN deliveries d ON d.id = l.delivery_id
  WHERE l.practice_id = $1 AND d.reversed_at IS NULL AND NOT l.undone
    AND l.received_on <= $2::date
), latest AS MATERIALIZED (
  SELECT presentation_id, (array_agg(pack_price ORDER BY place) FILTER (WHERE NOT sample))[1] AS price,
         (array_agg(supplier_id ORDER BY place))[1] AS supplier_id,
         percentile_disc(0.5) WITHIN GROUP (ORDER BY life) AS life
  FROM received WHERE place <= 5 GROUP BY presentation_id
), offers AS MATERIALIZED (
  SELECT p.consumable_id, json_agg(json_build_object('id', p.id, 'name', p.name,
           'supplierId', s.id, 'supplier', s.name, 'life', n.life,
           'content', (p.containers_per_pack * p.content_per_container)::text,
           'price', coalesce(n.price, p.list_price)::text) ORDER BY p.id) AS list
  FROM presentations p
  LEFT JOIN latest n ON n.presentation_id = p.id
  LEFT JOIN suppliers s ON s.id = coalesce(p.supplier_id, n.supplier_id)
  WHERE p.practice_id = $1 AND p.active GROUP BY p.consumable_id
), since AS MATERIALIZED (
  SELECT consumable_id, min(received_on)::text AS day FROM received GROUP BY consumable_id
)
SELECT ${CONSUMABLE_COLUMNS}, c.opacity, c.viscosity, c.reorder_at, c.reorder_up_to, coalesce(t.list, '[]') AS lots,
       coalesce(o.quantity, 0) AS owed, coalesce(f.list, '[]') AS offers, e.day AS since
FROM consumables c
LEFT JOIN lots t ON t.consumable_id = c.id
LEFT JOIN owed o ON o.consumable_id = c.id
LEFT JOIN offers f ON f.consumable_id = c.id
LEFT JOIN since e ON e.consumable_id = c.id
WHERE c.practice_id = $1 AND c.active ORDER BY c.id`;

interface ItemRow extends ConsumableColumns {
  readonly opacity: string | null;
  readonly viscosity: string | null;
  readonly reorder_at: string | null;
  readonly reorder_up_to: string | null;
  readonly lots: readonly { readonly quantity: string; readonly lastDay: string | null }[];
  readonly owed: string;
  readonly offers: readonly OfferJson[];
  readonly since: string | null;
}

interface OfferJson {
  readonly id: string;
  readonly name: string;
  readonly supplierId: string | null;
  readonly supplier: string | null;
  readonly life: number | null;
  readonly content: string;
  readonly price: string | null;
}

/** An active consumable with all that planning needs to know of it but its use. */
export interface PlannedItem extends ShelfItem {
  readonly consumable: StockConsumableDto;
  readonly attributes: ProductAttributes;
  readonly stockedSince: EpochDay | null;
}

export async function loadPlannedItems(tx: Tx, today: IsoDate): Promise<PlannedItem[]> {
  const rows = await tx.query<ItemRow>(ITEMS, [tx.practiceId, today]);
  const outstanding = await loadOutstanding(tx);
  const terms = await loadPresentationTerms(tx);
  const micro = (numeric: string | null) => (numeric === null ? null : microOf(numeric));
  return rows.map((row) => ({
    consumableId: row.consumable_id,
    consumable: toConsumable(row),
    attributes: attributesOf(row),
    stockedSince: row.since === null ? null : epochDay(row.since),
    lots: row.lots.map(({ quantity, lastDay }) => ({
      quantity: microOf(quantity),
      lastDay: lastDay === null ? null : epochDay(lastDay),
    })),
    owed: microOf(row.owed),
    onOrder: outstanding.get(row.consumable_id) ?? [],
    offers: row.offers.map((offer) => toOffer(offer, terms.get(offer.id) ?? PLAIN_PRESENTATION)),
    typedIn: { reorderAt: micro(row.reorder_at), reorderUpTo: micro(row.reorder_up_to) },
  }));
}

function attributesOf(row: ItemRow): ProductAttributes {
  const { category, shade, opacity, viscosity, size, grit } = row;
  const [itemId, name, unit] = [row.consumable_id, row.consumable_name, row.stock_unit];
  return { itemId, name, category, unit, shade, opacity, viscosity, size, grit };
}

/** How a presentation is sold, as offers have it. */
export function soldAs(terms: PresentationTerms) {
  return {
    minimumPacks: BigInt(terms.minimumPacks),
    discount: terms.discount,
    priceList: terms.prices.map(({ fromPacks, packPrice }) => ({
      ...{ fromPacks: BigInt(fromPacks), packPrice: money(packPrice) },
    })),
  };
}

/** The price list goes before the price last paid: that may have been paid for many packs. */
function toOffer(json: OfferJson, terms: PresentationTerms): PlannedOffer {
  const sold = soldAs(terms);
  return {
    presentationId: json.id,
    name: json.name,
    supplierId: json.supplierId,
    supplierName: json.supplier,
    packContent: microOf(json.content),
    packPrice: sold.priceList[0]?.packPrice ?? (json.price === null ? null : microOf(json.price)),
    usableDays: json.life,
    ...sold,
  };
}

/** The settings of the practice, its consumables and suppliers, on a day. */
export async function loadPlanningRules(tx: Tx, today: IsoDate): Promise<PlanningRules> {
  const settings = await loadPlanningSettings(tx);
  const own = await loadOwnPlanning(tx);
  const terms = await loadSupplyTerms(tx);
  const leads = await loadSupplierLeads(tx, today, { settings, terms });
  return {
    today: epochDay(today),
    settings,
    ownOf: (id) => own.get(id) ?? NOTHING_OWN,
    termsOf: (id) => (id === null ? undefined : terms.get(id)) ?? PLAIN_TERMS,
    leadOf: (id) => leads.of(id),
    budgetLeft: await budgetLeft(tx, today),
  };
}

/** The days marked as one-off events, by consumable. */
export async function loadOneOffSpans(tx: Tx): Promise<ReadonlyMap<string, OneOffSpan[]>> {
  const spans = new Map<string, OneOffSpan[]>();
  for (const mark of await loadOneOffs(tx)) {
    if (mark.withdrawnAt !== null) continue;
    const span = { first: epochDay(mark.firstDay), last: epochDay(mark.lastDay) };
    spans.set(mark.consumableId, [...(spans.get(mark.consumableId) ?? []), span]);
  }
  return spans;
}
