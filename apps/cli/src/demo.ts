import pg from 'pg';
import { type Environment, StartupError } from '#lib/platform';
import { Progress } from './progress.js';
import type { Shutdown } from './shutdown.js';
import { start } from './start.js';
import { table } from './table.js';

/** Fills an empty book with an invented practice, then runs the service on it. */
export async function demo(env: Environment, shutdown: Shutdown): Promise<void> {
  await start(env, shutdown, async (databaseUrl) => {
    const { PRACTICE } = await import('../../../test/demo/practice.js');
    await refuseRealBook(databaseUrl, PRACTICE.name);
    const { loadDemo } = await import('../../../test/demo/load-demo.js');
    const progress = new Progress();
    const { loaded, signIns } = await loadDemo({
      databaseUrl,
      onProgress: (done, total, what) => {
        shutdown.throwIfAsked();
        progress.show(done, total, what);
      },
    });
    progress.end();
    console.log(loaded ? 'The demo practice was written.' : 'The demo practice is there already.');
    const header = ['role', 'sign-in name', 'password'];
    const rows = signIns.map((person) => [person.role, person.signInName, person.password]);
    return () => console.log(`\nSign in as one of them:\n${table([header, ...oneEach(rows)])}`);
  });
}

function oneEach(rows: readonly string[][]): string[][] {
  return rows.filter((row, i) => rows.findIndex(([role]) => role === row[0]) === i);
}

async function refuseRealBook(databaseUrl: string, demoName: string): Promise<void> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    const { rowCount } = await client.query('SELECT FROM practices WHERE name <> $1', [demoName]);
    if (rowCount === 0) return;
    throw new StartupError(
      'This book belongs to a real practice, so the demo was not written into it: set ' +
        'TRAYBOOK_DATA to an empty folder (or DATABASE_URL to an empty database) for the demo.',
    );
  } finally {
    await client.end();
  }
}
