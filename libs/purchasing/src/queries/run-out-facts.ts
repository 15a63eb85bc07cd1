import type { IsoDate, Tx } from '#lib/platform';
import { CONSUMABLE_COLUMNS, type ConsumableColumns, microOf, toConsumable } from '#lib/stock';
import { loadPlannedBookings, type PlannedBookings } from '#lib/visits';
import { loadComputedOffers } from '../db/computed-levels.js';
import { loadPlanningSettings } from '../db/planning-settings.js';
import { loadSupplyTerms } from '../db/supply-terms.js';
import { arrivalDay } from '../domain/arrival-day.js';
import { type EpochDay, epochDay, isoDay, weekdayOf } from '../domain/forecast/calendar.js';
import {
  outlook,
  RUNS_OUT_CHANCE,
  type RunOutFacts,
  type UseMoments,
  type VisitAtRisk,
} from '../domain/run-out-alert.js';
import { cheapest, type Offer } from '../domain/suggest-order.js';
import { demandOf } from './booked-use.js';
import { loadSupplierLeads, type SupplierLeads } from './supplier-leads.js';
import { loadOutstanding } from './supply-facts.js';

/** Nobody is told of what may run out later than this. */
const FARTHEST_DAYS = 60;

/**
 * What may run out before goods ordered today can be here, with what is known of it. It looks at the
 * plain use of the last weeks and at what is booked, and forecasts nothing: that would take seconds.
 */
export async function loadRunOuts(tx: Tx, today: IsoDate): Promise<RunOutFacts[]> {
  const settings = await loadPlanningSettings(tx);
  const terms = await loadSupplyTerms(tx);
  const leads = await loadSupplierLeads(tx, today, { settings, terms });
  const usual = await loadUsualUse(tx, today);
  const arrivals = leads.suppliers.map((id) => arrivalDay(leads.of(id), epochDay(today)).day);
  const latest = Math.min(Math.max(...arrivals), epochDay(today) + FARTHEST_DAYS);
  const days = { from: today, to: isoDay(latest) };
  const planned = await loadPlannedBookings(tx, today, days);
  const { leaveOutRetakes } = settings;
  const booked = await demandOf(tx, today, planned, { leaveOutRetakes });
  const used = planned.bookings.flatMap(({ plan }) => [...plan.needs.keys()]);
  const ids = [...new Set([...usual.keys(), ...used])];
  if (ids.length === 0) return [];
  const coming = await loadOutstanding(tx);
  const known: RunOutFacts[] = [];
  for (const row of await tx.query<StockRow>(STOCK, [tx.practiceId, today, ids])) {
    const id = row.consumable_id;
    const facts: RunOutFacts = {
      consumable: toConsumable(row),
      today: epochDay(today),
      usable: microOf(row.usable),
      owed: microOf(row.owed),
      coming: coming.get(id) ?? [],
      usual: usual.get(id) ?? [],
      booked: booked.of(id),
      visits: visitsOf(planned, id),
      deliveryOn: latest,
      ...{ supplierName: null, ordersSeen: null },
    };
    // With the slowest supplier; who it really comes from is looked up for these few only.
    if (outlook(facts).chance >= RUNS_OUT_CHANCE) known.push(facts);
  }
  return withSuppliers(tx, known, { leads, today, latest });
}

const STOCK = `
SELECT ${CONSUMABLE_COLUMNS}, coalesce(u.quantity, 0) AS usable, coalesce(o.quantity, 0) AS owed
FROM consumables c
LEFT JOIN (
  SELECT l.consumable_id, sum(h.on_hand) AS quantity
  FROM holdings h JOIN layers l ON l.id = h.layer_id
  WHERE h.practice_id = $1 AND h.live AND l.lot_status = 'released'
    AND l.received_on <= $2::date AND (h.opened_on IS NULL OR h.opened_on <= $2::date)
    AND (least(l.expires_on, h.use_by) IS NULL OR least(l.expires_on, h.use_by) >= $2::date)
  GROUP BY l.consumable_id
) u ON u.consumable_id = c.id
LEFT JOIN (
  SELECT consumable_id, sum(quantity - settled) AS quantity FROM shortfalls
  WHERE practice_id = $1 AND settled < quantity AND cancelled_at IS NULL GROUP BY consumable_id
) o ON o.consumable_id = c.id
WHERE c.practice_id = $1 AND c.active AND c.id = ANY($3::uuid[])`;

interface StockRow extends ConsumableColumns {
  readonly usable: string;
  readonly owed: string;
}

/** At most so many visits are read, however busy the practice is. */
const MOST_VISITS = 1500;

