import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { migrateDatabase, startEmbeddedServer } from '#lib/platform';
import { createApp } from '../../apps/api/src/index.js';
import { drive, Poster, type Timing } from './posting.js';
import { bareClients, record, replay } from './replay.js';
import { CountingProxy } from './round-trips.js';
import { type BenchBook, LINES, openBenchBook } from './shelf.js';
import { residentMegabytes, startService, stopService } from './start-up.js';

const CLIENTS = 16;
const VISITS = Number(process.env.TRAYBOOK_BENCH_VISITS ?? 2000);
const POOL = 10;

function show(what: string, timing: Timing): void {
  const { perSecond, p50, p99 } = timing;
  const text = `${perSecond.toFixed(0)}/s   p50 ${p50.toFixed(1)} ms   p99 ${p99.toFixed(1)} ms`;
  console.log(`${what.padEnd(46)} ${text}`);
}

async function admin(url: string, sql: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(sql);
  await client.end();
}

function database(url: string, name: string): string {
  const of = new URL(url);
  of.pathname = `/${name}`;
  return of.href;
}

/** Visits per second over HTTP, the service being a process of its own. */
async function overHttp(url: string, book: BenchBook): Promise<Timing> {
  const service = await startService({ DATABASE_URL: url });
  const poster = new Poster(service.url, book);
  try {
    await drive(CLIENTS, VISITS / 4, (_, n) => poster.post(LINES, n));
    const timing = await drive(CLIENTS, VISITS, (_, n) => poster.post(LINES, n));
    const memory = residentMegabytes(service.child.pid);
    console.log(`${'resident memory after that'.padEnd(46)} ${memory?.toFixed(0) ?? '?'} MB`);
    return timing;
  } finally {
    poster.close();
    await stopService(service);
  }
}

/** The very statements of as many postings, sent by bare pg clients from one process. */
async function bare(recordUrl: string, replayUrl: string, book: BenchBook): Promise<Timing> {
  const app = await createApp({ databaseUrl: recordUrl, logLevel: 'error', poolSize: POOL });
  await app.listen(0, '127.0.0.1');
  const poster = new Poster((await app.getUrl()).replace('[::1]', '127.0.0.1'), book);
  const postings = await record(async () => {
    await drive(CLIENTS, VISITS + VISITS / 4, (_, n) => poster.post(LINES, n));
  });
  poster.close();
  await app.close();
  const clients = await bareClients(replayUrl, POOL);
  const send = (from: number) => (client: number, n: number) => {
    const [connection, posting] = [clients[client], postings[from + n]];
    if (!connection || !posting) throw new Error('Nothing to replay');
    return replay(connection, posting);
  };
  await drive(POOL, VISITS / 4, send(0));
  const timing = await drive(POOL, VISITS, send(VISITS / 4));
  await Promise.all(clients.map((client) => client.end()));
  return timing;
}

async function roundTrips(url: string, book: BenchBook): Promise<string> {
  const proxy = await CountingProxy.before(url);
  const service = await startService({ DATABASE_URL: proxy.url });
  const poster = new Poster(service.url, book);
  const found: string[] = [];
  for (const lines of [1, LINES, 60]) {
    await poster.post(lines, 1);
    const before = proxy.roundTrips;
    for (let n = 0; n < 10; n += 1) await poster.post(lines, n);
    found.push(`${((proxy.roundTrips - before) / 10).toFixed(1)} with ${lines} lines`);
  }
  poster.close();
  await stopService(service);
  proxy.close();
  return found.join(', ');
}

async function startUp(dataDir: string): Promise<void> {
  const first = await startService({ TRAYBOOK_DATA: dataDir });
  await stopService(first);
  const again = await startService({ TRAYBOOK_DATA: dataDir });
  const memory = residentMegabytes(again.child.pid)?.toFixed(0) ?? '?';
  await stopService(again);
  const text = `${again.seconds.toFixed(1)} s, ${memory} MB resident (first start ${first.seconds.toFixed(1)} s)`;
  console.log(`${'service ready on an existing book'.padEnd(46)} ${text}`);
}

async function main(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'traybook-bench-'));
  chmodSync(folder, 0o755); // as root the server works as another user
  try {
    await startUp(join(folder, 'start-up'));
    const server = await startEmbeddedServer({ dataDir: join(folder, 'server') });
    try {
      const base = database(server.url, 'bench_base');
      await admin(server.url, 'CREATE DATABASE bench_base');
      await migrateDatabase(base);
      const book = await openBenchBook(base);
      for (const name of ['http', 'record', 'replay', 'count']) {
        await admin(server.url, `CREATE DATABASE bench_${name} TEMPLATE bench_base`);
      }
      const trips = await roundTrips(database(server.url, 'bench_count'), book);
      console.log(`${'database round trips per posting'.padEnd(46)} ${trips}`);
      const http = await overHttp(database(server.url, 'bench_http'), book);
      show(`visits of ${LINES} lines over HTTP, ${CLIENTS} clients`, http);
      const [from, to] = [
        database(server.url, 'bench_record'),
        database(server.url, 'bench_replay'),
      ];
      const limit = await bare(from, to, book);
      show('the same statements from bare pg clients', limit);
      const share = ((http.perSecond / limit.perSecond) * 100).toFixed(0);
      console.log(`${'HTTP compared with the bare replay'.padEnd(46)} ${share} %`);
    } finally {
      await server.stop();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

await main();
