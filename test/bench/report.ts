import { randomUUID } from 'node:crypto';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { migrateDatabase, startEmbeddedServer } from '#lib/platform';
import { createApp } from '../../apps/api/src/index.js';
import { bareClients, record, replay } from './replay.js';
import { compare, type Report, recompute } from './report-check.js';
import { fillRestorations, openPractice } from './report-fill.js';
import { type Started, startService, stopService } from './start-up.js';

const RESTORATIONS = Number(process.env.TRAYBOOK_BENCH_RESTORATIONS ?? 1_000_000);
const RUNS = Number(process.env.TRAYBOOK_BENCH_RUNS ?? 40);
const LIMIT = 300;
const TEMPLATE = '0000000b-0000-7000-8000-000000000004';
const DENTIST = '00000002-0000-7000-8000-000000000002';

const FILTERS: Record<string, string> = {
  'by template, everything': '',
  'by reason, everything': 'groupBy=reason',
  'by template and reason, everything': 'groupBy=template,reason',
  'by month, everything': 'groupBy=month',
  'by template, one year': 'from=2024-01-01&to=2024-12-31',
  'by dentist, mid-month to mid-month': 'groupBy=dentist&from=2022-03-17&to=2024-09-12',
  'by reason, two weeks': 'groupBy=reason&from=2025-03-03&to=2025-03-16',
  'one template by month': `groupBy=month&templateId=${TEMPLATE}`,
  'one dentist by template, two years': `from=2023-01-01&to=2024-12-31&dentistId=${DENTIST}`,
};

// As the report was before it had monthly tables: from the restorations themselves.
const LIVE = `
SELECT r.template_id, count(*), count(DISTINCT r.visit_id), sum(r.own_cost + r.shared_cost),
       percentile_disc(0.5) WITHIN GROUP (ORDER BY r.own_cost + r.shared_cost)
FROM restorations r JOIN visits v ON v.id = r.visit_id
WHERE v.reversed_at IS NULL GROUP BY GROUPING SETS ((r.template_id), ())`;

const path = (filter: string) => `/api/reports/restoration-costs?${filter}`;

function show(what: string, text: string): void {
  console.log(`${what.padEnd(46)} ${text}`);
}

function timesOf(times: number[]): string {
  return `p50 ${at(times, 0.5).toFixed(0)} ms   p95 ${at(times, 0.95).toFixed(0)} ms`;
}

function at(times: number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? 0;
}

async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

class Asker {
  constructor(
    private readonly service: Started,
    private readonly token: string,
  ) {}

  async ask<T>(method: string, url: string, body?: object): Promise<T> {
    const answer = await fetch(`${this.service.url}${url}`, {
      method,
      headers: {
        authorization: `Bearer ${this.token}`,
        'idempotency-key': randomUUID(),
        ...(body ? { 'content-type': 'application/json' } : {}),
      },
      ...(body ? { body: JSON.stringify(body) } : {}),
    });
    const text = await answer.text();
    if (!answer.ok) throw new Error(`${url}: ${text}`);
    return JSON.parse(text) as T;
  }
}

/** Every filter in turn, so that none has the machine for itself. */
async function overHttp(asker: Asker): Promise<Map<string, number[]>> {
  const times = new Map(Object.keys(FILTERS).map((name) => [name, [] as number[]]));
  for (let run = -2; run < RUNS; run += 1) {
    for (const [name, filter] of Object.entries(FILTERS)) {
      const time = await timed(() => asker.ask('GET', path(filter)));
      if (run >= 0) times.get(name)?.push(time);
    }
  }
  return times;
}

/** The very statements of each report from a bare client. */
async function bareSql(url: string, token: string): Promise<Map<string, number[]>> {
  const app = await createApp({ databaseUrl: url, logLevel: 'error', poolSize: 1 });
  const headers = { authorization: `Bearer ${token}` };
  const [client] = await bareClients(url, 1);
  if (!client) throw new Error('No client');
  const found = new Map<string, number[]>();
  for (const [name, filter] of Object.entries(FILTERS)) {
    const sent = await record(async () => {
      await app.inject({ url: path(filter), headers });
    });
    const times: number[] = [];
    for (let run = -2; run < RUNS / 2; run += 1) {
      const time = await timed(() => replay(client, sent.flat()));
      if (run >= 0) times.push(time);
    }
    found.set(name, times);
  }
  await client.end();
  await app.close();
  return found;
}

async function checkAll(client: pg.Client, asker: Asker): Promise<void> {
  await recompute(client, 'movements');
  let rows = 0;
  for (const [groupBy, keys] of [
    ['template', ['templateId']],
    ['reason,month', ['reason', 'month']],
    ['template,reason,dentist,month', ['templateId', 'reason', 'dentistId', 'month']],
  ] as const) {
    const report = await asker.ask<Report>('GET', path(`groupBy=${groupBy}`));
    rows += await compare(client, report, keys);
  }
  show('equal to a recomputation from the movements', `${rows} rows, to the cent`);
}

async function measure(url: string, token: string): Promise<number> {
  const service = await startService({ DATABASE_URL: url });
  const asker = new Asker(service, token);
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await checkAll(client, asker);
    const http = await overHttp(asker);
    const bare = await bareSql(url, token);
    for (const [name, times] of http) {
      show(name, `${timesOf(times)}   bare SQL p50 ${at(bare.get(name) ?? [], 0.5).toFixed(0)} ms`);
    }
    const all = [...http.values()].flat();
    show('all of them over HTTP', timesOf(all));
    const live = [];
    for (let run = 0; run < 4; run += 1) live.push(await timed(() => client.query(LIVE)));
    show('by template, from the restorations themselves', `p50 ${at(live, 0.5).toFixed(0)} ms`);
    await afterChanges(client, asker);
    return at(all, 0.95);
  } finally {
    await client.end();
    await stopService(service);
  }
}

/** Visits of three months are reversed: the first report after it works those months out again. */
async function afterChanges(client: pg.Client, asker: Asker): Promise<void> {
  const { rows } = await client.query<{ id: string }>(
    `SELECT DISTINCT ON (date_trunc('month', visited_on)) id FROM visits
     WHERE visited_on > '2022-05-01' ORDER BY date_trunc('month', visited_on), id LIMIT 3`,
  );
  const note = { note: 'Entered wrongly.' };
  for (const { id } of rows) await asker.ask('POST', `/api/visits/${id}/reversal`, note);
  const first = await timed(() => asker.ask('GET', path('')));
  const next = await timed(() => asker.ask('GET', path('')));
  const text = `first ${first.toFixed(0)} ms, then ${next.toFixed(0)} ms`;
  show('by template, after changes in three months', text);
  await checkAll(client, asker);
}

async function main(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'traybook-bench-'));
  chmodSync(folder, 0o755); // as root the server works as another user
  try {
    const server = await startEmbeddedServer({ dataDir: join(folder, 'server') });
    try {
      await migrateDatabase(server.url);
      const { token } = await openPractice(server.url);
      const seconds = (await timed(() => fillRestorations(server.url, RESTORATIONS))) / 1000;
      show('restorations filled', `${RESTORATIONS} in ${seconds.toFixed(0)} s`);
      const p95 = await measure(server.url, token);
      show('limit', `${LIMIT} ms at p95: ${p95 <= LIMIT ? 'kept' : 'BROKEN'}`);
      if (p95 > LIMIT) process.exitCode = 1;
    } finally {
      await server.stop();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

await main();
