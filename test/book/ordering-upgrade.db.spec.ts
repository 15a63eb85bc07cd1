import { afterAll, beforeAll, expect, it } from '@jest/globals';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import pg from 'pg';
import { migrateDatabase } from '#lib/platform';
import { createApp } from '../../apps/api/src/index.js';
import { readMigrations } from '../../libs/platform/src/migrate/migration-files.js';
import { ReceiveDelivery } from '../../libs/stock/src/app/receive-delivery.js';
import { actor, fillBook, idOf } from '../harness/book-rows.js';
import { createBareDatabase, type TestDatabase } from '../harness/database.js';
import { expectRulesHold } from './invariants.js';

// A book that was filled before orders, booked visits, kits and imports were known: after migrating it
// says of everything that was in it exactly what it said before, and the work goes on.

const FIRST_NEW = '20261127160000-purchasing-create-orders.sql';

let database: TestDatabase;
let owner: pg.Pool;
let before: Record<string, unknown[]>;
let app: NestFastifyApplication;

const SAID = {
  balances: `SELECT layer_id, received, on_hand, used, wasted, returned, count_difference, cost_in,
               cost_out, balanced FROM layer_balances ORDER BY layer_id`,
  deliveries: `SELECT id, supplier_id, received_on::text, reference, freight, discount, spread_key,
                 goods_total, landed_total FROM deliveries ORDER BY id`,
  visits: 'SELECT id, material_cost, retake_cost, estimated, reversed_at FROM visits ORDER BY id',
  restorations: 'SELECT id, own_cost, shared_cost, retake_cost FROM restorations ORDER BY id',
  movements: 'SELECT to_jsonb(m) AS m FROM movements m ORDER BY sequence',
  months: `SELECT month::text, sum(restorations)::int AS n, sum(fee) AS fee, sum(material) AS material
           FROM contribution_months GROUP BY month ORDER BY month`,
};

async function said(): Promise<Record<string, unknown[]>> {
  const answers: Record<string, unknown[]> = {};
  for (const [name, sql] of Object.entries(SAID)) answers[name] = (await owner.query(sql)).rows;
  return answers;
}

beforeAll(async () => {
  database = await createBareDatabase();
  await migrateDatabase(
    database.url,
    readMigrations().filter(({ file }) => file < FIRST_NEW),
  );
  owner = new pg.Pool({ connectionString: database.url, max: 2 });
  const client = await owner.connect();
  await fillBook(client);
  await client.query(`SELECT set_config('traybook.practice_id', $1, false)`, [idOf.practice(1)]);
  await client.query('SELECT fold_contributions()');
  client.release(true);
  before = await said();
  const { applied } = await migrateDatabase(database.url);
  expect(applied[0]).toBe(FIRST_NEW);
  app = await createApp({ databaseUrl: database.url, logLevel: 'error' });
});

afterAll(async () => {
  await app.close();
  await owner.end();
  await database.drop();
});

it('says of what was there what it said before', async () => {
  expect(before.months?.length).toBeGreaterThan(0);
  expect(await said()).toEqual(before);
  await expectRulesHold(owner);
});

it('folds the months anew as they were', async () => {
  await owner.query(`INSERT INTO contribution_changes (practice_id, month)
    SELECT DISTINCT practice_id, month FROM contribution_months`);
  await owner.query('SELECT fold_contributions(100)');
  expect((await said()).months).toEqual(before.months);
});

it('takes in goods as before', async () => {
  const receive = app.get(ReceiveDelivery, { strict: false });
  const { body } = await receive.run(actor, 'after-the-upgrade', {
    supplierId: '00000003-0000-7000-8000-000000000001',
    receivedOn: '2026-04-20',
    lines: [
      {
        presentationId: '00000006-0000-7000-8000-000000000002',
        packs: 1,
        packPrice: '60',
        locationId: '00000004-0000-7000-8000-000000000002',
        lotNumber: 'LX-2',
        expiresOn: '2028-01-31',
      },
    ],
  });
  expect(body).toMatchObject({ landedTotal: '60.00' });
  const { rows } = await owner.query(
    'SELECT duty, sample FROM layers JOIN deliveries d ON d.id = delivery_id',
  );
  expect(rows).toEqual(Array.from({ length: 3 }, () => ({ duty: '0.000000', sample: false })));
  await expectRulesHold(owner);
});
