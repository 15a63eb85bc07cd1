import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { migrateDatabase, startEmbeddedServer } from '#lib/platform';
import { createApp } from '../../apps/api/src/index.js';
import { bareClients, record, replay } from './replay.js';
import { Asker, at, type Cpu, cpuOf, load, show, timed } from './report-asker.js';
import { postMany, waitingChanges } from './report-changes.js';
import { compare, type Report, recompute } from './report-check.js';
import { fillRestorations, openPractice } from './report-fill.js';
import { startService, stopService } from './start-up.js';

const RESTORATIONS = Number(process.env.TRAYBOOK_BENCH_RESTORATIONS ?? 1_000_000);
const RUNS = Number(process.env.TRAYBOOK_BENCH_RUNS ?? 40);
const CPU_RUNS = 10;
const POSTINGS = 10_000;
const LIMIT = 300;
const TEMPLATE = '0000000b-0000-7000-8000-000000000004';
const DENTIST = '00000002-0000-7000-8000-000000000002';

const FILTERS: Record<string, string> = {
  'by template, everything': '',
  'by reason, everything': 'groupBy=reason',
  'by template and reason, everything': 'groupBy=template,reason',
  'by month, everything': 'groupBy=month',
  'by dentist and month, everything': 'groupBy=dentist,month',
  'by template, reason and month, everything': 'groupBy=template,reason,month',
  'by template, one year': 'from=2024-01-01&to=2024-12-31',
  'by dentist, mid-month to mid-month': 'groupBy=dentist&from=2022-03-17&to=2024-09-12',
  'by template, all but a day at both ends': 'from=2021-03-02&to=2025-09-29',
  'by month, all but a day at both ends': 'groupBy=month&from=2021-03-02&to=2025-09-29',
  'by reason, two weeks': 'groupBy=reason&from=2025-03-03&to=2025-03-16',
  'one template by month': `groupBy=month&templateId=${TEMPLATE}`,
  'one dentist by template, two years': `from=2023-01-01&to=2024-12-31&dentistId=${DENTIST}`,
};

// Over a year of the same book; nothing is promised of these, so that they are only shown.
const YEAR = 'from=2024-01-01&to=2024-12-31';
const OTHERS: Record<string, string> = {
  'template usage': '/api/reports/template-usage',
  'price changes, one year': `/api/reports/price-changes?${YEAR}`,
  'chair time, one year': `/api/reports/chair-time?${YEAR}`,
  'waste, one year': `/api/reports/waste?${YEAR}`,
  'habits, one year': `/api/reports/habits?${YEAR}`,
  'variances, one year': `/api/reports/variances?${YEAR}`,
  'contributions, one year': `/api/reports/contributions?${YEAR}`,
  'supply share, one year': `/api/reports/supply-share?${YEAR}`,
  'restorations, the dearest': '/api/restorations',
};

// As the report was before it had monthly tables: from the restorations themselves.
const LIVE = `
SELECT r.template_id, count(*), count(DISTINCT r.visit_id), sum(r.own_cost + r.shared_cost),
       percentile_disc(0.5) WITHIN GROUP (ORDER BY r.own_cost + r.shared_cost)
FROM restorations r JOIN visits v ON v.id = r.visit_id
WHERE v.reversed_at IS NULL GROUP BY GROUPING SETS ((r.template_id), ())`;

const path = (filter: string) => `/api/reports/restoration-costs?${filter}`;