// By weekday: the mean of a Tuesday is that of all Tuesdays of the span. These are statistics, so
// they may leave as floating point numbers.
const USUAL_USE = `
WITH lately AS MATERIALIZED (
  SELECT id, visited_on FROM visits
  WHERE practice_id = $1 AND reversed_at IS NULL AND visited_on < $2::date
    AND visited_on >= $2::date - 56
  ORDER BY visited_on DESC, id DESC LIMIT ${MOST_VISITS}
), span AS (
  SELECT min(visited_on) + CASE WHEN count(*) = ${MOST_VISITS} THEN 1 ELSE 0 END AS first FROM lately
), daily AS (
  SELECT u.consumable_id, v.visited_on, sum(u.charged) AS used
  FROM lately v JOIN span s ON v.visited_on >= s.first JOIN usage_lines u ON u.visit_id = v.id
  GROUP BY 1, 2
)
SELECT consumable_id AS id, extract(isodow FROM visited_on)::int AS weekday,
       sum(used)::float8 AS used, sum(used * used)::float8 AS square,
       (SELECT first::text FROM span) AS first
FROM daily GROUP BY 1, 2`;

interface UsualRow {
  readonly id: string;
  readonly weekday: number;
  readonly used: number;
  readonly square: number;
  readonly first: IsoDate;
}

async function loadUsualUse(
  tx: Tx,
  today: IsoDate,
): Promise<ReadonlyMap<string, readonly UseMoments[]>> {
  const rows = await tx.query<UsualRow>(USUAL_USE, [tx.practiceId, today]);
  const found = new Map<string, UseMoments[]>();
  const counts = new Array<number>(7).fill(0);
  const first = rows[0] ? epochDay(rows[0].first) : epochDay(today);
  for (let day = first; day < epochDay(today); day += 1) {
    const weekday = weekdayOf(day);
    counts[weekday] = (counts[weekday] ?? 0) + 1;
  }
  for (const { id, weekday, used, square } of rows) {
    const count = Math.max(1, counts[weekday - 1] ?? 0);
    const mean = used / count;
    const week = found.get(id) ?? new Array<UseMoments>(7).fill({ mean: 0, variance: 0 });
    week[weekday - 1] = { mean, variance: Math.max(0, square / count - mean * mean) };
    found.set(id, week);
  }
  return found;
}

function visitsOf({ bookings }: PlannedBookings, consumableId: string): VisitAtRisk[] {
  return bookings.flatMap(({ booking, plan, toCome }) => {
    const need = plan.needs.get(consumableId);
    const { id, day, chartReference } = booking;
    return need ? [{ id, day, chartReference, toCome, need: need.mean }] : [];
  });
}

const OFFERS = `
SELECT p.consumable_id, p.id AS "presentationId", p.name, s.id AS "supplierId",
       s.name AS "supplierName", p.containers_per_pack * p.content_per_container AS content,
       coalesce(paid.pack_price, p.list_price) AS price
FROM presentations p
LEFT JOIN LATERAL (
  SELECT coalesce(l.kit_pack_price, l.pack_price) AS pack_price, d.supplier_id
  FROM layers l JOIN deliveries d ON d.id = l.delivery_id
  WHERE l.practice_id = $1 AND l.consumable_id = p.consumable_id AND l.presentation_id = p.id
    AND d.reversed_at IS NULL AND NOT l.undone AND NOT l.sample
  ORDER BY l.received_on DESC, l.id DESC LIMIT 1
) paid ON true
LEFT JOIN suppliers s ON s.id = coalesce(p.supplier_id, paid.supplier_id)
WHERE p.practice_id = $1 AND p.active AND p.consumable_id = ANY($2::uuid[])`;

interface OfferRow {
  readonly consumable_id: string;
  readonly presentationId: string;
  readonly name: string;
  readonly supplierId: string | null;
  readonly supplierName: string | null;
  readonly content: string;
  readonly price: string | null;
}

interface BoughtFrom extends Offer {
  readonly supplierId: string | null;
}

interface Arrivals {
  readonly leads: SupplierLeads;
  readonly today: IsoDate;
  readonly latest: EpochDay;
}

/** Who brings it says when it can be here: whom planning would order from, or else the cheapest. */
async function withSuppliers(
  tx: Tx,
  known: readonly RunOutFacts[],
  { leads, today, latest }: Arrivals,
): Promise<RunOutFacts[]> {
  if (known.length === 0) return [];
  const ids = known.map(({ consumable }) => consumable.id);
  const offers = new Map<string, BoughtFrom[]>();
  for (const row of await tx.query<OfferRow>(OFFERS, [tx.practiceId, ids])) {
    const { presentationId, name, supplierId, supplierName } = row;
    const offer: BoughtFrom = {
      ...{ presentationId, name, supplierId, supplierName },
      packContent: microOf(row.content),
      packPrice: row.price === null ? null : microOf(row.price),
    };
    offers.set(row.consumable_id, [...(offers.get(row.consumable_id) ?? []), offer]);
  }
  const chosen = await loadComputedOffers(tx, ids);
  return known.map((facts) => {
    const { id } = facts.consumable;
    const all = offers.get(id) ?? [];
    const offer =
      all.find(({ presentationId }) => presentationId === chosen.get(id)) ??
      (cheapest(all) as BoughtFrom | undefined);
    const { day, ordersSeen } = arrivalDay(leads.of(offer?.supplierId ?? null), epochDay(today));
    const deliveryOn = Math.min(latest, day);
    return { ...facts, deliveryOn, ordersSeen, supplierName: offer?.supplierName ?? null };
  });
}
