import type { IsoDate, Tx } from '#lib/platform';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  microOf,
  type StockConsumableDto,
  toConsumable,
} from '#lib/stock';
import { loadPresentationTerms } from '../../db/presentation-terms.js';
import { epochDay } from '../../domain/forecast/calendar.js';
import type { PastItem, PastShelf } from '../../domain/foresight/past-shelf.js';
import {
  PLAIN_PRESENTATION,
  type PresentationTerms,
} from '../../domain/planning/planning-settings.js';
import { usualHorizon } from '../forecast-shelf.js';
import { loadOneOffSpans, loadPlanningRules, soldAs } from '../planning-facts.js';
import { loadSentOrders } from '../supply-facts.js';
import { loadUsage, loadVisitDays, usesOf } from '../usage-history.js';

// What was there on the morning of the first day ($2) is what had come by then less what had left;
// visits that were reversed since never were, and what was booked under a wrong lot was always under
// the right one. $3 is the day after the last one. A line that goes on under the right lot is no
// purchase of its own: it says how long the goods of the line it continues last.
const PAST = `
WITH back AS MATERIALIZED (
  SELECT layer_id, sum(quantity) AS quantity FROM movements
  WHERE practice_id = $1 AND to_account = 'supplier' AND reverses_id IS NOT NULL GROUP BY layer_id
), came AS MATERIALIZED (
  SELECT l.id, l.consumable_id, l.presentation_id, l.packs, l.received_on, l.expires_on,
         coalesce(l.kit_pack_price, l.pack_price) AS pack_price,
         l.received - coalesce(b.quantity, 0) AS received,
         l.sample OR l.continues_layer_id IS NOT NULL AS not_bought,
         d.supplier_id, s.name AS supplier,
         CASE WHEN right_one.expires_on >= l.received_on
              THEN right_one.expires_on - l.received_on + 1
              WHEN right_one.expires_on < l.received_on THEN 0 END AS life
  FROM layers l JOIN deliveries d ON d.id = l.delivery_id
  JOIN suppliers s ON s.id = d.supplier_id
  LEFT JOIN back b ON b.layer_id = l.id
  CROSS JOIN LATERAL (
    SELECT r.expires_on FROM layers r WHERE r.id = l.id OR r.continues_layer_id = l.id
    ORDER BY r.id = l.id, r.id DESC LIMIT 1) right_one
  WHERE l.practice_id = $1 AND d.reversed_at IS NULL AND NOT l.undone
    AND l.received_on < $3::date
), there AS MATERIALIZED (
  SELECT id, consumable_id, expires_on, received FROM came
  WHERE received_on < $2::date AND (expires_on IS NULL OR expires_on >= $2::date)
), gone AS (
  SELECT m.layer_id, sum(CASE m.from_account WHEN 'location' THEN m.quantity
                         ELSE -m.quantity END) AS quantity
  FROM there t JOIN movements m ON m.layer_id = t.id
  LEFT JOIN visits v ON v.id = m.visit_id
  WHERE m.occurred_on < $2::date AND m.from_account <> m.to_account AND v.reversed_at IS NULL
    AND 'supplier' NOT IN (m.from_account, m.to_account)
  GROUP BY m.layer_id
), left_over AS (
  SELECT t.consumable_id, t.expires_on, sum(t.received - coalesce(g.quantity, 0)) AS quantity
  FROM there t LEFT JOIN gone g ON g.layer_id = t.id GROUP BY t.consumable_id, t.expires_on
), lots AS (
  SELECT consumable_id, json_agg(json_build_object('quantity', quantity::text,
           'lastDay', expires_on::text) ORDER BY expires_on) AS list
  FROM left_over WHERE quantity > 0 GROUP BY consumable_id
), bought AS (
  SELECT consumable_id, min(received_on)::text AS since,
         coalesce(json_agg(json_build_object('presentationId', presentation_id,
           'day', received_on::text, 'packs', packs, 'price', pack_price::text, 'life', life,
           'supplierId', supplier_id, 'supplier', supplier)
           ORDER BY received_on, id) FILTER (WHERE NOT not_bought), '[]') AS list
  FROM came GROUP BY consumable_id
), packs AS (
  SELECT p.consumable_id, json_agg(json_build_object('id', p.id, 'name', p.name,
           'supplierId', s.id, 'supplier', s.name, 'listPrice', p.list_price::text,
           'content', (p.containers_per_pack * p.content_per_container)::text)
           ORDER BY p.id) AS list
  FROM presentations p LEFT JOIN suppliers s ON s.id = p.supplier_id
  WHERE p.practice_id = $1 AND p.active GROUP BY p.consumable_id
)
SELECT ${CONSUMABLE_COLUMNS}, c.reorder_at, c.reorder_up_to, b.since,
       coalesce(l.list, '[]') AS lots, coalesce(b.list, '[]') AS deliveries,
       coalesce(p.list, '[]') AS presentations
FROM consumables c
LEFT JOIN lots l ON l.consumable_id = c.id
LEFT JOIN bought b ON b.consumable_id = c.id
LEFT JOIN packs p ON p.consumable_id = c.id
WHERE c.practice_id = $1 AND c.active ORDER BY c.id`;

