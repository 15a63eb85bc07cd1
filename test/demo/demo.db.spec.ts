import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { createApp } from '../../apps/api/src/index.js';
import { builtWeb } from '../browser/harness/build-web.js';
import { asOwner, createTestDatabase, type TestDatabase } from '../harness/database.js';
import { BOUGHT } from './bought.js';
import { DayClock } from './day-clock.js';
import { loadDemo } from './load-demo.js';
import { PEOPLE } from './practice.js';
import { cutTo, fillPath, readTour } from './readme-tour.js';
import { buildScenario, type Scenario } from './scenario.js';
import { walkAsEachRole } from './walk.js';

const TODAY = '2026-11-25';
/** Generous, because other tests run beside it; alone on two cores it is about a minute. */
const MOST_SECONDS = 400;

let database: TestDatabase;
let client: pg.Client;
let scenario: Scenario;
let seconds: number;
const told: { done: number; total: number }[] = [];

async function rows<Row extends object>(sql: string, values: unknown[] = []): Promise<Row[]> {
  return (await client.query<Row>(sql, values)).rows;
}

async function count(sql: string, values: unknown[] = []): Promise<number> {
  const [row] = await rows<{ n: string }>(`SELECT count(*) AS n ${sql}`, values);
  return Number(row?.n);
}

function load(onProgress: (done: number, total: number) => void = () => undefined) {
  return loadDemo({ databaseUrl: database.url, today: TODAY, onProgress });
}

beforeAll(async () => {
  database = await createTestDatabase();
  client = await asOwner(database.url);
  scenario = buildScenario(TODAY);
  await interruptedAfter(700);
  const begin = Date.now();
  const { loaded } = await load((done, total) => told.push({ done, total }));
  seconds = (Date.now() - begin) / 1000;
  process.stderr.write(`The demo was loaded in ${seconds.toFixed(0)} s\n`);
  expect(loaded).toBe(true);
}, MOST_SECONDS * 2000);

/** Stops the load in the middle of a day, as somebody does who presses Ctrl-C. */
async function interruptedAfter(steps: number): Promise<void> {
  const stopped = load((done) => {
    if (done >= steps) throw new Error('Stopped on purpose');
  });
  await expect(stopped).rejects.toThrow('Stopped on purpose');
}

afterAll(async () => {
  await client.end();
  await database.drop();
});

describe('loading the demo', () => {
  it('goes on where it was stopped and tells how far it is', () => {
    expect(told.at(-1)).toEqual({ done: scenario.steps.length, total: scenario.steps.length });
    expect(told).toHaveLength(scenario.steps.length);
    expect(seconds).toBeLessThan(MOST_SECONDS);
  });

  it('books every step once', async () => {
    const expected = new Map<string, number>();
    for (const { kind } of scenario.steps) expected.set(kind, (expected.get(kind) ?? 0) + 1);
    expect(await count('FROM visits')).toBe(expected.get('visit'));
    expect(await count('FROM deliveries')).toBe(expected.get('delivery'));
    expect(await count('FROM consumables')).toBe(expected.get('consumable'));
    expect(await count('FROM presentations')).toBe(expected.get('presentation'));
    expect(await count('FROM lot_status_changes')).toBe(expected.get('lotStatus'));
    const booked = await count("FROM idempotency_keys WHERE key LIKE 'demo/%'");
    const bookings = scenario.steps.filter((step) =>
      ['delivery', 'move', 'writeOff', 'return', 'count', 'opening', 'visit'].includes(step.kind),
    );
    // What the scenario names is nearly always there; see BookSteps.
    expect(booked).toBeGreaterThan(bookings.length * 0.97);
  });

  it('says quickly that all is there, and how to sign in', async () => {
    const begin = Date.now();
    const { loaded, signIns } = await load();
    expect(Date.now() - begin).toBeLessThan(300);
    expect(loaded).toBe(false);
    expect(signIns.map((each) => each.signInName)).toEqual(PEOPLE.map((p) => p.signInName));
  });

  it('refuses a book that belongs to another practice', async () => {
    const other = await createTestDatabase();
    const owner = await asOwner(other.url);
    try {
      await owner.query(
        `INSERT INTO practices (id, name, time_zone, currency)
         VALUES ('0199c0de-0000-7000-8000-000000000001', 'Another', 'Europe/Vienna', 'EUR')`,
      );
      const refused = loadDemo({ databaseUrl: other.url, onProgress: () => undefined });
      await expect(refused).rejects.toThrow('belongs to another practice');
    } finally {
      await owner.end();
      await other.drop();
    }
  });
});