function timesOf(times: number[]): string {
  return `p50 ${at(times, 0.5).toFixed(0)} ms   p95 ${at(times, 0.95).toFixed(0)} ms`;
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

async function checkAll(
  client: pg.Client,
  asker: Asker,
  from: 'movements' | 'restorations' = 'movements',
): Promise<void> {
  await recompute(client, from);
  let rows = 0;
  for (const [groupBy, keys] of [
    ['template', ['templateId']],
    ['reason,month', ['reason', 'month']],
    ['template,reason,dentist,month', ['templateId', 'reason', 'dentistId', 'month']],
  ] as const) {
    const report = await asker.ask<Report>('GET', path(`groupBy=${groupBy}`));
    rows += await compare(client, report, keys);
  }
  show(`equal to a recomputation from the ${from}`, `${rows} rows, to the cent`);
}

/** What one report costs the processor, which other programs on the machine do not change much. */
async function cpuPerReport(client: pg.Client, asker: Asker, filter: string): Promise<string> {
  const before = await cpuOf(client, asker);
  for (let run = 0; run < CPU_RUNS; run += 1) await asker.ask('GET', path(filter));
  const after = await cpuOf(client, asker);
  const each = (key: keyof Cpu) => ((after[key] - before[key]) / CPU_RUNS).toFixed(0);
  return `CPU ${each('service')} + ${each('database')} ms`;
}

async function measure(url: string, token: string): Promise<number> {
  const service = await startService({ DATABASE_URL: url });
  const asker = new Asker(service, token);
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await checkAll(client, asker);
    show('load of the machine', load());
    const http = await overHttp(asker);
    const bare = await bareSql(url, token);
    for (const [name, times] of http) {
      const sql = at(bare.get(name) ?? [], 0.5);
      const ratio = (at(times, 0.5) / sql).toFixed(1);
      const cpu = await cpuPerReport(client, asker, FILTERS[name] ?? '');
      show(name, `${timesOf(times)}   ${ratio} x its bare SQL (${sql.toFixed(0)} ms)   ${cpu}`);
    }
    const all = [...http.values()].flat();
    const [p50, p95] = [at(all, 0.5), at(all, 0.95)];
    show('all of them over HTTP', `${timesOf(all)}   ${(p95 / LIMIT).toFixed(2)} of ${LIMIT} ms`);
    const live: number[] = [];
    for (let run = 0; run < 4; run += 1) live.push(await timed(() => client.query(LIVE)));
    const sql = at(live, 0.5);
    const share = `${(p50 / sql).toFixed(3)} of it`;
    show('bare SQL on the restorations, by template', `p50 ${sql.toFixed(0)} ms; reports ${share}`);
    show('load of the machine', load());
    await afterReversals(client, asker);
    await afterPostings(client, asker);
    await showOthers(asker);
    return p95;
  } finally {
    await client.end();
    await stopService(service);
  }
}

/** Visits of three months are reversed. */
async function afterReversals(client: pg.Client, asker: Asker): Promise<void> {
  const { rows } = await client.query<{ id: string }>(
    `SELECT DISTINCT ON (date_trunc('month', visited_on)) id FROM visits
     WHERE visited_on > '2022-05-01' ORDER BY date_trunc('month', visited_on), id LIMIT 3`,
  );
  const note = { note: 'Entered wrongly.' };
  for (const { id } of rows) await asker.ask('POST', `/api/visits/${id}/reversal`, note);
  const first = await timed(() => asker.ask('GET', path('')));
  show('first report after three reversals', `${first.toFixed(0)} ms`);
  await checkAll(client, asker);
}

/** So many visits at once, all over the book: the first report, and how long folding them takes. */
async function afterPostings(client: pg.Client, asker: Asker): Promise<void> {
  await postMany(client, POSTINGS);
  for (const [name, filter] of [
    ['by template', ''],
    ['by month', 'groupBy=month'],
  ] as const) {
    const time = await timed(() => asker.ask('GET', path(filter)));
    const waiting = await waitingChanges(client);
    const share = `${(time / LIMIT).toFixed(2)} of ${LIMIT} ms; ${waiting} changes to be folded`;
    show(`${name}, first after ${POSTINGS} postings`, `${time.toFixed(0)} ms   ${share}`);
  }
  await checkAll(client, asker, 'restorations');
  const seconds = await timed(async () => {
    while ((await waitingChanges(client)) > 0) {
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  });
  show('folded in the background', `${(seconds / 1000).toFixed(0)} s later`);
  await checkAll(client, asker, 'restorations');
}

async function showOthers(asker: Asker): Promise<void> {
  for (const [name, url] of Object.entries(OTHERS)) {
    const [first, next] = [
      await timed(() => asker.ask('GET', url)),
      await timed(() => asker.ask('GET', url)),
    ];
    show(name, `first ${first.toFixed(0)} ms, then ${next.toFixed(0)} ms`);
  }
  show('load of the machine', load());
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
