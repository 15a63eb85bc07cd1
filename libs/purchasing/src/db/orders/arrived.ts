/**
 * Packs that came against a line of an order: what deliveries that stand say. Goods in another pack
 * than the ordered one count as so many whole packs of that. One row `packs` for a line `ol` of the
 * presentation `p`, to be joined LATERAL. Of a kit only the part counts under which it is ordered.
 */
export const ARRIVED = `
SELECT (coalesce(sum(l.packs) FILTER (WHERE l.presentation_id = ol.presentation_id), 0)
        + floor(coalesce(sum(l.received) FILTER (WHERE l.presentation_id <> ol.presentation_id), 0)
                / (p.containers_per_pack * p.content_per_container)))::int AS packs
FROM layers l JOIN deliveries d ON d.id = l.delivery_id
WHERE l.order_line_id = ol.id AND l.consumable_id = ol.consumable_id AND d.reversed_at IS NULL`;

/** Lines of orders that were sent and are not done with, with the packs that are still to come. */
export const OUTSTANDING = `
SELECT o.id AS order_id, o.number, o.supplier_id, o.ordered_on, o.expected_on, ol.id AS line_id,
       ol.consumable_id, ol.presentation_id, ol.packs - ol.cancelled_packs - a.packs AS packs,
       p.containers_per_pack * p.content_per_container AS pack_content
FROM orders o
JOIN order_lines ol ON ol.order_id = o.id
JOIN presentations p ON p.id = ol.presentation_id
CROSS JOIN LATERAL (${ARRIVED}) a
WHERE o.practice_id = $1 AND o.state = 'sent' AND ol.packs - ol.cancelled_packs - a.packs > 0`;
