import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import {
  asOwner,
  createBareDatabase,
  createTestDatabase,
  type TestDatabase,
} from '../../../../test/harness/database.js';
import { StartupError } from '../config/startup-error.js';
import { migrateDatabase } from './migrate-database.js';
import { type MigrationFile, readMigrations } from './migration-files.js';

let database: TestDatabase;

beforeEach(async () => {
  database = await createBareDatabase();
});

afterEach(async () => {
  await database.drop();
});

async function query(sql: string): Promise<Record<string, unknown>[]> {
  const client = await asOwner(database.url);
  try {
    return (await client.query<Record<string, unknown>>(sql)).rows;
  } finally {
    await client.end();
  }
}

async function refusal(files?: MigrationFile[], url = database.url): Promise<string> {
  const error = await migrateDatabase(url, files).catch((failure: unknown) => failure);
  expect(error).toBeInstanceOf(StartupError);
  return error instanceof StartupError ? error.message : '';
}

function changed(at: number, change: Partial<MigrationFile>): MigrationFile[] {
  return readMigrations().map((file, i) => (i === at ? { ...file, ...change } : file));
}

describe('migrateDatabase', () => {
  it('applies every file once, in the order of their names', async () => {
    const files = readMigrations().map(({ file }) => file);
    expect(files).toEqual([...files].sort());
    expect(await migrateDatabase(database.url)).toEqual({ applied: files });
    expect(await migrateDatabase(database.url)).toEqual({ applied: [] });
    const rows = await query('SELECT name FROM traybook_migrations ORDER BY id');
    expect(rows.map(({ name }) => name)).toEqual(readMigrations().map(({ name }) => name));
  });

  it('is done once when several services start together', async () => {
    const results = await Promise.all(
      Array.from({ length: 4 }, () => migrateDatabase(database.url)),
    );
    expect(results.filter(({ applied }) => applied.length > 0)).toHaveLength(1);
    const [row] = await query('SELECT count(*)::int AS n FROM traybook_migrations');
    expect(row).toEqual({ n: readMigrations().length });
  });

  it('refuses a migration that was altered after it was applied', async () => {
    await migrateDatabase(database.url);
    const [first] = readMigrations();
    const altered = changed(0, { sha256: 'something else' });
    expect(await refusal(altered)).toContain(`${first?.file} was altered`);
  });

  it('refuses a schema newer than the code and leaves it alone', async () => {
    await migrateDatabase(database.url, readMigrations().slice(0, 2));
    await query(
      "INSERT INTO traybook_migrations (timestamp, name) VALUES (4102444800000, 'X4102444800000')",
    );
    expect(await refusal()).toContain('X4102444800000');
    const rows = await query('SELECT name FROM traybook_migrations');
    expect(rows).toHaveLength(3);
  });

  it('keeps nothing of a migration that fails, and everything before it', async () => {
    const broken = changed(2, { sql: 'CREATE TABLE half (id int); SELECT 1 / 0;' });
    expect(await refusal(broken)).toContain('division by zero');
    expect(await query("SELECT to_regclass('half')::text AS half")).toEqual([{ half: null }]);
    expect(await query('SELECT name FROM traybook_migrations')).toHaveLength(2);
    expect((await migrateDatabase(database.url)).applied).toEqual(
      readMigrations()
        .slice(2)
        .map(({ file }) => file),
    );
  });

  it('says what is wrong with a server, a password or a database, never the password', async () => {
    const at = (change: (url: URL) => void) => {
      const url = new URL(database.url);
      change(url);
      return refusal(undefined, url.href);
    };
    const wrongPassword = await at((url) => {
      url.password = 'not-the-secret';
    });
    expect(wrongPassword).toContain('the user or the password is wrong');
    expect(wrongPassword).not.toContain('not-the-secret');
    expect(
      await at((url) => {
        url.port = '1';
      }),
    ).toContain('nothing answers there');
    expect(
      await at((url) => {
        url.pathname = '/nowhere';
      }),
    ).toContain('it has no database of that name');
  });

  it('refuses a database that does not store text as UTF-8', async () => {
    const client = await asOwner(database.url);
    const url = new URL(database.url);
    url.pathname += '_latin';
    const name = client.escapeIdentifier(url.pathname.slice(1));
    await client.query(
      `CREATE DATABASE ${name} TEMPLATE template0 ENCODING 'LATIN1' LOCALE_PROVIDER libc LOCALE 'C'`,
    );
    try {
      expect(await refusal(undefined, url.href)).toContain('LATIN1');
    } finally {
      await client.query(`DROP DATABASE ${name} WITH (FORCE)`);
      await client.end();
    }
  });
});

describe('the schema', () => {
  it('gives every table row-level security, and the service none of its ownership', async () => {
    const migrated = await createTestDatabase();
    const client = await asOwner(migrated.url);
    const { rows } = await client.query<{ name: string }>(
      `SELECT relname AS name FROM pg_class
       WHERE relnamespace = 'public'::regnamespace AND relkind = 'r' AND NOT relrowsecurity
       ORDER BY 1`,
    );
    expect(rows.map(({ name }) => name)).toEqual([
      'first_start_links',
      'traybook_migration_files',
      'traybook_migrations',
    ]);
    const owned = await client.query(
      "SELECT FROM pg_class WHERE relowner = 'traybook_app'::regrole",
    );
    expect(owned.rowCount).toBe(0);
    await client.end();
    await migrated.drop();
  });

  it('can be made by an owner who is no superuser', async () => {
    const owner = await asOwner(database.url);
    const name = `builder_${Date.now()}`;
    await owner.query(`CREATE ROLE ${name} LOGIN CREATEROLE PASSWORD 'pw'`);
    await owner.query(`GRANT traybook_app TO ${name} WITH ADMIN OPTION`);
    const own = `ALTER DATABASE ${owner.escapeIdentifier(owner.database ?? '')} OWNER TO`;
    await owner.query(`${own} ${name}`);
    const url = new URL(database.url);
    url.username = name;
    url.password = 'pw';
    expect((await migrateDatabase(url.href)).applied).toHaveLength(readMigrations().length);
    await owner.query(`${own} CURRENT_USER; DROP OWNED BY ${name}; DROP ROLE ${name}`);
    await owner.end();
  });
});
