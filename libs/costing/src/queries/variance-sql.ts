import { PRICES } from './current-prices.js';

/** Of `visits v`, with the parameters of `chosenValues`. */
const VISITS = `v.reversed_at IS NULL
    AND ($2::date IS NULL OR v.visited_on >= $2) AND ($3::date IS NULL OR v.visited_on <= $3)
    AND ($6::uuid IS NULL OR v.dentist_id = $6)`;

const AMOUNTS = ['actual', 'at_price', 'standard', 'waste', 'retake'] as const;

/**
 * Parts of an amount by weights, in millionths: what the weights up to here bear, less what those
 * before bear. However many share it, the parts add up to it.
 */
function parts(weight: string, upTo: string, all: string): string {
  return AMOUNTS.map(
    (amount) => `round(l.${amount} * ${upTo} / ${all}, 6)
         - round(l.${amount} * (${upTo} - ${weight}) / ${all}, 6)`,
  ).join(', ');
}

// A retake is no part of the recipe, so that all of it is more than the standard; so is all of a
// restoration that does an earlier one again.
const LINES = `
lines AS (
  SELECT u.visit_id, u.restoration_id, u.tooth, sum(u.cost) AS actual,
         sum(round(u.charged * p.price, 6)) AS at_price,
         sum(CASE WHEN u.attempt > 1 THEN 0 ELSE round(u.planned * p.price, 6) END) AS standard,
         sum(CASE WHEN u.charged = 0 THEN 0
                  ELSE round(u.cost * (u.charged - u.placed) / u.charged, 6) END) AS waste,
         sum(CASE WHEN u.attempt > 1 THEN u.cost ELSE 0 END) AS retake
  FROM usage_lines u
  JOIN visits v ON v.id = u.visit_id
  JOIN prices p ON p.consumable_id = u.consumable_id
  WHERE u.practice_id = $1 AND ${VISITS}
  GROUP BY 1, 2, 3
)`;

// Weights that are all nothing count as equal ones, as they did when the visit was posted.
const WEIGHTED = `
weighted AS (
  SELECT r.id, r.visit_id, r.position, r.tooth, w.weight, sum(w.weight) OVER visit AS of_visit,
         sum(w.weight) OVER tooth AS of_tooth
  FROM restorations r
  JOIN visits v ON v.id = r.visit_id
  CROSS JOIN LATERAL (SELECT CASE v.cost_share_key WHEN 'minutes' THEN r.minutes
    WHEN 'surfaces' THEN length(r.surfaces) ELSE 1 END::numeric AS weight) w
  WHERE r.practice_id = $1 AND ${VISITS}
  WINDOW visit AS (PARTITION BY r.visit_id), tooth AS (PARTITION BY r.visit_id, r.tooth)
), effective AS (
  SELECT id, visit_id, position, tooth,
         CASE WHEN of_visit = 0 THEN 1 ELSE weight END AS visit_weight,
         CASE WHEN of_tooth = 0 THEN 1 ELSE weight END AS tooth_weight
  FROM weighted
), placed AS (
  SELECT id, visit_id, tooth, visit_weight, tooth_weight,
         sum(visit_weight) OVER (PARTITION BY visit_id) AS visit_all,
         sum(visit_weight) OVER (PARTITION BY visit_id ORDER BY position) AS visit_upto,
         sum(tooth_weight) OVER (PARTITION BY visit_id, tooth) AS tooth_all,
         sum(tooth_weight) OVER (PARTITION BY visit_id, tooth ORDER BY position) AS tooth_upto
  FROM effective
)`;

const SHARED = `
shares (id, ${AMOUNTS.join(', ')}) AS (
  SELECT restoration_id, ${AMOUNTS.join(', ')} FROM lines WHERE restoration_id IS NOT NULL
  UNION ALL
  SELECT p.id, ${parts('p.tooth_weight', 'p.tooth_upto', 'p.tooth_all')}
  FROM lines l JOIN placed p ON p.visit_id = l.visit_id AND p.tooth = l.tooth
  WHERE l.restoration_id IS NULL AND l.tooth IS NOT NULL
  UNION ALL
  SELECT p.id, ${parts('p.visit_weight', 'p.visit_upto', 'p.visit_all')}
  FROM lines l JOIN placed p ON p.visit_id = l.visit_id
  WHERE l.restoration_id IS NULL AND l.tooth IS NULL
), per_restoration AS (
  SELECT id, ${AMOUNTS.map((amount) => `sum(${amount}) AS ${amount}`).join(', ')}
  FROM shares GROUP BY id
)`;

/** What every restoration cost beside what it should have cost, to the millionth. */
export const COSTED = `
WITH ${PRICES}, ${LINES}, ${WEIGHTED}, ${SHARED}, costed AS (
  SELECT r.id, r.visit_id, v.visited_on, r.template_id, r.reason, v.dentist_id,
         to_char(v.visited_on, 'YYYY-MM') AS month, r.own_cost + r.shared_cost AS cost,
         coalesce(s.actual, 0) AS actual, coalesce(s.at_price, 0) AS at_price,
         CASE WHEN r.redo_of IS NULL THEN coalesce(s.standard, 0) ELSE 0 END AS standard,
         coalesce(s.waste, 0) AS waste,
         coalesce(CASE WHEN r.redo_of IS NULL THEN s.retake ELSE s.actual END, 0) AS retake
  FROM restorations r
  JOIN visits v ON v.id = r.visit_id
  LEFT JOIN per_restoration s ON s.id = r.id
  WHERE r.practice_id = $1 AND ${VISITS} AND ($4::uuid IS NULL OR r.template_id = $4)
    AND ($5::text IS NULL OR r.reason = $5)
)`;

export const SUMS = `count(*)::int AS restorations, coalesce(sum(cost), 0) AS cost,
  ${AMOUNTS.map((amount) => `coalesce(sum(${amount}), 0) AS ${amount}`).join(', ')}`;