describe('the book of the demo', () => {
  it('balances for every layer, in quantity and in cost', async () => {
    expect(await count('FROM layer_balances')).toBeGreaterThan(500);
    expect(await count('FROM layer_balances WHERE NOT balanced')).toBe(0);
    const wrong = await count(
      `FROM layers l JOIN layer_balances b ON b.layer_id = l.id
       WHERE b.cost_in - b.cost_out + b.revalued <> l.landed_cost - l.out_cost
         AND l.out_quantity < l.received`,
    );
    expect(wrong).toBe(0);
  });

  it('splits the cost of every visit over its restorations to the cent', async () => {
    const wrong = await count(
      `FROM visits v
       JOIN LATERAL (SELECT sum(own_cost + shared_cost) AS cost FROM restorations
                     WHERE visit_id = v.id) r ON true
       WHERE r.cost <> round(v.material_cost, 2)`,
    );
    expect(wrong).toBe(0);
    const parts = await count(
      `FROM restorations r
       JOIN LATERAL (SELECT sum(cost) AS cost FROM restoration_costs
                     WHERE restoration_id = r.id) c ON true
       WHERE c.cost <> r.own_cost + r.shared_cost`,
    );
    expect(parts).toBe(0);
  });

  it('plans what the scenario expects a visit to use', async () => {
    const [sums] = await rows<{ lines: string; dispensed: string }>(
      `SELECT count(*) AS lines, sum(dispensed)::text AS dispensed
       FROM usage_lines u JOIN visits v ON v.id = u.visit_id WHERE v.reversed_at IS NULL`,
    );
    const uses = scenario.world.days.flatMap((d) => d.visits.flatMap((visit) => visit.uses));
    expect(Number(sums?.lines)).toBe(uses.length);
    const expected = uses.reduce((sum, use) => sum + use.dispensed, 0) / 1_000_000;
    expect(Number(sums?.dispensed)).toBeCloseTo(expected, 3);
  });

  it('costs a visit a plausible amount', async () => {
    const [cost] = await rows<{ least: string; mean: string; most: string }>(
      `SELECT percentile_disc(0.05) WITHIN GROUP (ORDER BY material_cost) AS least,
              avg(material_cost) AS mean,
              percentile_disc(0.95) WITHIN GROUP (ORDER BY material_cost) AS most
       FROM visits WHERE reversed_at IS NULL`,
    );
    expect(Number(cost?.least)).toBeGreaterThan(4);
    expect(Number(cost?.mean)).toBeGreaterThan(8);
    expect(Number(cost?.mean)).toBeLessThan(40);
    expect(Number(cost?.most)).toBeLessThan(90);
  });

  it('has a recalled lot in five or more charts, and some of it on hand', async () => {
    const [lot] = await rows<{ charts: string; scanned: string; on_hand: string }>(
      `SELECT count(DISTINCT v.chart_reference) AS charts,
              count(*) FILTER (WHERE m.sureness = 'scanned') AS scanned,
              (SELECT sum(h.on_hand) FROM holdings h JOIN layers l ON l.id = h.layer_id
               WHERE l.lot_status = 'recalled') AS on_hand
       FROM movements m JOIN layers l ON l.id = m.layer_id JOIN visits v ON v.id = m.visit_id
       WHERE l.lot_status = 'recalled' AND m.to_account = 'visit'`,
    );
    expect(Number(lot?.charts)).toBeGreaterThanOrEqual(5);
    expect(Number(lot?.scanned)).toBeGreaterThan(0);
    expect(Number(lot?.on_hand)).toBeGreaterThan(0);
  });

  it('has something to act on of every kind', async () => {
    const onHand = 'FROM holdings h JOIN layers l ON l.id = h.layer_id WHERE h.on_hand > 0';
    expect(await count(`${onHand} AND l.expires_on < $1`, [TODAY])).toBeGreaterThan(0);
    const soon = `${onHand} AND l.expires_on BETWEEN $1 AND $1::date + 60`;
    expect(await count(soon, [TODAY])).toBeGreaterThan(0);
    expect(await count(`${onHand} AND h.use_by < $1`, [TODAY])).toBeGreaterThan(0);
    const low = await count(
      `FROM consumables c WHERE c.reorder_at >= (
         SELECT coalesce(sum(h.on_hand), 0) FROM layers l JOIN holdings h ON h.layer_id = l.id
         WHERE l.consumable_id = c.id AND l.lot_status = 'released'
           AND coalesce(l.expires_on, 'infinity') >= $1
           AND coalesce(h.use_by, 'infinity') >= $1)`,
      [TODAY],
    );
    expect(low).toBeGreaterThanOrEqual(5);
    const open = await count('FROM shortfalls WHERE settled < quantity AND cancelled_at IS NULL');
    expect(open).toBeGreaterThanOrEqual(3);
    expect(open).toBeLessThan(80);
    expect(await count('FROM shortfalls WHERE settled = quantity')).toBeGreaterThan(20);
  });

  it('has orders in every state: one late, one that came in part, and many that came', async () => {
    const states = await rows<{ state: string; n: number }>(
      'SELECT state, count(*)::int AS n FROM orders GROUP BY state ORDER BY state',
    );
    const every = ['approved', 'cancelled', 'closed', 'draft', 'sent'];
    expect(states.map(({ state }) => state)).toEqual(every);
    expect(states.find(({ state }) => state === 'closed')?.n).toBeGreaterThan(10);
    const late = "FROM orders WHERE state = 'sent' AND expected_on + 2 < $1";
    expect(await count(late, [TODAY])).toBe(1);
    const inPart = await count(
      `FROM orders o WHERE o.state = 'sent' AND EXISTS (SELECT FROM layers l
         JOIN order_lines ol ON ol.id = l.order_line_id WHERE ol.order_id = o.id)`,
    );
    expect(inPart).toBe(1);
  });

  it('has a kit that is used, prices by number, a stand-in and two wrong papers', async () => {
    const [found] = await rows<{ to_stock: string; amount: string }>(BOUGHT);
    const counts = { lots: 'R3107 T3415 K3022', used: true, prices: 3, pairs: 1, corrected: 1 };
    expect(found).toMatchObject(counts);
    // Some of it was used before the invoice came, and some is left.
    expect(Number(found?.to_stock)).toBeGreaterThan(0);
    expect(Number(found?.amount)).toBeGreaterThan(0);
  });

  it('has every way in which goods move', async () => {
    const ways = await rows<{ way: string }>(
      `SELECT DISTINCT from_account || ' to ' || to_account AS way FROM movements`,
    );
    expect(ways.map((row) => row.way)).toEqual(
      expect.arrayContaining([
        'supplier to location',
        'location to location',
        'location to visit',
        'location to waste',
        'location to count',
        'count to location',
        'location to return',
        'visit to location',
        'location to supplier',
      ]),
    );
    const sureness = await rows<{ sureness: string }>(
      'SELECT DISTINCT sureness FROM movements WHERE sureness IS NOT NULL ORDER BY 1',
    );
    const degrees = ['assumed', 'not stated', 'open container', 'scanned'];
    expect(sureness.map((row) => row.sureness)).toEqual(degrees);
    expect(await count('FROM visits WHERE reversed_at IS NOT NULL')).toBe(1);
    expect(await count('FROM deliveries WHERE reversed_at IS NOT NULL')).toBe(1);
    expect(await count('FROM usage_lines WHERE attempt = 2')).toBeGreaterThan(100);
  });
});

