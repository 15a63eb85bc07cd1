import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { migrateDatabase, startEmbeddedServer } from '#lib/platform';
import { createApp } from '../../apps/api/src/index.js';
import { DayClock } from './day-clock.js';
import { loadDemo } from './load-demo.js';

export interface DemoService {
  /** 'http://127.0.0.1:40123' */
  readonly url: string;
  stop(): Promise<void>;
}

/** The demo of a given day with the browser app, on a database server and a port of its own. */
export async function startDemoService(today: string): Promise<DemoService> {
  const folder = mkdtempSync(join(tmpdir(), 'traybook-demo-'));
  chmodSync(folder, 0o755); // as root the database server works as another user
  const server = await startEmbeddedServer({ dataDir: join(folder, 'data') });
  await migrateDatabase(server.url);
  console.log('Writing the demo practice ...');
  await loadDemo({ databaseUrl: server.url, today, onProgress: () => undefined });
  const app = await createApp({
    databaseUrl: server.url,
    clock: new DayClock(today),
    logLevel: 'error',
  });
  await app.listen(0, '127.0.0.1');
  const stop = async () => {
    await app.close();
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  };
  return { url: await app.getUrl(), stop };
}
