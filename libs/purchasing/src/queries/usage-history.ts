import type { IsoDate, Tx } from '#lib/platform';
import { microOf } from '#lib/stock';
import { epochDay } from '../domain/forecast/calendar.js';
import type { DayUse } from '../domain/forecast/usage-history.js';

/** Use further back than this says little, and costs time. */
const LONGEST_HISTORY_DAYS = 1096;

/**
 * What visits used by consumable and day of the visit, before a day. What left the stock comes from
 * the movements, counter-entries taken off; what the book had none of is the shortfall, whether it
 * was settled since (by movements that name it) or is still open, so it is counted once, on the day
 * of the visit. Returns, counts and waste are no movements of a visit. $1 practice, $2 the day,
 * $3 how far back, $4 the place whose rooms count; NULL: all.
 */
const USAGE = `
WITH RECURSIVE places AS (
  SELECT id FROM locations WHERE practice_id = $1 AND id = $4
  UNION SELECT l.id FROM places p JOIN locations l ON l.parent_id = p.id
), wanted AS MATERIALIZED (
  SELECT id, visited_on FROM visits
  WHERE practice_id = $1 AND reversed_at IS NULL AND visited_on < $2::date
    AND visited_on >= $2::date - $3::integer
    AND ($4::uuid IS NULL OR location_id IN (SELECT id FROM places))
), used AS (
  SELECT m.usage_line_id, v.visited_on AS day, m.shortfall_id IS NOT NULL AS missing,
         CASE m.to_account WHEN 'visit' THEN m.quantity ELSE -m.quantity END AS quantity
  FROM wanted v JOIN movements m ON m.visit_id = v.id
  UNION ALL
  SELECT s.usage_line_id, v.visited_on, true, s.quantity - s.settled
  FROM wanted v JOIN shortfalls s ON s.visit_id = v.id
  WHERE s.settled < s.quantity AND s.cancelled_at IS NULL
), daily AS (
  SELECT u.consumable_id, d.day,
         coalesce(sum(d.quantity) FILTER (WHERE NOT d.missing), 0) AS issued,
         coalesce(sum(d.quantity) FILTER (WHERE d.missing), 0) AS shortfall,
         coalesce(sum(d.quantity) FILTER (WHERE u.attempt > 1 OR r.redo_of IS NOT NULL), 0) AS again
  FROM used d JOIN usage_lines u ON u.id = d.usage_line_id
  LEFT JOIN restorations r ON r.id = u.restoration_id
  GROUP BY u.consumable_id, d.day HAVING sum(d.quantity) <> 0
)
SELECT consumable_id AS "consumableId",
       string_agg(concat_ws(' ', day, issued, shortfall, again), ',' ORDER BY day) AS days
FROM daily GROUP BY consumable_id ORDER BY consumable_id`;

export interface UsageText {
  readonly consumableId: string;
  /** 'day issued shortfall retakes', by commas: read by `usesOf`, and compared as it is. */
  readonly days: string;
}

/** The use of every consumable before a day; at a place, that of its rooms and all within. */
export function loadUsage(
  tx: Tx,
  today: IsoDate,
  locationId: string | null = null,
): Promise<UsageText[]> {
  return tx.query<UsageText>(USAGE, [tx.practiceId, today, LONGEST_HISTORY_DAYS, locationId]);
}

export function usesOf(days: string): DayUse[] {
  return days.split(',').map((text) => {
    const [day = '', issued = '', shortfall = '', retakes = ''] = text.split(' ');
    return {
      day: epochDay(day),
      issued: microOf(issued),
      shortfall: microOf(shortfall),
      retakes: microOf(retakes),
    };
  });
}

const VISIT_DAYS = `
SELECT DISTINCT visited_on::text AS day FROM visits
WHERE practice_id = $1 AND reversed_at IS NULL AND visited_on < $2::date
  AND visited_on >= $2::date - $3::integer ORDER BY 1`;

/** The days before a day on which the practice saw anybody. */
export async function loadVisitDays(tx: Tx, today: IsoDate): Promise<IsoDate[]> {
  const parameters = [tx.practiceId, today, LONGEST_HISTORY_DAYS];
  return (await tx.query<{ day: IsoDate }>(VISIT_DAYS, parameters)).map((row) => row.day);
}