interface PastRow extends ConsumableColumns {
  readonly reorder_at: string | null;
  readonly reorder_up_to: string | null;
  readonly since: string | null;
  readonly lots: readonly { readonly quantity: string; readonly lastDay: string | null }[];
  readonly deliveries: readonly {
    readonly presentationId: string;
    readonly day: string;
    readonly packs: number;
    readonly price: string;
    readonly life: number | null;
    readonly supplierId: string;
    readonly supplier: string;
  }[];
  readonly presentations: readonly {
    readonly id: string;
    readonly name: string;
    readonly supplierId: string | null;
    readonly supplier: string | null;
    readonly listPrice: string | null;
    readonly content: string;
  }[];
}

export interface PastFacts {
  readonly shelf: PastShelf;
  readonly consumables: ReadonlyMap<string, StockConsumableDto>;
}

/** Everything that a replay from a day to the day before `endDay` needs. */
export async function loadPastFacts(
  tx: Tx,
  firstDay: IsoDate,
  endDay: IsoDate,
): Promise<PastFacts> {
  const rows = await tx.query<PastRow>(PAST, [tx.practiceId, firstDay, endDay]);
  const usage = new Map(
    (await loadUsage(tx, endDay)).map((each) => [each.consumableId, each.days]),
  );
  const oneOffs = await loadOneOffSpans(tx);
  const terms = await loadPresentationTerms(tx);
  const rules = await loadPlanningRules(tx, endDay);
  const termsOf = (id: string) => terms.get(id) ?? PLAIN_PRESENTATION;
  const items = rows.map((row): PastItem => {
    const days = usage.get(row.consumable_id);
    return {
      ...itemOf(row, termsOf),
      uses: days === undefined ? [] : usesOf(days),
      oneOffs: oneOffs.get(row.consumable_id) ?? [],
    };
  });
  return {
    shelf: {
      firstDay: epochDay(firstDay),
      endDay: epochDay(endDay),
      visitDays: (await loadVisitDays(tx, endDay)).map(epochDay),
      rules,
      sent: await loadSentOrders(tx, endDay),
      horizonDays: usualHorizon(rules),
      items,
    },
    consumables: new Map(rows.map((row) => [row.consumable_id, toConsumable(row)])),
  };
}

function itemOf(
  row: PastRow,
  termsOf: (presentationId: string) => PresentationTerms,
): Omit<PastItem, 'uses' | 'oneOffs'> {
  const micro = (numeric: string | null) => (numeric === null ? null : microOf(numeric));
  return {
    consumableId: row.consumable_id,
    stockedSince: row.since === null ? null : epochDay(row.since),
    deliveries: row.deliveries.map((each) => ({
      presentationId: each.presentationId,
      day: epochDay(each.day),
      packs: each.packs,
      packPrice: microOf(each.price),
      supplierId: each.supplierId,
      supplierName: each.supplier,
      usableDays: each.life,
    })),
    presentations: row.presentations.map((each) => ({
      presentationId: each.id,
      name: each.name,
      supplierId: each.supplierId,
      supplierName: each.supplier,
      packContent: microOf(each.content),
      listPrice: micro(each.listPrice),
      ...soldAs(termsOf(each.id)),
    })),
    startLots: row.lots.map((lot) => ({
      quantity: microOf(lot.quantity),
      lastDay: lot.lastDay === null ? null : epochDay(lot.lastDay),
    })),
    typedIn: { reorderAt: micro(row.reorder_at), reorderUpTo: micro(row.reorder_up_to) },
  };
}
