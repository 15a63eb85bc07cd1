import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { DataSource } from 'typeorm';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import {
  asOwner,
  createTestDatabase,
  type TestDatabase,
  testDataSource,
} from '../../../../test/harness/database.js';
import { FindAlerts } from './find-alerts.js';
import { ListAlerts } from './list-alerts.js';

class FixedClock extends Clock {
  /** Late in the evening in UTC: in Vienna it is the next day already. */
  override now(): Date {
    return new Date('2026-05-03T22:30:00Z');
  }
}

const id = (table: number, n: number) =>
  `0000000${table}-0000-7000-8000-${String(n).padStart(12, '0')}`;

const actor: Actor = {
  practiceId: id(1, 1),
  practiceName: 'North',
  timeZone: 'Europe/Vienna',
  currency: 'EUR',
  toothNotation: 'iso',
  costShareKey: 'equal',
  expiryWarningDays: 30,
  personId: id(2, 1),
  displayName: 'Mira Holt',
  signInName: 'mira',
  role: 'manager',
};

// Today is 4 May 2026. Each layer is one case; paste runs low, wedges ran out, tips are enough.
const BOOK = `
CREATE FUNCTION pg_temp.i(k int, n int) RETURNS uuid LANGUAGE sql IMMUTABLE AS $f$
  SELECT ('0000000' || k || '-0000-7000-8000-' || lpad(n::text, 12, '0'))::uuid $f$;
INSERT INTO practices (id, name, time_zone, currency)
VALUES (pg_temp.i(1, 1), 'North', 'Europe/Vienna', 'EUR'),
       (pg_temp.i(1, 2), 'South', 'Europe/Vienna', 'EUR');
INSERT INTO people (id, practice_id, display_name, sign_in_name, password_hash, role)
VALUES (pg_temp.i(2, 1), pg_temp.i(1, 1), 'Mira Holt', 'mira', 'x', 'manager');
INSERT INTO suppliers (id, practice_id, name)
VALUES (pg_temp.i(3, 1), pg_temp.i(1, 1), 'Northgate');
INSERT INTO locations (id, practice_id, name, kind)
VALUES (pg_temp.i(4, 1), pg_temp.i(1, 1), 'Store', 'store');
INSERT INTO consumables (id, practice_id, name, category, stock_unit, reorder_at, reorder_up_to,
  active)
VALUES (pg_temp.i(5, 1), pg_temp.i(1, 1), 'Paste', 'paste', 'g', 10, 20, true),
       (pg_temp.i(5, 2), pg_temp.i(1, 1), 'Wedge', 'wedge', 'piece', 50, NULL, true),
       (pg_temp.i(5, 3), pg_temp.i(1, 1), 'Tip', 'tip', 'piece', 0, NULL, true),
       (pg_temp.i(5, 4), pg_temp.i(1, 1), 'Old gel', 'gel', 'mL', 50, NULL, false);
INSERT INTO presentations (id, practice_id, consumable_id, supplier_id, name, dispensing,
  containers_per_pack, content_per_container, list_price, active)
VALUES (pg_temp.i(6, 1), pg_temp.i(1, 1), pg_temp.i(5, 1), pg_temp.i(3, 1), 
        'Syringe', 'multi-use', 1, 4, 10, true),
       (pg_temp.i(6, 2), pg_temp.i(1, 1), pg_temp.i(5, 1), NULL, 
        'Big syringe', 'multi-use', 2, 4, 60, true),
       (pg_temp.i(6, 3), pg_temp.i(1, 1), pg_temp.i(5, 1), NULL, 
        'Gone', 'multi-use', 1, 4, 1, false),
       (pg_temp.i(6, 4), pg_temp.i(1, 1), pg_temp.i(5, 3), NULL, 
        'Bag', 'by-piece', 1, 100, NULL, true);
INSERT INTO lots (id, practice_id, consumable_id, lot_number, expires_on, status)
SELECT pg_temp.i(7, n), pg_temp.i(1, 1), pg_temp.i(5, c), 'LX-' || n, expires, status
FROM (VALUES (1, 1, date '2028-01-01', 'released'), (2, 1, '2026-05-03', 'released'),
             (3, 1, '2026-05-04', 'released'), (4, 1, '2026-06-03', 'released'),
             (5, 1, '2026-06-04', 'released'), (6, 1, '2028-01-01', 'recalled'),
             (7, 1, '2026-01-01', 'quarantined'), (8, 3, NULL, 'released')
     ) t (n, c, expires, status);
INSERT INTO deliveries (id, practice_id, supplier_id, received_on, goods_total, landed_total,
  recorded_by)
VALUES (pg_temp.i(8, 1), pg_temp.i(1, 1), pg_temp.i(3, 1), '2026-01-10', 8, 8,
        pg_temp.i(2, 1));
INSERT INTO layers (id, practice_id, delivery_id, line_number, lot_id, consumable_id,
  presentation_id, location_id, packs, pack_price, dispensing, content_per_container, received_on,
  expires_on, lot_status, received, landed_cost)
SELECT pg_temp.i(9, n), pg_temp.i(1, 1), pg_temp.i(8, 1), n, t.id, t.consumable_id,
       pg_temp.i(6, CASE n WHEN 8 THEN 4 ELSE 1 END), pg_temp.i(4, 1), 1, 32, 'multi-use', 4,
       '2026-01-10', t.expires_on, t.status, 2, 1
FROM generate_series(1, 8) n JOIN lots t ON t.id = pg_temp.i(7, n);
INSERT INTO holdings (id, practice_id, layer_id, location_id, on_hand, opened_on, use_by)
SELECT ('00000010-0000-7000-8000-' || lpad(n::text, 12, '0'))::uuid,
       pg_temp.i(1, 1), pg_temp.i(9, n),
       pg_temp.i(4, 1), 1, NULL, NULL FROM generate_series(1, 8) n
UNION ALL
SELECT '00000010-0000-7000-8000-000000000009', pg_temp.i(1, 1), pg_temp.i(9, 1),
       pg_temp.i(4, 1), 1,
       date '2026-03-01', date '2026-04-30';
INSERT INTO visits (id, practice_id, chart_reference, visited_on, dentist_id, location_id,
  staff_count, cost_share_key, material_cost, retake_cost, estimated, recorded_by)
VALUES ('00000012-0000-7000-8000-000000000001', pg_temp.i(1, 1), 'C-1', '2026-04-01',
        pg_temp.i(2, 1),
        pg_temp.i(4, 1), 2, 'equal', 1, 0, true, pg_temp.i(2, 1));
INSERT INTO usage_lines (id, practice_id, visit_id, position, consumable_id, planned, placed,
  dispensed, charged, cost)
VALUES ('00000014-0000-7000-8000-000000000001', pg_temp.i(1, 1),
        '00000012-0000-7000-8000-000000000001', 1, pg_temp.i(5, 1), 1, 1, 1, 1, 8);
INSERT INTO shortfalls (id, practice_id, usage_line_id, visit_id, consumable_id, location_id,
  used_on, quantity, settled, unit_cost, cost_known, cancelled_at)
SELECT pg_temp.i(5, 100 + n), pg_temp.i(1, 1), '00000014-0000-7000-8000-000000000001',
       '00000012-0000-7000-8000-000000000001', pg_temp.i(5, 1), pg_temp.i(4, 1), '2026-04-01', 1,
       settled, 8, true, cancelled
FROM (VALUES (1, 0.5, NULL::timestamptz), (2, 1, NULL), (3, 0, '2026-04-02')
     ) s (n, settled, cancelled)`;

