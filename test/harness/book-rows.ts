import type pg from 'pg';
import type { Actor } from '#lib/platform';

/** The id of the n-th row of a table in the book below; the first digits tell the table. */
export const idOf = {
  practice: (n: number) => id(1, n),
  person: (n: number) => id(2, n),
  consumable: (n: number) => id(5, n),
  lot: (n: number) => id(7, n),
  delivery: (n: number) => id(8, n),
  layer: (n: number) => id(9, n),
  holding: (n: number) => id(10, n),
  template: (n: number) => id(11, n),
  visit: (n: number) => id(12, n),
  restoration: (n: number) => id(13, n),
  line: (n: number) => id(14, n),
  movement: (n: number) => id(20, n),
};

function id(table: number, n: number): string {
  const hex = (value: number, digits: number) => value.toString(16).padStart(digits, '0');
  return `${hex(table, 8)}-0000-7000-8000-${hex(n, 12)}`;
}

export const actor: Actor = {
  practiceId: idOf.practice(1),
  practiceName: 'North',
  timeZone: 'Europe/Vienna',
  currency: 'EUR',
  toothNotation: 'universal',
  costShareKey: 'equal',
  expiryWarningDays: 60,
  personId: idOf.person(1),
  displayName: 'Mira Holt',
  signInName: 'mira',
  role: 'owner',
};
export const stranger: Actor = { ...actor, practiceId: idOf.practice(2) };

/**
 * Paste (lot LX-1, 10 g for 100.00) and adhesive (another lot LX-1, 5 mL for 50.00).
 * Visit 1: three restorations, two of them on one tooth, with lines of every kind; costs 6.00.
 * Visit 2, same patient: a retake, and adhesive that the book had none of; costs 8.00.
 * Visit 3: reversed. Beside them: a write-off, one that was undone, a return, a count, a move.
 */
