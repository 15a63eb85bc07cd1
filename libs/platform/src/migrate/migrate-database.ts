import type pg from 'pg';
import { DataSource, type MigrationInterface, QueryFailedError, type QueryRunner } from 'typeorm';
import { StartupError } from '../config/startup-error.js';
import { connectOrExplain } from './connect.js';
import { type MigrationFile, readMigrations } from './migration-files.js';

const TABLE = 'traybook_migrations';
const FILES = 'traybook_migration_files';
const LOCK = 7_241_903_001;

export interface Migrated {
  /** The files that were applied now; empty when the schema was up to date. */
  readonly applied: readonly string[];
}

/**
 * Brings the schema up to date, each migration in a transaction of its own. Services that start
 * together take turns. A schema this code does not know is refused and left as it is.
 */
export async function migrateDatabase(
  url: string,
  files: readonly MigrationFile[] = readMigrations(),
): Promise<Migrated> {
  const client = await connectOrExplain(url);
  try {
    await client.query('SELECT pg_advisory_lock($1)', [LOCK]);
    const known = await readApplied(client);
    refuseUnknown(known, files);
    const pending = files.filter(({ name }) => !known.has(name));
    if (pending.length > 0) await apply(url, files);
    return { applied: pending.map(({ file }) => file) };
  } finally {
    await client.end();
  }
}

interface Applied {
  readonly name: string;
  readonly sha256: string | null;
}

async function readApplied(client: pg.Client): Promise<Map<string, Applied>> {
  const { rows: tables } = await client.query<{ names: boolean; files: boolean }>(
    'SELECT to_regclass($1) IS NOT NULL AS names, to_regclass($2) IS NOT NULL AS files',
    [TABLE, FILES],
  );
  if (!tables[0]?.names) return new Map();
  const checksum = tables[0].files
    ? `(SELECT f.sha256 FROM ${FILES} f WHERE f.name = m.name)`
    : 'NULL';
  const { rows } = await client.query<Applied>(
    `SELECT m.name, ${checksum} AS sha256 FROM ${TABLE} m ORDER BY m.id`,
  );
  return new Map(rows.map((row) => [row.name, row]));
}

function refuseUnknown(known: Map<string, Applied>, files: readonly MigrationFile[]): void {
  const ours = new Map(files.map((file) => [file.name, file]));
  for (const { name, sha256 } of known.values()) {
    const file = ours.get(name);
    if (!file) {
      throw new StartupError(
        `The database schema is newer than this Traybook: it has had the migration ${name}. ` +
          'Start the newer Traybook, or go back to a backup from before.',
      );
    }
    if (sha256 !== file.sha256) {
      throw new StartupError(
        `The migration ${file.file} was altered after it had been applied to this database. ` +
          'Put the original file back and add a new migration instead.',
      );
    }
  }
}

async function apply(url: string, files: readonly MigrationFile[]): Promise<void> {
  const dataSource = new DataSource({
    type: 'postgres',
    url,
    migrations: files.map(toMigration),
    migrationsTableName: TABLE,
    migrationsTransactionMode: 'each',
    applicationName: 'traybook migrate',
    logger: 'debug', // silent: what fails is thrown
    extra: { max: 2 },
  });
  try {
    await dataSource.initialize();
    await dataSource.runMigrations({ transaction: 'each' });
  } catch (error) {
    if (!(error instanceof QueryFailedError)) throw error;
    throw new StartupError(
      `The database schema could not be brought up to date: ${error.message}. ` +
        'The migration that failed left nothing behind.',
      { cause: error },
    );
  } finally {
    if (dataSource.isInitialized) await dataSource.destroy();
  }
}

/** TypeORM wants a class per migration. */
function toMigration({ name, file, sql, sha256 }: MigrationFile): new () => MigrationInterface {
  return class implements MigrationInterface {
    readonly name = name;

    async up(runner: QueryRunner): Promise<void> {
      await runner.query(sql);
      await runner.query(
        `CREATE TABLE IF NOT EXISTS ${FILES} (
           name text PRIMARY KEY, file text NOT NULL, sha256 text NOT NULL,
           applied_at timestamptz NOT NULL DEFAULT now())`,
      );
      await runner.query(`INSERT INTO ${FILES} (name, file, sha256) VALUES ($1, $2, $3)`, [
        name,
        file,
        sha256,
      ]);
    }

    async down(): Promise<void> {
      throw new Error(`${file} goes forward only: go back to a backup instead`);
    }
  };
}