let database: TestDatabase;
let dataSource: DataSource;
let alerts: ListAlerts;

beforeAll(async () => {
  database = await createTestDatabase();
  const owner = await asOwner(database.url);
  await owner.query(BOOK);
  await owner.end();
  dataSource = await testDataSource(database.url);
  alerts = new ListAlerts(new UnitOfWork(dataSource), new FixedClock(), new FindAlerts());
});

afterAll(async () => {
  await dataSource.destroy();
  await database.drop();
});

describe('the reasons to act', () => {
  it('come the most urgent first, as of the day of the practice', async () => {
    const list = await alerts.run(actor, {});
    expect([list.asOf, list.withinDays]).toEqual(['2026-05-04', 30]);
    const shown = list.alerts.map((a) => [a.kind, a.lot?.lotNumber ?? a.consumable.name]);
    expect(shown).toEqual([
      ['recalled lot on hand', 'LX-7'],
      ['recalled lot on hand', 'LX-6'],
      ['expired on shelf', 'LX-2'],
      ['opened too long', 'LX-1'],
      ['open shortfall', 'Paste'],
      ['below reorder point', 'Wedge'],
      ['below reorder point', 'Paste'],
      ['expires within N days', 'LX-3'],
      ['expires within N days', 'LX-4'],
    ]);
  });

  it('reach as far ahead as is asked for', async () => {
    const soon = async (withinDays: string) => {
      const list = await alerts.run(actor, { withinDays });
      const kind = 'expires within N days';
      return list.alerts.filter((a) => a.kind === kind).map((a) => a.lot?.lotNumber);
    };
    expect(await soon('0')).toEqual(['LX-3']);
    expect(await soon('31')).toEqual(['LX-3', 'LX-4', 'LX-5']);
  });

  it('propose the offer that is cheapest at the price last paid', async () => {
    const list = await alerts.run(actor, {});
    const paste = list.alerts.find((a) => a.id === `below-reorder-point:${id(5, 1)}`);
    // Usable: lots 1, 3, 4 and 5, one gram each. The syringe last cost 32: the big one is cheaper.
    expect(paste?.figures.map((f) => [f.name, f.value])).toEqual([
      ['usable', '4'],
      ['open shortfall', '0.5'],
      ['position', '3.5'],
      ['reorder at', '10'],
      ['reorder up to', '20'],
      ['suggested packs', '3'],
      ['last price', '60.00'],
      ['order cost', '180.00'],
    ]);
  });

  it('leave settled and cancelled shortfalls out', async () => {
    const list = await alerts.run(actor, {});
    const shortfall = list.alerts.find((a) => a.kind === 'open shortfall');
    expect(shortfall?.figures.map((f) => f.value)).toEqual(['0.5', '1', '4.00']);
  });

  it('are none for another practice', async () => {
    expect((await alerts.run({ ...actor, practiceId: id(1, 2) }, {})).alerts).toEqual([]);
  });
});
