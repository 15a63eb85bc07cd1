import type { StockHoldingDto } from '../http/stock-answers.dto.js';
import {
  CONSUMABLE_COLUMNS,
  type ConsumableColumns,
  LOT_COLUMNS,
  type LotColumns,
  toConsumable,
  toLot,
  toPlace,
} from './consumable-ref.js';
import { moneyText, quantityText } from './wire.js';

/**
 * Everything that is physically somewhere, as of a day. $1 is the practice, $2 the day.
 *
 * A holding's value is its part of what its layer is still worth, by quantity. It is taken as a
 * difference of rounded running totals, so that the holdings of a layer add up to it exactly; and
 * in a subquery, so that a list works it out for the rows of its page only.
 */
export const HOLDING_FACTS = `
SELECT h.id, h.layer_id, h.on_hand, h.opened_on, l.dispensing, l.received_on,
       h.location_id, o.name AS location_name,
       least(l.expires_on, h.use_by) AS effective_expiry,
       CASE WHEN h.opened_on IS NULL AND l.dispensing <> 'by-piece'
            THEN ceil(h.on_hand / l.content_per_container)::int END AS containers,
       (SELECT round((l.landed_cost - l.out_cost) * sum(s.on_hand) FILTER (WHERE s.id <= h.id)
                     / sum(s.on_hand), 6)
             - round((l.landed_cost - l.out_cost)
                     * coalesce(sum(s.on_hand) FILTER (WHERE s.id < h.id), 0) / sum(s.on_hand), 6)
        FROM holdings s WHERE s.layer_id = h.layer_id) AS value,
       CASE WHEN l.lot_status <> 'released' THEN l.lot_status
            WHEN least(l.expires_on, h.use_by) < $2::date THEN 'expired'
            WHEN l.received_on > $2::date THEN 'not yet received'
            WHEN h.opened_on > $2::date THEN 'opened later'
            ELSE 'usable' END AS status,
       ${CONSUMABLE_COLUMNS}, ${LOT_COLUMNS}
FROM holdings h
JOIN layers l ON l.id = h.layer_id
JOIN lots t ON t.id = l.lot_id
JOIN consumables c ON c.id = l.consumable_id
JOIN locations o ON o.id = h.location_id
WHERE h.practice_id = $1 AND h.live`;

export interface HoldingRow extends ConsumableColumns, LotColumns {
  readonly id: string;
  readonly layer_id: string;
  readonly on_hand: string;
  readonly opened_on: string | null;
  readonly dispensing: string;
  readonly received_on: string;
  readonly location_id: string;
  readonly location_name: string;
  readonly effective_expiry: string | null;
  readonly containers: number | null;
  readonly value: string;
  readonly status: string;
}

export function toHolding(row: HoldingRow): StockHoldingDto {
  return {
    id: row.id,
    layerId: row.layer_id,
    consumable: toConsumable(row),
    lot: toLot(row),
    location: toPlace(row.location_id, row.location_name),
    dispensing: row.dispensing,
    receivedOn: row.received_on,
    openedOn: row.opened_on,
    effectiveExpiry: row.effective_expiry,
    onHand: quantityText(row.on_hand),
    containers: row.containers,
    value: moneyText(row.value),
    status: row.status,
  };
}
