import pg from 'pg';
import { errorCode, errorMessage } from '../config/error-code.js';
import { StartupError } from '../config/startup-error.js';

const OLDEST = 17;

/** Connects, or says in one sentence why the database cannot be used. */
export async function connectOrExplain(url: string): Promise<pg.Client> {
  const client = new pg.Client({
    connectionString: url,
    connectionTimeoutMillis: 10_000,
    application_name: 'traybook migrate',
  });
  try {
    await client.connect();
  } catch (error) {
    throw explained(error, url);
  }
  try {
    await checkServer(client);
    return client;
  } catch (error) {
    await client.end();
    throw error;
  }
}

async function checkServer(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ version: string; encoding: string }>(
    `SELECT current_setting('server_version') AS version,
            current_setting('server_encoding') AS encoding`,
  );
  const { version = '', encoding = '' } = rows[0] ?? {};
  if (Number.parseInt(version, 10) < OLDEST) {
    throw new StartupError(
      `The database server is PostgreSQL ${version}; Traybook needs ${OLDEST} or newer.`,
    );
  }
  if (encoding !== 'UTF8') {
    throw new StartupError(
      `The database stores text as ${encoding}; Traybook needs one made with ENCODING 'UTF8'.`,
    );
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ECONNREFUSED: 'nothing answers there',
  ENOTFOUND: 'the host is not known',
  EAI_AGAIN: 'the host is not known',
  ETIMEDOUT: 'it does not answer',
  EHOSTUNREACH: 'the host cannot be reached',
  ENETUNREACH: 'the network cannot be reached',
  ECONNRESET: 'it broke the connection off',
  '28P01': 'the user or the password is wrong',
  '28000': 'it does not let this user in',
  '3D000': 'it has no database of that name',
  '53300': 'it has no connection left',
  '57P03': 'it is starting up or shutting down',
};

function explained(error: unknown, url: string): StartupError {
  // A host with several addresses fails with all their errors at once.
  const { errors } = error as { errors?: unknown };
  const first: unknown = Array.isArray(errors) ? errors[0] : error;
  const reason = REASONS[errorCode(first)] ?? errorMessage(first);
  const { hostname, port, pathname, username } = new URL(url);
  const where =
    `database "${decodeURIComponent(pathname.slice(1))}" at ${hostname || 'localhost'}:` +
    `${port || '5432'} as user "${decodeURIComponent(username)}"`;
  return new StartupError(`DATABASE_URL cannot be used (${where}): ${reason}.`, { cause: error });
}
