import type pg from 'pg';
import type { SmallBook } from '../../book/book.js';

/** Fills a practice's book with thousands of rows of everything, straight in the database. */
export async function fillWithRows(owner: pg.Client, s: SmallBook, rows: number): Promise<void> {
  const { practiceId, personId } = s.book.practice.owner;
  const insert = (sql: string) => owner.query(sql.replaceAll(':rows', String(rows)));
  const id = (kind: string) => `md5('${kind} ' || n)::uuid`;
  const all = `FROM generate_series(1, :rows) n`;
  const p = `'${practiceId}'::uuid`;
  await insert(`INSERT INTO consumables (id, practice_id, name, category, stock_unit, shade, reorder_at)
    SELECT ${id('c')}, ${p}, 'Paste number ' || lpad(n::text, 5, '0'), 'Category ' || n % 30, 'g',
      'Body ' || n % 9, 5 ${all}`);
  await insert(`INSERT INTO presentations (id, practice_id, consumable_id, name, dispensing,
      containers_per_pack, content_per_container, list_price)
    SELECT ${id('p')}, ${p}, ${id('c')}, 'Syringe 4 g', 'multi-use', 1, 4, 72 ${all}`);
  await insert(`INSERT INTO lots (id, practice_id, consumable_id, lot_number, expires_on)
    SELECT ${id('l')}, ${p}, ${id('c')}, 'R' || n, date '2027-01-01' + n % 700 ${all}`);
  await insert(`INSERT INTO deliveries (id, practice_id, supplier_id, received_on, reference,
      goods_total, landed_total, recorded_by)
    SELECT ${id('d')}, ${p}, '${s.supplier}', date '2026-01-05' + n % 100, 'DN-' || n, 72, 72,
      '${personId}' ${all}`);
  await insert(`INSERT INTO layers (id, practice_id, delivery_id, line_number, lot_id, consumable_id,
      presentation_id, location_id, packs, pack_price, dispensing, content_per_container,
      received_on, expires_on, lot_status, received, landed_cost)
    SELECT ${id('y')}, ${p}, ${id('d')}, 1, ${id('l')}, ${id('c')}, ${id('p')}, '${s.store}', 1, 72,
      'multi-use', 4, date '2026-01-05' + n % 100, date '2027-01-01' + n % 700, 'released', 4, 72
    ${all}`);
  await insert(`INSERT INTO holdings (id, practice_id, layer_id, location_id, on_hand)
    SELECT ${id('h')}, ${p}, ${id('y')}, '${s.store}', 4 ${all}`);
  await insert(`INSERT INTO movements (id, practice_id, layer_id, from_account, to_account,
      to_holding_id, to_location_id, quantity, cost, occurred_on, recorded_by)
    SELECT ${id('m')}, ${p}, ${id('y')}, 'supplier', 'location', ${id('h')}, '${s.store}', 4, 72,
      date '2026-01-05' + n % 100, '${personId}' ${all}`);
  await insert(`INSERT INTO visits (id, practice_id, chart_reference, visited_on, dentist_id,
      location_id, staff_count, cost_share_key, material_cost, retake_cost, estimated, recorded_by)
    SELECT ${id('v')}, ${p}, 'M-' || n, date '2026-01-10' + n % 110,
      '${s.book.practice.people.dentist.id}', '${s.room}', 2, 'equal', 8 + n % 5, 0, false,
      '${personId}' ${all}`);
  await insert(`INSERT INTO restorations (id, practice_id, visit_id, position, tooth, surfaces,
      reason, template_id, template_version, shades, attempts, cycles, volume_mm3, depth_mm,
      minutes, own_cost, shared_cost, retake_cost)
    SELECT ${id('r')}, ${p}, ${id('v')}, 1, 11 + n % 8, 'M', 'decay', '${s.template}', 1, '{}', 1, 1,
      12, 2, 40, 8 + n % 5, 0, 0 ${all}`);
  await insert(`INSERT INTO restoration_costs (practice_id, restoration_id, category, cost)
    SELECT ${p}, ${id('r')}, 'composite', 8 + n % 5 ${all}`);
  await owner.query('ANALYZE');
}
