import { money, type Quantity, quantity } from '#lib/measure';
import { addDays, type IsoDate, type Tx } from '#lib/platform';
import type { Waiting } from '../domain/arrival-flags.js';
import type { PricedPack } from '../domain/compare-price.js';
import type { StockConsumableDto } from '../http/stock-refs.dto.js';
import { CONSUMABLE_COLUMNS, type ConsumableColumns, toConsumable } from './consumable-ref.js';

/** Over how many days the pace of use is measured. */
export const USED_DAYS = 90;

export interface LastPaid extends PricedPack {
  readonly receivedOn: IsoDate;
  readonly supplierName: string;
  readonly presentationName: string;
}

/** What is known of a consumable on the day that more of it arrives. */
export interface ArrivalFacts {
  readonly consumable: StockConsumableDto;
  readonly waiting: readonly Waiting[];
  readonly used: Quantity;
  readonly last: LastPaid | null;
}

interface Row extends ConsumableColumns {
  readonly waiting: readonly { expires_on: string | null; quantity: string }[];
  readonly used: string;
  readonly last: {
    readonly pack_price: string;
    readonly content: string;
    readonly received_on: string;
    readonly supplier: string;
    readonly presentation: string;
  } | null;
}

// The last price is that of the last delivery that was paid for; a pack of a kit has no unit price. What a
// pack held is taken from what came: the pack may have been changed since.
const FACTS = `
SELECT ${CONSUMABLE_COLUMNS},
  (SELECT coalesce(json_agg(json_build_object('expires_on', w.expires_on,
            'quantity', w.quantity::text)), '[]')
   FROM (SELECT least(l.expires_on, h.use_by) AS expires_on, sum(h.on_hand) AS quantity
         FROM layers l JOIN holdings h ON h.layer_id = l.id
         WHERE l.practice_id = $2 AND l.consumable_id = c.id AND l.live
           AND h.live AND l.lot_status = 'released'
           AND coalesce(least(l.expires_on, h.use_by) >= $3, true)
         GROUP BY 1) w) AS waiting,
  (SELECT coalesce(sum(CASE m.to_account WHEN 'visit' THEN m.quantity ELSE -m.quantity END), 0)
   FROM layers l JOIN movements m ON m.layer_id = l.id
   WHERE l.practice_id = $2 AND l.consumable_id = c.id
     AND 'visit' IN (m.from_account, m.to_account) AND m.occurred_on > $4 AND m.occurred_on <= $3)
    AS used,
  (SELECT json_build_object('pack_price', l.pack_price::text,
            'content', (CASE WHEN l.received % (l.packs * l.content_per_container) = 0 THEN l.received / l.packs
              ELSE q.containers_per_pack * l.content_per_container END)::numeric(18,6)::text, 'received_on', l.received_on,
            'supplier', s.name, 'presentation', q.name)
   FROM layers l JOIN deliveries d ON d.id = l.delivery_id
   JOIN suppliers s ON s.id = d.supplier_id JOIN presentations q ON q.id = l.presentation_id
   WHERE l.practice_id = $2 AND l.consumable_id = c.id AND d.reversed_at IS NULL AND NOT l.sample
     AND l.kit_lot_id IS NULL AND l.pack_price > 0 AND NOT l.undone
   ORDER BY l.received_on DESC, l.id DESC LIMIT 1) AS last
FROM consumables c WHERE c.id = ANY($1::uuid[])`;

/** Reads them as of a day, in one round trip; before the delivery itself is written. */
export async function arrivalFacts(
  tx: Tx,
  consumableIds: readonly string[],
  day: IsoDate,
): Promise<ReadonlyMap<string, ArrivalFacts>> {
  const rows = await tx.query<Row>(FACTS, [
    [...new Set(consumableIds)],
    tx.practiceId,
    day,
    addDays(day, -USED_DAYS),
  ]);
  return new Map(rows.map((row) => [row.consumable_id, toFacts(row)]));
}

function toFacts(row: Row): ArrivalFacts {
  const { last } = row;
  const used = quantity(row.used);
  return {
    consumable: toConsumable(row),
    waiting: row.waiting.map((one) => ({
      expiresOn: one.expires_on,
      quantity: quantity(one.quantity),
    })),
    used,
    last: last && {
      packPrice: money(last.pack_price),
      content: quantity(last.content),
      receivedOn: last.received_on,
      supplierName: last.supplier,
      presentationName: last.presentation,
    },
  };
}
