import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import type { DataSource } from 'typeorm';
import { migrateDatabase, UnitOfWork } from '#lib/platform';
import { ReportRestorationCosts } from '../../libs/costing/src/queries/report-restoration-costs.js';
import { readMigrations } from '../../libs/platform/src/migrate/migration-files.js';
import { compare, recompute } from '../bench/report-check.js';
import { actor, fillBook } from '../harness/book-rows.js';
import {
  asOwner,
  createBareDatabase,
  type TestDatabase,
  testDataSource,
} from '../harness/database.js';

// A book that was filled before there were packed spans: migrating fills them from it, whether it had
// monthly tables before or not.

const BEFORE = ['20261125130000-costing-create-rates.sql', '20261127120000-costing-pack-spans.sql'];

describe.each(BEFORE)('a book from before %s', (first) => {
  let database: TestDatabase;
  let owner: pg.Client;
  let dataSource: DataSource;

  beforeAll(async () => {
    database = await createBareDatabase();
    const before = readMigrations().filter(({ file }) => file < first);
    await migrateDatabase(database.url, before);
    owner = await asOwner(database.url);
    await fillBook(owner);
    const { applied } = await migrateDatabase(database.url);
    expect(applied[0]).toBe(first);
    dataSource = await testDataSource(database.url);
  });

  afterAll(async () => {
    await dataSource.destroy();
    await owner.end();
    await database.drop();
  });

  const count = async (table: string) => {
    const { rows } = await owner.query<{ n: number }>(`SELECT count(*)::int AS n FROM ${table}`);
    return rows[0]?.n;
  };

  it('has its spans filled, so that nothing is left to be folded', async () => {
    expect(await count('cost_changes')).toBe(0);
    // Two templates and three reasons in March, one in April; the reversed visit is left out.
    const month = "span = 'month' AND";
    expect(await count(`cost_cells WHERE ${month} width > 0`)).toBe(4);
    expect(
      await count(`cost_cells c JOIN cost_categories k USING (practice_id, category_number)
                   WHERE ${month} k.category <> ''`),
    ).toBe(8);
  });

  it('and the report says what the restorations say', async () => {
    const uow = new UnitOfWork(dataSource);
    const report = await new ReportRestorationCosts(uow).run(actor, {
      groupBy: 'template,reason,dentist,month',
    });
    await recompute(owner, 'restorations');
    const rows = await compare(owner, report, ['templateId', 'reason', 'dentistId', 'month']);
    expect(rows).toBe(4);
  });

  it('leaves no trace of the practice that it worked for', async () => {
    const { rows } = await owner.query('SELECT current_practice() AS practice');
    expect(rows).toEqual([{ practice: null }]);
  });
});