describe('the tour of README', () => {
  it('shows what the demo really answers', async () => {
    const clock = new DayClock(TODAY);
    const app = await createApp({ databaseUrl: database.url, clock, logLevel: 'error' });
    try {
      const [owner] = PEOPLE;
      const signedIn = await app.inject({
        method: 'POST',
        url: '/api/session',
        payload: { signInName: owner?.signInName, password: owner?.password },
      });
      const cookie = String(signedIn.headers['set-cookie']).split(';')[0] ?? '';
      const alerts = await app.inject({ url: '/api/reorder/alerts', headers: { cookie } });
      const risks = alerts
        .json<{ alerts: { kind: string; bookedVisits: object[] }[] }>()
        .alerts.filter((alert) => alert.kind === 'runs out before delivery');
      expect(risks.some((alert) => alert.bookedVisits.length > 0)).toBe(true);
      const answers = new Map<string, unknown>();
      const tour = readTour();
      expect(tour.length).toBeGreaterThanOrEqual(6);
      for (const { path, name, excerpt } of tour) {
        const url = fillPath(path, answers);
        const answer: unknown = (await app.inject({ url, headers: { cookie } })).json();
        expect({ path, answer: cutTo(excerpt, answer) }).toEqual({ path, answer: excerpt });
        if (name !== undefined) answers.set(name, answer);
      }
    } finally {
      await app.close();
    }
  });
});

describe('the browser app on the demo', () => {
  it('leads each role along its main path', async () => {
    const app = await createApp({
      databaseUrl: database.url,
      clock: new DayClock(TODAY),
      logLevel: 'error',
      webFolder: builtWeb(),
    });
    await app.listen(0, '127.0.0.1');
    try {
      await walkAsEachRole(await app.getUrl());
    } finally {
      await app.close();
    }
  }, 120_000);
});
