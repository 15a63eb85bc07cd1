import {
  chooseDataDir,
  type Environment,
  migrateDatabase,
  StartupError,
  startEmbeddedServer,
} from '#lib/platform';
import type { Shutdown } from './shutdown.js';

export interface OpenDatabase {
  readonly url: string;
  /** Rejects if our own server ends by itself; never settles otherwise. */
  readonly lost: Promise<never>;
}

/** The database of DATABASE_URL, or a server of our own; with its schema up to date. */
export async function openDatabase(env: Environment, shutdown: Shutdown): Promise<OpenDatabase> {
  const database = env.databaseUrl ? given(env.databaseUrl) : await own(env, shutdown);
  shutdown.throwIfAsked();
  const { applied } = await migrateDatabase(database.url);
  for (const file of applied) console.log(`Schema: ${file}`);
  shutdown.throwIfAsked();
  return database;
}

function given(url: string): OpenDatabase {
  console.log('Database: the server of DATABASE_URL');
  return { url, lost: new Promise<never>(() => undefined) };
}

async function own(env: Environment, shutdown: Shutdown): Promise<OpenDatabase> {
  const dataDir = chooseDataDir(env.dataDir);
  const server = await startEmbeddedServer({ dataDir: dataDir.path });
  shutdown.later(() => server.stop());
  console.log(`Database: PostgreSQL ${server.version} in ${dataDir.path}`);
  if (dataDir.temporary) {
    console.log(
      'This is a temporary folder, because PostgreSQL cannot reach the current one as root. ' +
        'Set TRAYBOOK_DATA to keep the book elsewhere.',
    );
  }
  const lost = server.failed.then((reason): never => {
    throw new StartupError(reason);
  });
  // Looked at later by whoever waits for the end; until then it is not an unhandled rejection.
  lost.catch(() => undefined);
  return { url: server.url, lost };
}
