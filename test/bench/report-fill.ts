import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { CreatePractice } from '#lib/access';
import { createApp } from '../../apps/api/src/index.js';

const DENTISTS = 5;
const TEMPLATES = 12;

export interface ReportBook {
  readonly token: string;
  readonly practiceId: string;
  readonly personId: string;
  readonly templateId: string;
}

/** A practice with a signed-in owner, through the service itself. */
export async function openPractice(databaseUrl: string): Promise<Omit<ReportBook, 'templateId'>> {
  const app = await createApp({ databaseUrl, logLevel: 'error', poolSize: 2 });
  try {
    const password = 'a long pass phrase';
    const { practiceId, personId } = await app.get(CreatePractice, { strict: false }).run({
      practice: { name: 'Bench practice', timeZone: 'UTC', currency: 'EUR' },
      owner: { displayName: 'Bench', signInName: 'bench', password },
    });
    const payload = { signInName: 'bench', password };
    const session = await app.inject({ method: 'POST', url: '/api/session', payload });
    const cookie = String(session.headers['set-cookie']).split(';')[0] ?? '';
    const made = await app.inject({
      method: 'POST',
      url: '/api/session/tokens',
      headers: { cookie, 'idempotency-key': randomUUID() },
      payload: { name: 'bench' },
    });
    return { token: (JSON.parse(made.body) as { secret: string }).secret, practiceId, personId };
  } finally {
    await app.close();
  }
}

