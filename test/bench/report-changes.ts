import type pg from 'pg';

/**
 * Ten thousand visits more, copies of ones that are spread over the whole book, with the triggers
 * that a posting has. They have no movements, so that from here on only restorations can be checked.
 */
const POST = `
BEGIN;
CREATE TEMP TABLE copied AS
SELECT id, gen_random_uuid() AS new_id FROM (
  SELECT id, row_number() OVER (ORDER BY visited_on, id) AS n, count(*) OVER () AS visits
  FROM visits WHERE reversed_at IS NULL
) v WHERE n % greatest(visits / $N, 1) = 0 LIMIT $N;
CREATE TEMP TABLE copied_restorations AS
SELECT r.id, gen_random_uuid() AS new_id, c.new_id AS visit_id
FROM copied c JOIN restorations r ON r.visit_id = c.id;
INSERT INTO visits (id, practice_id, chart_reference, visited_on, dentist_id, location_id,
  staff_count, cost_share_key, material_cost, retake_cost, estimated, recorded_by)
SELECT c.new_id, practice_id, chart_reference, visited_on, dentist_id, location_id, staff_count,
       cost_share_key, material_cost, retake_cost, estimated, recorded_by
FROM copied c JOIN visits v ON v.id = c.id;
INSERT INTO restorations (id, practice_id, visit_id, position, tooth, surfaces, reason, template_id,
  template_version, shades, attempts, cycles, volume_mm3, depth_mm, minutes, own_cost, shared_cost,
  retake_cost)
SELECT c.new_id, practice_id, c.visit_id, position, tooth, surfaces, reason, template_id,
       template_version, shades, attempts, cycles, volume_mm3, depth_mm, minutes, own_cost,
       shared_cost, retake_cost
FROM copied_restorations c JOIN restorations r ON r.id = c.id;
INSERT INTO restoration_costs (practice_id, restoration_id, category, cost)
SELECT practice_id, c.new_id, category, cost
FROM copied_restorations c JOIN restoration_costs r ON r.restoration_id = c.id;
DROP TABLE copied, copied_restorations;
COMMIT`;

export async function postMany(client: pg.Client, visits: number): Promise<void> {
  await client.query(POST.replaceAll('$N', String(visits)));
}

export async function waitingChanges(client: pg.Client): Promise<number> {
  const { rows } = await client.query<{ n: number }>('SELECT count(*)::int AS n FROM cost_changes');
  return rows[0]?.n ?? 0;
}