const BOOK = `
CREATE FUNCTION pg_temp.i(k int, n int) RETURNS uuid LANGUAGE sql IMMUTABLE AS $f$
  SELECT (lpad(to_hex(k), 8, '0') || '-0000-7000-8000-' || lpad(to_hex(n), 12, '0'))::uuid $f$;
CREATE FUNCTION pg_temp.p() RETURNS uuid LANGUAGE sql IMMUTABLE AS $f$ SELECT pg_temp.i(1, 1) $f$;
INSERT INTO practices (id, name, time_zone, currency)
VALUES (pg_temp.i(1, 1), 'North', 'Europe/Vienna', 'EUR'),
       (pg_temp.i(1, 2), 'South', 'Europe/Vienna', 'EUR');
INSERT INTO people (id, practice_id, display_name, sign_in_name, password_hash, role)
VALUES (pg_temp.i(2, 1), pg_temp.p(), 'Mira Holt', 'mira', 'x', 'owner'),
       (pg_temp.i(2, 2), pg_temp.p(), 'Jon Weir', 'jon', 'x', 'dentist');
INSERT INTO suppliers (id, practice_id, name)
VALUES (pg_temp.i(3, 1), pg_temp.p(), 'Northgate Supplies');
INSERT INTO locations (id, practice_id, name, kind)
VALUES (pg_temp.i(4, 1), pg_temp.p(), 'Store', 'store'),
       (pg_temp.i(4, 2), pg_temp.p(), 'Room 2', 'room');
INSERT INTO consumables (id, practice_id, name, category, stock_unit)
VALUES (pg_temp.i(5, 1), pg_temp.p(), 'Paste', 'paste', 'g'),
       (pg_temp.i(5, 2), pg_temp.p(), 'Adhesive', 'adhesive', 'mL');
INSERT INTO presentations (id, practice_id, consumable_id, name, dispensing, containers_per_pack,
  content_per_container)
VALUES (pg_temp.i(6, 1), pg_temp.p(), pg_temp.i(5, 1), 'Syringe', 'multi-use', 1, 10),
       (pg_temp.i(6, 2), pg_temp.p(), pg_temp.i(5, 2), 'Bottle', 'multi-use', 1, 5);
INSERT INTO lots (id, practice_id, consumable_id, lot_number, expires_on, status)
VALUES (pg_temp.i(7, 1), pg_temp.p(), pg_temp.i(5, 1), 'LX-1', '2027-01-31', 'released'),
       (pg_temp.i(7, 2), pg_temp.p(), pg_temp.i(5, 2), 'LX-1', '2027-01-31', 'recalled'),
       (pg_temp.i(7, 3), pg_temp.p(), pg_temp.i(5, 2), NULL, NULL, 'released');
INSERT INTO lot_status_changes (id, practice_id, lot_id, status, note, recorded_by)
VALUES (pg_temp.i(16, 1), pg_temp.p(), pg_temp.i(7, 2), 'recalled', 'Notice of the maker.',
        pg_temp.i(2, 1));
INSERT INTO deliveries (id, practice_id, supplier_id, received_on, reference, goods_total,
  landed_total, recorded_by)
VALUES (pg_temp.i(8, 1), pg_temp.p(), pg_temp.i(3, 1), '2026-01-10', 'DN-2041', 150, 150,
        pg_temp.i(2, 1));
INSERT INTO layers (id, practice_id, delivery_id, line_number, lot_id, consumable_id,
  presentation_id, location_id, packs, pack_price, dispensing, content_per_container, received_on,
  expires_on, lot_status, received, landed_cost, out_quantity, out_cost)
VALUES (pg_temp.i(9, 1), pg_temp.p(), pg_temp.i(8, 1), 1, pg_temp.i(7, 1), pg_temp.i(5, 1),
        pg_temp.i(6, 1), pg_temp.i(4, 1), 1, 100, 'multi-use', 10, '2026-01-10', '2027-01-31',
        'released', 10, 100, 2.7, 27),
       (pg_temp.i(9, 2), pg_temp.p(), pg_temp.i(8, 1), 2, pg_temp.i(7, 2), pg_temp.i(5, 2),
        pg_temp.i(6, 2), pg_temp.i(4, 1), 1, 50, 'multi-use', 5, '2026-01-10', '2027-01-31',
        'recalled', 5, 50, 0.1, 1);
INSERT INTO holdings (id, practice_id, layer_id, location_id, on_hand, opened_on)
VALUES (pg_temp.i(10, 1), pg_temp.p(), pg_temp.i(9, 1), pg_temp.i(4, 1), 5.3, NULL),
       (pg_temp.i(10, 2), pg_temp.p(), pg_temp.i(9, 2), pg_temp.i(4, 1), 4.9, NULL),
       (pg_temp.i(10, 3), pg_temp.p(), pg_temp.i(9, 1), pg_temp.i(4, 2), 2, NULL);
INSERT INTO procedure_templates (id, practice_id, name, latest_version)
VALUES (pg_temp.i(11, 1), pg_temp.p(), '=Posterior filling', 1),
       (pg_temp.i(11, 2), pg_temp.p(), 'Front filling', 2);
INSERT INTO template_versions (template_id, version, practice_id, minutes, layer_thickness_mm,
  recorded_by)
VALUES (pg_temp.i(11, 1), 1, pg_temp.p(), 30, 2, pg_temp.i(2, 1)),
       (pg_temp.i(11, 2), 1, pg_temp.p(), 30, 2, pg_temp.i(2, 1));
INSERT INTO visits (id, practice_id, chart_reference, visited_on, dentist_id, location_id,
  staff_count, cost_share_key, material_cost, retake_cost, estimated, recorded_by, reversed_at)
SELECT pg_temp.i(12, n), pg_temp.p(), chart, day, pg_temp.i(2, dentist), pg_temp.i(4, 2), 2,
       'equal', cost, retake, n = 2, pg_temp.i(2, 1), reversed
FROM (VALUES (1, 'C/1', date '2026-03-02', 1, 6, 0, NULL::timestamptz),
             (2, 'c/1', date '2026-04-10', 2, 8, 2, NULL),
             (3, 'C-9', date '2026-04-11', 2, 10, 0, '2026-04-12')
     ) v (n, chart, day, dentist, cost, retake, reversed);
INSERT INTO restorations (id, practice_id, visit_id, position, tooth, surfaces, reason, template_id,
  template_version, shades, attempts, cycles, volume_mm3, depth_mm, minutes, own_cost, shared_cost,
  retake_cost)
SELECT pg_temp.i(13, n), pg_temp.p(), pg_temp.i(12, visit), n, tooth, surfaces, reason,
       pg_temp.i(11, template), 1, '{}', attempts, 1, 20, 2, 30, own, shared, retake
FROM (VALUES (1, 1, 11, 'MI', 'decay', 2, 1, 0, 1.34, 0),
             (2, 1, 11, 'D', 'cosmetic', 2, 1, 0, 1.33, 0),
             (3, 1, 36, 'MO', 'decay', 1, 1, 3, 0.33, 0),
             (4, 2, 36, 'O', 'cosmetic', 1, 2, 8, 0, 2),
             (5, 3, 36, 'O', 'cosmetic', 1, 1, 10, 0, 0)
     ) r (n, visit, tooth, surfaces, reason, template, attempts, own, shared, retake);
INSERT INTO restoration_costs (practice_id, restoration_id, category, cost)
SELECT pg_temp.p(), pg_temp.i(13, n), category, cost
FROM (VALUES (1, 'paste', 1), (1, 'adhesive', 0.34), (2, 'paste', 1), (2, 'adhesive', 0.33),
             (3, 'paste', 3), (3, 'adhesive', 0.33), (4, 'paste', 7), (4, 'adhesive', 1),
             (5, 'paste', 10)) k (n, category, cost);
INSERT INTO usage_lines (id, practice_id, visit_id, position, restoration_id, tooth, attempt,
  consumable_id, driver, planned, placed, dispensed, charged, cost)
SELECT pg_temp.i(14, n), pg_temp.p(), pg_temp.i(12, visit), n, pg_temp.i(13, restoration), tooth,
       attempt, pg_temp.i(5, consumable), 'tooth', q, q / 2, q, q, cost
FROM (VALUES (1, 1, 3, NULL::int, 1, 1, 0.3, 3), (2, 1, NULL, 11, 1, 1, 0.2, 2),
             (3, 1, NULL, NULL, 1, 2, 0.1, 1), (4, 2, 4, NULL, 1, 1, 0.5, 5),
             (5, 2, 4, NULL, 2, 1, 0.2, 2), (6, 2, 4, NULL, 1, 2, 0.1, 1),
             (7, 3, 5, NULL, 1, 1, 1, 10)
     ) u (n, visit, restoration, tooth, attempt, consumable, q, cost);
INSERT INTO shortfalls (id, practice_id, usage_line_id, visit_id, consumable_id, location_id,
  lot_id, used_on, quantity, unit_cost, cost_known)
VALUES (pg_temp.i(15, 1), pg_temp.p(), pg_temp.i(14, 6), pg_temp.i(12, 2), pg_temp.i(5, 2),
        pg_temp.i(4, 2), pg_temp.i(7, 2), '2026-04-10', 0.1, 10, true);
INSERT INTO movements (id, practice_id, layer_id, from_account, to_account, from_holding_id,
  from_location_id, to_holding_id, to_location_id, quantity, cost, occurred_on, usage_line_id,
  visit_id, sureness, waste_reason, reverses_id, recorded_by)
SELECT pg_temp.i(20, n), pg_temp.p(), pg_temp.i(9, layer), a, b,
       CASE a WHEN 'location' THEN pg_temp.i(10, layer) END,
       CASE a WHEN 'location' THEN pg_temp.i(4, 1) END,
       CASE b WHEN 'location'
         THEN CASE a WHEN 'location' THEN pg_temp.i(10, 3) ELSE pg_temp.i(10, layer) END END,
       CASE b WHEN 'location' THEN pg_temp.i(4, CASE a WHEN 'location' THEN 2 ELSE 1 END) END,
       q, cost, day, pg_temp.i(14, line),
       (SELECT visit_id FROM usage_lines WHERE id = pg_temp.i(14, line)),
       sure, waste, pg_temp.i(20, undoes), pg_temp.i(2, 1)
FROM (VALUES
  (1, 1, 'supplier', 'location', 10, 100, date '2026-01-10', NULL::int, NULL, NULL, NULL::int),
  (2, 2, 'supplier', 'location', 5, 50, '2026-01-10', NULL, NULL, NULL, NULL),
  (3, 1, 'location', 'visit', 0.3, 3, '2026-03-02', 1, 'scanned', NULL, NULL),
  (4, 1, 'location', 'visit', 0.2, 2, '2026-03-02', 2, 'assumed', NULL, NULL),
  (5, 2, 'location', 'visit', 0.1, 1, '2026-03-02', 3, 'open container', NULL, NULL),
  (6, 1, 'location', 'visit', 0.5, 5, '2026-04-10', 4, 'assumed', NULL, NULL),
  (7, 1, 'location', 'visit', 0.2, 2, '2026-04-10', 5, 'scanned', NULL, NULL),
  (8, 1, 'location', 'visit', 1, 10, '2026-04-11', 7, 'assumed', NULL, NULL),
  (9, 1, 'visit', 'location', 1, 10, '2026-04-12', 7, 'assumed', NULL, 8),
  (10, 1, 'location', 'waste', 0.4, 4, '2026-04-13', NULL, NULL, 'wrong shade opened', NULL),
  (11, 1, 'location', 'waste', 0.6, 6, '2026-04-13', NULL, NULL, 'damaged', NULL),
  (12, 1, 'waste', 'location', 0.6, 6, '2026-04-14', NULL, NULL, NULL, 11),
  (13, 1, 'location', 'return', 1, 10, '2026-04-15', NULL, NULL, NULL, NULL),
  (14, 1, 'location', 'count', 0.1, 1, '2026-04-16', NULL, NULL, NULL, NULL),
  (15, 1, 'location', 'location', 2, 0, '2026-04-17', NULL, NULL, NULL, NULL)
) m (n, layer, a, b, q, cost, day, line, sure, waste, undoes)`;

export async function fillBook(client: pg.Client): Promise<void> {
  await client.query(BOOK);
}