// Seven visits in ten restorations: three of seven visits restore two teeth. Visit lines are shared
// equally, and their cost is even where two share it, so that every share is whole cents.
const FILL = `
SET session_replication_role = 'replica';
SET synchronous_commit = off;
CREATE FUNCTION pg_temp.i(k int, n bigint) RETURNS uuid LANGUAGE sql IMMUTABLE AS $f$
  SELECT (lpad(to_hex(k), 8, '0') || '-0000-7000-8000-' || lpad(to_hex(n), 12, '0'))::uuid $f$;
CREATE FUNCTION pg_temp.p() RETURNS uuid LANGUAGE sql STABLE AS $f$
  SELECT id FROM practices LIMIT 1 $f$;
SELECT setseed(0.42);
INSERT INTO people (id, practice_id, display_name, sign_in_name, password_hash, role)
SELECT pg_temp.i(2, n), pg_temp.p(), 'Dentist ' || n, 'dentist' || n, 'x', 'dentist'
FROM generate_series(1, ${DENTISTS}) n;
INSERT INTO suppliers (id, practice_id, name) VALUES (pg_temp.i(3, 1), pg_temp.p(), 'Supplier');
INSERT INTO locations (id, practice_id, name, kind)
VALUES (pg_temp.i(4, 1), pg_temp.p(), 'Room', 'room');
INSERT INTO consumables (id, practice_id, name, category, stock_unit)
SELECT pg_temp.i(5, n), pg_temp.p(), c, c, 'g'
FROM unnest(ARRAY['paste', 'adhesive', 'set-up']) WITH ORDINALITY AS c(c, n);
INSERT INTO presentations (id, practice_id, consumable_id, name, dispensing, containers_per_pack,
  content_per_container)
SELECT pg_temp.i(6, n), pg_temp.p(), pg_temp.i(5, n), 'Pack', 'multi-use', 1, 100000000
FROM generate_series(1, 3) n;
INSERT INTO lots (id, practice_id, consumable_id, lot_number)
SELECT pg_temp.i(7, n), pg_temp.p(), pg_temp.i(5, n), 'L-' || n FROM generate_series(1, 3) n;
INSERT INTO deliveries (id, practice_id, supplier_id, received_on, goods_total, landed_total,
  recorded_by)
SELECT pg_temp.i(8, 1), pg_temp.p(), pg_temp.i(3, 1), '2021-01-01', 3e9, 3e9, pg_temp.i(2, 1);
INSERT INTO layers (id, practice_id, delivery_id, line_number, lot_id, consumable_id,
  presentation_id, location_id, packs, pack_price, dispensing, content_per_container, received_on,
  lot_status, received, landed_cost)
SELECT pg_temp.i(9, n), pg_temp.p(), pg_temp.i(8, 1), n, pg_temp.i(7, n), pg_temp.i(5, n),
       pg_temp.i(6, n), pg_temp.i(4, 1), 1, 1e9, 'multi-use', 1e9, '2021-01-01', 'released',
       1e9, 1e9
FROM generate_series(1, 3) n;
INSERT INTO holdings (id, practice_id, layer_id, location_id, on_hand)
SELECT pg_temp.i(10, n), pg_temp.p(), pg_temp.i(9, n), pg_temp.i(4, 1), 1e9
FROM generate_series(1, 3) n;
INSERT INTO procedure_templates (id, practice_id, name, latest_version)
SELECT pg_temp.i(11, n), pg_temp.p(), 'Template ' || n, 1 FROM generate_series(1, ${TEMPLATES}) n;
INSERT INTO template_versions (template_id, version, practice_id, minutes, assistant_minutes,
  layer_thickness_mm, recorded_by)
SELECT id, 1, practice_id, 40, 40, 2, pg_temp.i(2, 1) FROM procedure_templates;
CREATE TEMP TABLE plan AS
SELECT n, (n * 7 + 9) / 10 AS visit, 1 + (random() * ${TEMPLATES - 1})::int AS template,
       (ARRAY['decay', 'decay', 'fracture', 'wear', 'cosmetic'])[1 + floor(random() * 5)::int]
         AS reason, random() AS a, random() AS b, random() < 0.04 AS again
FROM generate_series(1, $N) n;
CREATE TEMP TABLE costed AS
SELECT n, visit, template, reason, again,
       round((150 + 90 * template) * (0.5 + a + b))::bigint AS paste,
       round(60 + 80 * b)::bigint AS adhesive, 90 + visit % 57 AS shared
FROM plan;
CREATE TEMP TABLE planned_visits AS
SELECT visit, date '2021-01-04' + (visit * 1825 / (SELECT max(visit) FROM costed))::int AS day,
       1 + (visit % ${DENTISTS})::int AS dentist, count(*) AS restorations,
       sum(paste + adhesive + shared) AS cost, sum(shared) AS shared,
       sum(adhesive) FILTER (WHERE again) AS again
FROM costed GROUP BY visit;
INSERT INTO visits (id, practice_id, chart_reference, visited_on, dentist_id, location_id,
  staff_count, cost_share_key, material_cost, retake_cost, estimated, recorded_by)
SELECT pg_temp.i(12, visit), pg_temp.p(), 'C-' || visit % 9000, day, pg_temp.i(2, dentist),
       pg_temp.i(4, 1), 2, 'equal', cost * 0.01, coalesce(again, 0) * 0.01, false, pg_temp.i(2, 1)
FROM planned_visits ORDER BY visit;
INSERT INTO restorations (id, practice_id, visit_id, position, tooth, surfaces, reason, template_id,
  template_version, shades, attempts, cycles, volume_mm3, depth_mm, minutes, own_cost, shared_cost,
  retake_cost)
SELECT pg_temp.i(13, n), pg_temp.p(), pg_temp.i(12, visit), n, 11 + n % 8, 'MO', reason,
       pg_temp.i(11, template), 1, '{}', CASE WHEN again THEN 2 ELSE 1 END, 1, 20, 2, 40,
       (paste + adhesive) * 0.01, shared * 0.01, CASE WHEN again THEN adhesive * 0.01 ELSE 0 END
FROM costed ORDER BY n;
INSERT INTO restoration_costs (practice_id, restoration_id, category, cost)
SELECT pg_temp.p(), pg_temp.i(13, n), category, cost * 0.01
FROM costed CROSS JOIN LATERAL (VALUES ('paste', paste), ('adhesive', adhesive),
  ('set-up', shared)) k(category, cost) ORDER BY n;
INSERT INTO usage_lines (id, practice_id, visit_id, position, restoration_id, tooth, attempt,
  consumable_id, driver, planned, placed, dispensed, charged, cost)
SELECT pg_temp.i(14, 3 * n + k), pg_temp.p(), pg_temp.i(12, visit), 3 * n + k, pg_temp.i(13, n),
       NULL::smallint, CASE WHEN k = 2 AND again THEN 2 ELSE 1 END, pg_temp.i(5, k), 'restoration',
       0.1, 0.05, 0.1, 0.1, cost * 0.01
FROM costed CROSS JOIN LATERAL (VALUES (1, paste), (2, adhesive)) l(k, cost)
UNION ALL
SELECT pg_temp.i(15, visit), pg_temp.p(), pg_temp.i(12, visit), 1, NULL, NULL, 1, pg_temp.i(5, 3),
       'visit', 0.1, 0, 0.1, 0.1, shared * 0.01
FROM planned_visits;
INSERT INTO movements (id, practice_id, layer_id, from_account, to_account, from_holding_id,
  from_location_id, quantity, cost, occurred_on, visit_id, usage_line_id, sureness, recorded_by)
SELECT gen_random_uuid(), u.practice_id, l.id, 'location', 'visit', h.id, h.location_id, 0.1,
       u.cost, '2026-01-01', u.visit_id, u.id, 'assumed', pg_temp.i(2, 1)
FROM usage_lines u JOIN layers l ON l.consumable_id = u.consumable_id
JOIN holdings h ON h.layer_id = l.id;
UPDATE layers l SET out_quantity = m.quantity, out_cost = m.cost
FROM (SELECT layer_id, sum(quantity) AS quantity, sum(cost) AS cost FROM movements GROUP BY 1) m
WHERE m.layer_id = l.id;
UPDATE holdings h SET on_hand = l.received - l.out_quantity FROM layers l WHERE l.id = h.layer_id;
SET session_replication_role = 'origin';
SELECT build_cost_spans(pg_temp.p());
ANALYZE`;

/** So many restorations over five years, with the usage lines and movements behind them. */
export async function fillRestorations(databaseUrl: string, restorations: number): Promise<void> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    for (const statement of FILL.replace('$N', String(restorations)).split(/;\n(?!\s)/)) {
      await client.query(statement);
    }
  } finally {
    await client.end();
  }
}
