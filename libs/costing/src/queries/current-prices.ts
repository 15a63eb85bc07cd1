/**
 * Price per stock unit as a visit of today would take it: of the latest delivery that cost
 * something, else the list price, else nothing is known and it counts as nothing.
 */
export const PRICES = `
prices AS (
  SELECT c.id AS consumable_id,
         coalesce(round(paid.landed_cost / paid.received, 6), round(list.price, 6), 0) AS price,
         paid.landed_cost IS NOT NULL OR list.price IS NOT NULL AS known
  FROM consumables c
  LEFT JOIN LATERAL (
    SELECT l.landed_cost, l.received FROM layers l JOIN deliveries d ON d.id = l.delivery_id
    WHERE l.practice_id = $1 AND l.consumable_id = c.id AND l.landed_cost > 0
      AND d.reversed_at IS NULL AND NOT l.undone
    ORDER BY l.received_on DESC, l.id DESC LIMIT 1) paid ON true
  LEFT JOIN LATERAL (
    SELECT p.list_price / (p.containers_per_pack * p.content_per_container) AS price
    FROM presentations p WHERE p.practice_id = $1 AND p.consumable_id = c.id
    ORDER BY p.active DESC, p.list_price IS NULL, p.id LIMIT 1) list ON true
  WHERE c.practice_id = $1
)`;
