import { afterAll, beforeAll, expect, it } from '@jest/globals';
import type pg from 'pg';
import type { DataSource } from 'typeorm';
import { migrateDatabase, UnitOfWork } from '#lib/platform';
import { readMigrations } from '../../libs/platform/src/migrate/migration-files.js';
import { RecordCharges } from '../../libs/pricing/src/app/record-charges.js';
import { ReportContributions } from '../../libs/pricing/src/queries/report-contributions.js';
import { actor, fillBook, idOf } from '../harness/book-rows.js';
import {
  asOwner,
  createBareDatabase,
  type TestDatabase,
  testDataSource,
} from '../harness/database.js';

// A book that was filled before charges were recorded: after migrating, what it holds is counted at
// the fee list, and its visits can be charged.

const CHARGES = '20261127100000-pricing-create-charges.sql';

let database: TestDatabase;
let owner: pg.Client;
let dataSource: DataSource;

const FEES = `
INSERT INTO fees (id, practice_id, code, name, template_id, reason)
SELECT gen_random_uuid(), practice_id, 'P ' || name, 'Filling', id, 'decay'
FROM procedure_templates;
INSERT INTO fee_versions (id, practice_id, fee_id, valid_from, fee, recorded_by)
SELECT gen_random_uuid(), practice_id, id, '2026-01-01', 120, '${idOf.person(1)}' FROM fees`;

beforeAll(async () => {
  database = await createBareDatabase();
  const before = readMigrations().filter(({ file }) => file < CHARGES);
  await migrateDatabase(database.url, before);
  owner = await asOwner(database.url);
  await fillBook(owner);
  await owner.query(FEES);
  const { applied } = await migrateDatabase(database.url);
  expect(applied[0]).toBe(CHARGES);
  dataSource = await testDataSource(database.url);
});

afterAll(async () => {
  await dataSource.destroy();
  await owner.end();
  await database.drop();
});

const report = () =>
  new ReportContributions(new UnitOfWork(dataSource)).run(actor, { groupBy: 'reason' });

it('leaves no month to be folded, and no trace of the practice that it worked for', async () => {
  const { rows } = await owner.query(
    `SELECT (SELECT count(*)::int FROM contribution_changes) AS changes,
            (SELECT sum(restorations)::int FROM contribution_months) AS folded,
            current_practice() AS practice`,
  );
  // Five restorations, one of a reversed visit.
  expect(rows).toEqual([{ changes: 0, folded: 4, practice: null }]);
});

it('counts what it holds at the fee list of the day', async () => {
  // Two with decay at 120.00 used 1.34 and 3.33; two for looks used 1.33 and 8.00, no fee.
  const { rows, totals } = await report();
  expect(rows.map((row) => [row.reason, row.fromFeeList, row.withoutFee])).toEqual([
    ['cosmetic', 0, 2],
    ['decay', 2, 0],
  ]);
  expect(totals).toMatchObject({
    fee: '240.00',
    income: '240.00',
    charged: 0,
    material: '4.67',
    contribution: '235.33',
    withoutFeeMaterial: '9.33',
  });
});

it('and its visits can be charged', async () => {
  const body = {
    visitId: idOf.visit(1),
    charges: [
      { restorationId: idOf.restoration(1) },
      { restorationId: idOf.restoration(2), fee: '200' },
    ],
  };
  await new RecordCharges(new UnitOfWork(dataSource)).run(actor, 'upgrade-1', body);
  expect((await report()).totals).toMatchObject({ charged: 2, fromFeeList: 1, fee: '440.00' });
});
