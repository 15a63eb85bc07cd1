import {
  formatMoney,
  formatQuantity,
  money,
  moneyFromMicro,
  quantity,
  quantityFromMicro,
} from '#lib/measure';
import { type Actor, type CostShareKey, currencyStep, type Tx } from '#lib/platform';
import { costColumns, costRows } from '../db/visit-record.js';
import {
  attributeCost,
  type CostedLine,
  type CostedRestoration,
} from '../domain/attribute-cost.js';
import { shortfallCost } from '../domain/issue-visit.js';

interface VisitRow {
  id: string;
  cost_share_key: CostShareKey;
  restorations: {
    id: string;
    tooth: number;
    minutes: number;
    surfaces: string;
    redo: boolean;
  }[];
  lines: LineRow[];
}

interface LineRow {
  id: string;
  restoration_id: string | null;
  tooth: number | null;
  attempt: number;
  category: string;
  dispensed: string;
  moved: string;
  moved_cost: string;
  open: string | null;
  unit_cost: string | null;
}

const LOAD = `
SELECT v.id, v.cost_share_key,
  (SELECT json_agg(json_build_object('id', r.id, 'tooth', r.tooth, 'minutes', r.minutes,
     'surfaces', r.surfaces, 'redo', r.redo_of IS NOT NULL) ORDER BY r.position) FROM restorations r WHERE r.visit_id = v.id)
   AS restorations,
  (SELECT coalesce(json_agg(json_build_object('id', u.id, 'restoration_id', u.restoration_id,
     'tooth', u.tooth, 'attempt', u.attempt, 'category', c.category,
     'dispensed', u.dispensed::text, 'moved', m.quantity::text, 'moved_cost', m.cost::text,
     'open', (s.quantity - s.settled)::text, 'unit_cost', s.unit_cost::text) ORDER BY u.position), '[]')
   FROM usage_lines u
   JOIN consumables c ON c.id = u.consumable_id
   LEFT JOIN shortfalls s ON s.usage_line_id = u.id AND s.settled < s.quantity
     AND s.cancelled_at IS NULL
   CROSS JOIN LATERAL (
     SELECT coalesce(sum(CASE to_account WHEN 'visit' THEN quantity ELSE -quantity END), 0) AS quantity,
            coalesce(sum(CASE to_account WHEN 'visit' THEN cost ELSE -cost END), 0) AS cost
     FROM movements WHERE usage_line_id = u.id) m
   WHERE u.visit_id = v.id) AS lines
FROM visits v WHERE v.id = ANY($1::uuid[])`;

// Another transaction may be settling another line of the same visit: wait for it, then read.
const LOCK = 'SELECT FROM visits WHERE id = ANY($1::uuid[]) ORDER BY id FOR NO KEY UPDATE';

// Each list is read from the document once: read per row it would be read a thousand times.
const WRITE = `
WITH input AS MATERIALIZED (SELECT $1::json AS doc),
lines AS MATERIALIZED (
  SELECT r.* FROM input i, json_to_recordset(i.doc->'lines') AS r(id uuid, cost numeric,
    charged numeric)
), restorations_costed AS MATERIALIZED (
  SELECT r.* FROM input i, json_to_recordset(i.doc->'restorations') AS r(id uuid,
    own_cost numeric, shared_cost numeric, retake_cost numeric)
), costs AS MATERIALIZED (
  SELECT r.* FROM input i, json_to_recordset(i.doc->'costs') AS r(restoration_id uuid,
    category text, cost numeric)
), new_lines AS (
  UPDATE usage_lines u SET cost = r.cost, charged = r.charged FROM lines r WHERE u.id = r.id
), new_restorations AS (
  UPDATE restorations t SET own_cost = r.own_cost, shared_cost = r.shared_cost,
    retake_cost = r.retake_cost
  FROM restorations_costed r WHERE t.id = r.id
), new_costs AS (
  INSERT INTO restoration_costs (practice_id, restoration_id, category, cost)
  SELECT current_practice(), r.restoration_id, r.category, r.cost FROM costs r
  ON CONFLICT (restoration_id, category) DO UPDATE SET cost = excluded.cost
), gone AS (
  DELETE FROM restoration_costs c USING restorations_costed r
  WHERE c.restoration_id = r.id AND NOT EXISTS (
    SELECT FROM costs n WHERE n.restoration_id = c.restoration_id AND n.category = c.category)
)
UPDATE visits v SET material_cost = r.material_cost, retake_cost = r.retake_cost,
  estimated = r.estimated
FROM input i, json_to_recordset(i.doc->'visits') AS r(id uuid, material_cost numeric,
  retake_cost numeric, estimated boolean)
WHERE v.id = r.id`;

/** Costs visits anew from their movements and from what is still open of their shortfalls. */
export async function recostVisits(
  tx: Tx,
  actor: Actor,
  visitIds: readonly string[],
): Promise<void> {
  await tx.query(LOCK, [visitIds]);
  const visits = await tx.query<VisitRow>(LOAD, [visitIds]);
  const step = currencyStep(actor.currency);
  const costed = visits.map((visit) => recost(visit, step));
  const doc = {
    lines: costed.flatMap((c) => c.lines),
    restorations: costed.flatMap((c) => c.restorations),
    costs: costed.flatMap((c) => c.costs),
    visits: costed.map((c) => c.visit),
  };
  await tx.query(WRITE, [JSON.stringify(doc)]);
}

function recost(visit: VisitRow, step: bigint) {
  const restorations = visit.restorations.map(
    (r): CostedRestoration => ({
      tooth: r.tooth,
      minutes: r.minutes,
      surfaces: r.surfaces.length,
      redo: r.redo,
    }),
  );
  const position = new Map(visit.restorations.map((r, i) => [r.id, i]));
  const lines = visit.lines.map((line) => ({ line, ...lineCost(line) }));
  const costedLines = lines.map(
    ({ line, cost }): CostedLine => ({
      restoration:
        line.restoration_id === null ? null : (position.get(line.restoration_id) ?? null),
      tooth: line.tooth,
      attempt: line.attempt,
      category: line.category,
      cost,
    }),
  );
  const cost = attributeCost(restorations, costedLines, visit.cost_share_key, step);
  return {
    lines: lines.map(({ line, cost: of, charged }) => ({
      id: line.id,
      cost: formatMoney(of),
      charged: formatQuantity(charged),
    })),
    restorations: visit.restorations.map((r, i) => ({
      id: r.id,
      ...costColumns(cost.restorations[i]),
    })),
    costs: visit.restorations.flatMap((r, i) => costRows(r.id, cost.restorations[i])),
    visit: {
      id: visit.id,
      material_cost: formatMoney(cost.total),
      retake_cost: formatMoney(cost.retake),
      estimated: visit.lines.some((line) => line.open !== null),
    },
  };
}

function lineCost(line: LineRow) {
  const open = quantity(line.open ?? '0');
  const estimate = shortfallCost(open, money(line.unit_cost ?? '0'));
  return {
    cost: moneyFromMicro(money(line.moved_cost) + estimate),
    charged: quantityFromMicro(quantity(line.moved) + open),
  };
}
