import { expect } from '@jest/globals';
import type pg from 'pg';

/** The rules that never break, each as one query that finds whatever breaks it. */
const RULES: Record<string, string> = {
  'rule 2: received = on hand + used + wasted + returned + count differences':
    'SELECT * FROM layer_balances WHERE NOT balanced AND consumable_id = ANY($1)',
  'rule 3: on hand is never negative':
    'SELECT h.* FROM holdings h JOIN layers l ON l.id = h.layer_id WHERE h.on_hand < 0 AND l.consumable_id = ANY($1)',
  'rule 3: each holding has what the movements say': `
    SELECT h.id, h.on_hand, m.moved FROM holdings h CROSS JOIN LATERAL (
      SELECT coalesce(sum(CASE WHEN to_holding_id = h.id THEN quantity ELSE 0 END), 0)
           - coalesce(sum(CASE WHEN from_holding_id = h.id THEN quantity ELSE 0 END), 0) AS moved
      FROM movements WHERE layer_id = h.layer_id AND h.id IN (from_holding_id, to_holding_id)) m
    WHERE h.on_hand <> m.moved
      AND h.layer_id IN (SELECT id FROM layers WHERE consumable_id = ANY($1))`,
  'rule 5: each layer has given what the movements say, at the cost they say': `
    SELECT l.id, l.out_quantity, l.out_cost, m.* FROM layers l CROSS JOIN LATERAL (
      SELECT coalesce(sum(CASE WHEN from_account = 'location' THEN quantity ELSE -quantity END)
               FILTER (WHERE from_account <> to_account AND 'supplier' NOT IN (from_account, to_account)), 0)
             + coalesce(sum(quantity) FILTER (WHERE to_account = 'supplier'), 0) AS quantity,
             coalesce(sum(CASE WHEN from_account = 'location' THEN cost ELSE -cost END)
               FILTER (WHERE from_account <> to_account AND from_account <> 'supplier'), 0) AS cost
      FROM movements WHERE layer_id = l.id) m
    CROSS JOIN LATERAL (SELECT coalesce(sum(amount), 0) AS variance
      FROM price_variances WHERE layer_id = l.id) v
    WHERE (l.out_quantity <> m.quantity OR l.out_cost <> m.cost + v.variance)
      AND l.consumable_id = ANY($1)`,
  'rule 5: what came in, what went out and what invoices added is what is left': `
    SELECT l.id, b.* FROM layers l CROSS JOIN LATERAL (
      SELECT cost_in, cost_out, revalued FROM layer_balances WHERE layer_id = l.id) b
    WHERE b.cost_in - b.cost_out + b.revalued <> l.landed_cost - l.out_cost
      AND l.consumable_id = ANY($1)`,
  'rule 5: a delivery has cost what its lines have cost, whatever was corrected': `
    SELECT d.id, d.landed_total, sum(l.landed_cost - b.cost) FROM deliveries d
    JOIN layers l ON l.delivery_id = d.id
    CROSS JOIN LATERAL (SELECT coalesce(sum(cost), 0) AS cost FROM movements
      WHERE layer_id = l.id AND to_account = 'supplier') b
    WHERE d.reversed_at IS NULL
      AND d.id IN (SELECT delivery_id FROM layers WHERE consumable_id = ANY($1))
    GROUP BY d.id HAVING d.landed_total <> sum(l.landed_cost - b.cost)`,
  'rule 5: the parts of a kit cost what the kit cost': `
    SELECT delivery_id, kit_line FROM layers
    WHERE kit_lot_id IS NOT NULL AND continues_layer_id IS NULL AND delivery_id IN
      (SELECT delivery_id FROM layers WHERE consumable_id = ANY($1))
    GROUP BY delivery_id, kit_line HAVING sum(pack_price) <> max(kit_pack_price)`,
  'rule 5: an exhausted layer has cost exactly what was paid': `
    SELECT * FROM layers
    WHERE out_quantity = received AND out_cost <> landed_cost AND consumable_id = ANY($1)`,
  'rule 5: what is left plus what left is what was paid': `
    SELECT * FROM layers
    WHERE (out_cost < 0 OR out_cost > landed_cost) AND consumable_id = ANY($1)`,
  'rule 6: restorations add up to the visit': `
    SELECT v.id FROM visits v JOIN restorations r ON r.visit_id = v.id
    WHERE v.id IN (SELECT visit_id FROM usage_lines WHERE consumable_id = ANY($1))
    GROUP BY v.id HAVING sum(r.own_cost + r.shared_cost) <> v.material_cost
      OR sum(r.retake_cost) <> v.retake_cost`,
  'rule 6: categories add up to the restoration': `
    SELECT r.id FROM restorations r LEFT JOIN restoration_costs c ON c.restoration_id = r.id
    WHERE r.visit_id IN (SELECT visit_id FROM usage_lines WHERE consumable_id = ANY($1))
    GROUP BY r.id HAVING coalesce(sum(c.cost), 0) <> r.own_cost + r.shared_cost`,
  'rule 6: the visit is the rounded sum of its lines': `
    SELECT v.id FROM visits v JOIN usage_lines u ON u.visit_id = v.id
    WHERE v.id IN (SELECT visit_id FROM usage_lines WHERE consumable_id = ANY($1))
    GROUP BY v.id HAVING abs(sum(u.cost) - v.material_cost) > 0.005`,
  'rule 6: each line costs what its movements cost, and its open shortfall': `
    SELECT u.id FROM usage_lines u JOIN visits v ON v.id = u.visit_id
    LEFT JOIN LATERAL (
      SELECT sum(CASE to_account WHEN 'visit' THEN cost ELSE -cost END) AS cost,
             sum(CASE to_account WHEN 'visit' THEN quantity ELSE -quantity END) AS quantity
      FROM movements m WHERE m.usage_line_id = u.id) m ON true
    LEFT JOIN LATERAL (SELECT sum(round((s.quantity - s.settled) * s.unit_cost, 6)) AS cost,
        sum(s.quantity - s.settled) AS quantity
      FROM shortfalls s WHERE s.usage_line_id = u.id AND s.settled < s.quantity
        AND s.cancelled_at IS NULL) s ON true
    WHERE v.reversed_at IS NULL AND u.consumable_id = ANY($1)
      AND (u.cost <> coalesce(m.cost, 0) + coalesce(s.cost, 0)
        OR u.charged <> coalesce(m.quantity, 0) + coalesce(s.quantity, 0))`,
  'rule 5: doses that a visit shares are charged whole, and once': `
    SELECT u.visit_id, u.consumable_id, sum(u.charged) FROM usage_lines u
    JOIN visits v ON v.id = u.visit_id
    JOIN LATERAL (SELECT min(p.content_per_container) AS dose FROM presentations p
      WHERE p.consumable_id = u.consumable_id
      HAVING bool_and(p.dispensing = 'single-dose')
        AND min(p.content_per_container) = max(p.content_per_container)) d ON true
    WHERE u.shares_dose AND v.reversed_at IS NULL AND u.consumable_id = ANY($1)
    GROUP BY u.visit_id, u.consumable_id, d.dose
    HAVING sum(u.charged) <> ceil(sum(u.dispensed) / d.dose) * d.dose`,
  'rule 6: what does earlier work again is a retake as a whole': `
    SELECT r.id FROM restorations r WHERE r.redo_of IS NOT NULL
      AND r.retake_cost <> r.own_cost + r.shared_cost
      AND r.visit_id IN (SELECT visit_id FROM usage_lines WHERE consumable_id = ANY($1))`,
  'rule 4: nothing expired or unreceived was ever issued': `
    SELECT m.id FROM movements m JOIN layers l ON l.id = m.layer_id JOIN visits v ON v.id = m.visit_id
    JOIN holdings h ON h.id = m.from_holding_id
    WHERE m.to_account = 'visit' AND l.consumable_id = ANY($1) AND (l.expires_on < v.visited_on OR h.use_by < v.visited_on
      OR (m.shortfall_id IS NULL AND l.received_on > v.visited_on))`,
  'a reversed visit holds nothing': `
    SELECT v.id FROM visits v JOIN movements m ON m.visit_id = v.id WHERE v.reversed_at IS NOT NULL
      AND v.id IN (SELECT visit_id FROM usage_lines WHERE consumable_id = ANY($1))
    GROUP BY v.id HAVING sum(CASE WHEN m.to_account = 'visit' THEN m.quantity ELSE -m.quantity END) <> 0`,
};

type Questions = Pick<pg.Client, 'query'>;

/** Checks every rule for the given consumables (all, when none are given); names what is broken. */
export async function expectRulesHold(
  owner: Questions,
  consumables?: readonly string[],
): Promise<void> {
  const ids = consumables ?? (await everyConsumable(owner));
  for (const [rule, sql] of Object.entries(RULES)) {
    const { rows } = await owner.query(sql, [ids]);
    expect({ rule, broken: rows }).toEqual({ rule, broken: [] });
  }
}

async function everyConsumable(owner: Questions): Promise<string[]> {
  const { rows } = await owner.query<{ id: string }>('SELECT id FROM consumables');
  return rows.map((row) => row.id);
}
