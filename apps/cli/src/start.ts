import type { Environment } from '#lib/platform';
import { openDatabase } from './open-database.js';
import { checkPort } from './port.js';
import type { Shutdown } from './shutdown.js';

type Prepare = (databaseUrl: string) => Promise<() => void>;

/** Runs the service until it is told to stop. `prepare` fills the book and says what to print. */
export async function start(env: Environment, shutdown: Shutdown, prepare?: Prepare) {
  await checkPort(env.host, env.port);
  const database = await openDatabase(env, shutdown);
  const { startService } = await import('../../api/src/index.js');
  const printMore = await prepare?.(database.url);
  shutdown.throwIfAsked();
  const service = await startService({
    databaseUrl: database.url,
    host: env.host,
    port: env.port,
    mail: { smtpUrl: env.smtpUrl, from: env.mailFrom },
    logLevel: env.logLevel,
  });
  shutdown.later(() => service.close());
  console.log(`\nReady in ${(performance.now() / 1000).toFixed(1)} s: ${service.url}`);
  if (service.firstStartLink) {
    console.log(`\nThe book is empty. Open this link, it works once:\n  ${service.firstStartLink}`);
  }
  printMore?.();
  console.log('\nCtrl-C stops it.');
  await Promise.race([shutdown.asked, database.lost]);
  console.log('\nStopping: requests in hand are finished first.');
}
