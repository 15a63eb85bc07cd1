import pg from 'pg';
import { loadPlatform } from './platform.mjs';
import { startServer } from './servers.mjs';

async function admin(url, ...statements) {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    for (const statement of statements) await client.query(statement);
  } finally {
    await client.end();
  }
}

/** Drops the template and the databases that killed tests of this run left behind. */
async function dropDatabases(url, prefix) {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const { rows } = await client.query(
      'SELECT datname FROM pg_database WHERE starts_with(datname, $1)',
      [prefix],
    );
    for (const { datname } of rows) {
      await client.query(`DROP DATABASE IF EXISTS "${datname}" WITH (FORCE)`);
    }
  } finally {
    await client.end();
  }
}

export default async function globalSetup() {
  const platform = await loadPlatform();
  const server = await startServer(platform);
  const prefix = `traybook_${process.pid}_`;
  let stopped;
  const stop = () => {
    stopped ??= dropDatabases(server.adminUrl, prefix).then(() => server.stop());
    return stopped;
  };
  globalThis.traybookStopServer = stop;
  for (const signal of ['SIGINT', 'SIGTERM']) {
    process.once(signal, () => {
      stop().finally(() => process.exit(130));
    });
  }
  try {
    const template = `${prefix}template`;
    await admin(server.adminUrl, `CREATE DATABASE "${template}"`);
    const url = new URL(server.adminUrl);
    url.pathname = `/${template}`;
    await platform.migrateDatabase(url.href);
    process.env.TRAYBOOK_TEST_ADMIN_URL = server.adminUrl;
    process.env.TRAYBOOK_TEST_PREFIX = prefix;
    process.stderr.write(`PostgreSQL for the tests: ${server.what}\n`);
  } catch (error) {
    await stop();
    throw error;
  }
}
