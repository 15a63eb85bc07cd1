import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { DataSource } from 'typeorm';
import { asOwner, testDataSource } from '../harness/database.js';
import { type TestPractice, TestService } from './service.js';

let service: TestService;
let here: TestPractice;
let elsewhere: TestPractice;
let owner: pg.Client;
let asService: DataSource;

beforeAll(async () => {
  service = await TestService.start();
  here = await service.openPractice('here');
  elsewhere = await service.openPractice('elsewhere');
  owner = await asOwner(service.databaseUrl);
  asService = await testDataSource(service.databaseUrl);
});

afterAll(async () => {
  await asService.destroy();
  await owner.end();
  await service.stop();
});

async function tablesOfPractices(): Promise<string[]> {
  const { rows } = await owner.query<{ name: string }>(
    `SELECT DISTINCT c.table_name AS name FROM information_schema.columns c
     JOIN information_schema.tables t USING (table_schema, table_name)
     WHERE c.table_schema = 'public' AND c.column_name = 'practice_id'
       AND t.table_type = 'BASE TABLE' ORDER BY 1`,
  );
  return rows.map((row) => row.name);
}

describe('the role of the service', () => {
  it('is what the service really works as', async () => {
    const [row] = await service.app
      .get(DataSource)
      .query<{ role: string; super: boolean; bypass: boolean }[]>(
        `SELECT current_user AS role, rolsuper AS super, rolbypassrls AS bypass
         FROM pg_roles WHERE rolname = current_user`,
      );
    expect(row).toEqual({ role: 'traybook_app', super: false, bypass: false });
  });

  it('owns nothing', async () => {
    const { rows } = await owner.query(
      `SELECT relname FROM pg_class WHERE relowner = 'traybook_app'::regrole
       UNION ALL SELECT proname FROM pg_proc WHERE proowner = 'traybook_app'::regrole`,
    );
    expect(rows).toEqual([]);
  });

  it('sees no row of any practice until one is set', async () => {
    const tables = await tablesOfPractices();
    expect(tables).toEqual(expect.arrayContaining(['people', 'movements', 'visits']));
    for (const table of [...tables, 'practices']) {
      const rows: unknown[] = await asService.query(`SELECT FROM ${table} LIMIT 1`);
      expect([table, rows]).toEqual([table, []]);
    }
    const { rows } = await owner.query('SELECT FROM practices');
    expect(rows).toHaveLength(2);
  });

  it('sees only the practice that is set, also without a WHERE', async () => {
    const runner = asService.createQueryRunner();
    await runner.startTransaction();
    await runner.query(`SELECT set_config('traybook.practice_id', $1, true)`, [
      here.owner.practiceId,
    ]);
    const names: { sign_in_name: string }[] = await runner.query('SELECT sign_in_name FROM people');
    await runner.rollbackTransaction();
    await runner.release();
    expect(names).toHaveLength(5);
    expect(names.every((row) => row.sign_in_name.startsWith('here.'))).toBe(true);
  });

  it('cannot write a row into another practice', async () => {
    const runner = asService.createQueryRunner();
    await runner.startTransaction();
    await runner.query(`SELECT set_config('traybook.practice_id', $1, true)`, [
      here.owner.practiceId,
    ]);
    await expect(
      runner.query(
        `INSERT INTO audit_entries (id, practice_id, action, subject_kind, subject_id)
         VALUES (gen_random_uuid(), $1, 'x', 'x', 'x')`,
        [elsewhere.owner.practiceId],
      ),
    ).rejects.toThrow('row-level security');
    await runner.rollbackTransaction();
    await runner.release();
  });

  it.each(['movements', 'audit_entries', 'lot_status_changes', 'template_versions'])(
    'can neither change nor delete a row of %s',
    async (table) => {
      await expect(asService.query(`DELETE FROM ${table}`)).rejects.toThrow('permission denied');
      await expect(asService.query(`TRUNCATE ${table}`)).rejects.toThrow('permission denied');
      await expect(
        asService.query(`UPDATE ${table} SET practice_id = practice_id`),
      ).rejects.toThrow('permission denied');
    },
  );

  it.each([
    'ALTER TABLE people DISABLE ROW LEVEL SECURITY',
    'DROP TABLE movements',
    'DROP TRIGGER append_only ON movements',
    'CREATE TABLE extra (id int)',
    'ALTER ROLE traybook_app BYPASSRLS',
  ])('cannot %s', async (statement) => {
    await expect(asService.query(statement)).rejects.toThrow(/must be owner|permission denied/);
  });
});

describe('the schema', () => {
  it('holds every table of a practice by row-level security', async () => {
    const { rows } = await owner.query<{ relname: string }>(
      `SELECT relname FROM pg_class c WHERE relkind = 'r' AND relnamespace = 'public'::regnamespace
         AND relname = ANY($1) AND NOT (relrowsecurity
           AND EXISTS (SELECT FROM pg_policy p WHERE p.polrelid = c.oid))`,
      [[...(await tablesOfPractices()), 'practices']],
    );
    expect(rows).toEqual([]);
  });

  it('keeps the ledger append-only even for its owner', async () => {
    await expect(owner.query('TRUNCATE movements CASCADE')).rejects.toThrow('append-only');
    await expect(owner.query('DELETE FROM audit_entries')).rejects.toThrow('append-only');
  });
});

describe('finding out who sends a request', () => {
  it('takes one round trip, with a statement that is parsed once per connection', async () => {
    const pool = (service.app.get(DataSource).driver as unknown as { master: pg.Pool }).master;
    const original = pool.query;
    const seen: unknown[] = [];
    pool.query = ((...args: unknown[]) => {
      seen.push(args[0]);
      return Reflect.apply(original, pool, args) as unknown;
    }) as typeof pool.query;
    try {
      const answer = await service.send('GET', '/api/session', here.people.assistant);
      expect(answer.status).toBe(200);
    } finally {
      pool.query = original;
    }
    expect(seen).toEqual([
      expect.objectContaining({ name: 'access_actor_by_session', text: expect.any(String) }),
    ]);
  });
});
