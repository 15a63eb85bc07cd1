import { randomBytes } from 'node:crypto';
import pg from 'pg';
import { DataSource, type EntityTarget, type MixedList, type ObjectLiteral } from 'typeorm';

export interface TestDatabase {
  /** As the owner of everything; the service itself works as traybook_app. */
  readonly url: string;
  drop(): Promise<void>;
}

function setting(name: 'TRAYBOOK_TEST_ADMIN_URL' | 'TRAYBOOK_TEST_PREFIX'): string {
  const value = process.env[name];
  if (!value) throw new Error(`${name} is not set: run this test through npm run test:only`);
  return value;
}

async function asAdmin(statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: setting('TRAYBOOK_TEST_ADMIN_URL') });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}

async function createDatabase(from: string): Promise<TestDatabase> {
  const name = `${setting('TRAYBOOK_TEST_PREFIX')}${randomBytes(6).toString('hex')}`;
  await asAdmin(`CREATE DATABASE "${name}" ${from}`);
  const url = new URL(setting('TRAYBOOK_TEST_ADMIN_URL'));
  url.pathname = `/${name}`;
  return { url: url.href, drop: () => asAdmin(`DROP DATABASE "${name}" WITH (FORCE)`) };
}

/** A database of its own for a test file, with the schema and no row. */
export function createTestDatabase(): Promise<TestDatabase> {
  return createDatabase(`TEMPLATE "${setting('TRAYBOOK_TEST_PREFIX')}template" STRATEGY FILE_COPY`);
}

/** A database without any schema, for tests of migrating. */
export function createBareDatabase(): Promise<TestDatabase> {
  return createDatabase("TEMPLATE template0 ENCODING 'UTF8'");
}

type Entities = MixedList<EntityTarget<ObjectLiteral>>;

/** TypeORM on a test database in the role of the service, as the service has it. */
export function testDataSource(url: string, entities?: Entities): Promise<DataSource> {
  return new DataSource({
    type: 'postgres',
    url,
    entities: (entities ?? []) as MixedList<string>,
    poolSize: 5,
    // Dropping the database ends idle connections; a test that needs one fails by itself.
    poolErrorHandler: () => undefined,
    extra: { options: '-c role=traybook_app' },
  }).initialize();
}

/** A connection that sees every row, for checks behind the service's back. */
export async function asOwner(url: string): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: url });
  client.on('error', () => undefined);
  await client.connect();
  return client;
}
