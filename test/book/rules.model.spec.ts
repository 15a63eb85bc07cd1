import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import pg from 'pg';
import {
  consumablesOf,
  deliveryLine,
  type Item,
  openSmallBook,
  restoration,
  type SmallBook,
  TestService,
  visitBody,
  withFreshCatalogue,
} from './book.js';
import { expectRulesHold } from './invariants.js';
import { correct, delivery, kitParts } from './model-deliveries.js';
import { type Step, step } from './model-steps.js';

// Random histories of one practice, sent by several people at the same moment, against the real
// database. Whatever is answered, the rules hold afterwards, and nothing is ever answered with a 500.

const RUNS = Number(process.env.TRAYBOOK_MODEL_RUNS ?? 600);
const SEED = 20_261_125;

let service: TestService;
let owner: pg.Pool;
let shared: SmallBook;

beforeAll(async () => {
  service = await TestService.start();
  owner = new pg.Pool({ connectionString: service.databaseUrl, max: 8 });
  shared = await openSmallBook(service, 'model');
});

afterAll(async () => {
  await owner.end();
  await service.stop();
});

const RESTORATIONS = `SELECT DISTINCT r.id FROM restorations r JOIN usage_lines u ON u.visit_id = r.visit_id
  WHERE u.consumable_id = ANY($1)`;
const VISITS = 'SELECT DISTINCT visit_id AS id FROM usage_lines WHERE consumable_id = ANY($1)';
const DELIVERIES = 'SELECT DISTINCT delivery_id AS id FROM layers WHERE consumable_id = ANY($1)';
const MOVEMENTS =
  'SELECT m.id FROM movements m JOIN layers l ON l.id = m.layer_id WHERE l.consumable_id = ANY($1)';
const HOLDINGS = `SELECT h.id FROM holdings h JOIN layers l ON l.id = h.layer_id
  WHERE h.on_hand > 0 AND l.consumable_id = ANY($1)`;

/** One of the rows of this history's consumables; an unknown id when there is none yet. */
async function some(s: SmallBook, sql: string, which: number): Promise<string> {
  const { rows } = await owner.query<{ id: string }>(`${sql} ORDER BY id`, [consumablesOf(s)]);
  return rows[which % Math.max(1, rows.length)]?.id ?? randomUUID();
}

async function visit(s: SmallBook, the: Extract<Step, { do: 'visit' }>): Promise<object> {
  const lotId =
    the.scan === null
      ? null
      : await some(s, 'SELECT id FROM lots WHERE consumable_id = ANY($1)', the.scan);
  const more = the.more && {
    consumableId: (s[the.more.item as 'bib'] as Item).id,
    dispensed: the.more.amount,
  };
  const redoOf = the.redo === null ? null : await some(s, RESTORATIONS, the.redo);
  return visitBody(s, {
    minutes: the.minutes,
    assistantMinutes: the.assistantMinutes,
    visitedOn: the.day,
    locationId: s[the.at as 'room'],
    costShareKey: the.key,
    restorations: the.teeth.map((tooth, i) =>
      restoration(s, {
        tooth,
        // Refused unless it is of the same tooth and no later day.
        redoOf: i === 0 ? redoOf : null,
        cavityClass: null,
        attempts: the.attempts,
        ...(the.capsules ? { templateId: s.capsuleTemplate, shades: [] } : {}),
      }),
    ),
    usage: more ? [more] : [],
    scanned: lotId === null ? [] : [{ lotId }],
  });
}

async function send(s: SmallBook, the: Step): Promise<number> {
  const post = async (path: string, body: unknown, method = 'POST') => {
    const answer = await s.book.ask(method, path, body);
    if (answer.status >= 500) throw new Error(`${path} ${answer.text} for ${JSON.stringify(body)}`);
    return answer.status;
  };
  const note = 'Entered wrongly.';
  switch (the.do) {
    case 'deliver':
      return post('/deliveries', delivery(s, the));
    case 'make a kit': {
      return post(`/presentations/${s.adhesive.presentation}/parts`, kitParts(s), 'PUT');
    }
    case 'invoice': {
      const lines = [{ lineNumber: 1, packPrice: the.price }];
      const freight = the.freight === null ? {} : { freight: the.freight };
      return post(`/deliveries/${await some(s, DELIVERIES, the.which)}/invoice`, {
        lines,
        ...freight,
      });
    }
    case 'correct':
      return correct(owner, s, the, post);
    case 'visit':
      return post('/visits', await visit(s, the));
    case 'reverse visit':
      return post(`/visits/${await some(s, VISITS, the.which)}/reversal`, { note });
    case 'reverse delivery':
      return post(`/deliveries/${await some(s, DELIVERIES, the.which)}/reversal`, {
        note,
      });
    case 'reverse movement':
      return post(`/movements/${await some(s, MOVEMENTS, the.which)}/reversal`, {
        note,
      });
    case 'hold':
      return post(
        `/lots/${await some(s, 'SELECT id FROM lots WHERE consumable_id = ANY($1)', the.which)}/status`,
        { status: the.status, note },
        'PUT',
      );
    default: {
      const holdingId = await some(s, HOLDINGS, the.which);
      if (the.do === 'open') return post('/stock/openings', { holdingId, openedOn: the.day });
      const common = { holdingId, quantity: the.amount, occurredOn: the.day };
      if (the.do === 'write off')
        return post('/stock/write-offs', { ...common, reason: 'damaged' });
      if (the.do === 'return') return post('/stock/returns', { ...common, note });
      if (the.do === 'move')
        return post('/stock/moves', { ...common, toLocationId: s[the.at as 'room'] });
      return post('/counts', { countedOn: the.day, lines: [{ holdingId, counted: the.amount }] });
    }
  }
}

/** Several people at once, each sending their own list of steps one after the other. */
async function work(s: SmallBook, people: readonly (readonly Step[])[]): Promise<number> {
  const done = await Promise.all(
    people.map(async (steps) => {
      let booked = 0;
      for (const the of steps) if ((await send(s, the)) < 300) booked += 1;
      return booked;
    }),
  );
  return done.reduce((a, b) => a + b, 0);
}

describe('any history, sent by several people at once', () => {
  it(`keeps the rules (${RUNS} histories)`, async () => {
    let booked = 0;
    let history = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(step, { minLength: 1, maxLength: 6 }), { minLength: 2, maxLength: 5 }),
        async (people) => {
          history += 1;
          const s = await withFreshCatalogue(shared, String(history));
          booked += await work(s, people);
          await expectRulesHold(owner, consumablesOf(s));
        },
      ),
      { numRuns: RUNS, seed: SEED, endOnFailure: true },
    );
    await expectRulesHold(owner);
    expect(booked).toBeGreaterThan(RUNS * 2);
  }, 900_000);

  it('has corrected lines, booked later invoices, and received kits', async () => {
    const { rows } = await owner.query<Record<string, number>>(
      `SELECT count(*) FILTER (WHERE continues_layer_id IS NOT NULL)::int AS continued,
              count(*) FILTER (WHERE undone)::int AS replaced,
              count(*) FILTER (WHERE kit_lot_id IS NOT NULL)::int AS in_kits,
              (SELECT count(*)::int FROM price_variances WHERE amount <> 0 AND to_stock <> 0
                 AND kind = 'invoice') AS invoiced
       FROM layers`,
    );
    for (const count of Object.values(rows[0] ?? { none: 0 })) expect(count).toBeGreaterThan(0);
  });

  it('has recorded shared doses, redone work and the time of assistants', async () => {
    const { rows } = await owner.query<Record<string, number>>(
      `SELECT (SELECT count(*)::int FROM (SELECT FROM usage_lines u WHERE u.shares_dose AND charged > 0
                 GROUP BY visit_id, consumable_id
                 HAVING count(*) > 1 AND sum(charged) > sum(dispensed)) d) AS doses,
              (SELECT count(*)::int FROM restorations WHERE redo_of IS NOT NULL) AS redone,
              (SELECT count(*)::int FROM restorations WHERE assistant_minutes <> 40) AS assisted`,
    );
    const [found] = rows;
    for (const count of [found?.doses, found?.redone, found?.assisted]) {
      expect(count).toBeGreaterThan(0);
    }
  });

  it('costs the minutes of chairs and assistants exactly, used and idle', async () => {
    const { book } = shared;
    await book.done('POST', '/cost-rates', {
      validFrom: '2026-01-01',
      yearlyCost: '168000',
      practicalMinutes: 192_000,
      assistantRate: '0.55',
      assistantPracticalMinutes: 96_000,
    });
    const report = await book.done<{
      totals: { assistantMinutes: number; assistantCost: string; minutes: number };
      assistantCapacity: Record<'cost' | 'usedCost' | 'idleCost', string>;
    }>('GET', '/reports/chair-time?from=2026-01-01&to=2026-12-31');
    const { rows } = await owner.query<{ minutes: string; assistants: string; cost: string }>(
      `SELECT sum(r.minutes)::int AS minutes, sum(r.assistant_minutes)::int AS assistants,
              (sum(r.assistant_minutes) * 0.55)::numeric(20, 2)::text AS cost
       FROM restorations r JOIN visits v ON v.id = r.visit_id
       WHERE v.reversed_at IS NULL
         AND v.practice_id = (SELECT practice_id FROM locations WHERE id = $1)`,
      [shared.store],
    );
    const { totals, assistantCapacity: idle } = report;
    expect([totals.minutes, totals.assistantMinutes, totals.assistantCost]).toEqual([
      rows[0]?.minutes,
      rows[0]?.assistants,
      rows[0]?.cost,
    ]);
    const cents = (text: string) => BigInt(text.replace('.', ''));
    expect(cents(idle.usedCost) + cents(idle.idleCost)).toBe(cents(idle.cost));
    expect(idle.usedCost).toBe(totals.assistantCost);
  });

  it('exhausts layers to exactly what was paid for them', async () => {
    const { rows } = await owner.query<{ n: number }>(
      'SELECT count(*)::int AS n FROM layers WHERE out_quantity = received AND landed_cost > 0',
    );
    expect(rows[0]?.n).toBeGreaterThan(0);
  });
});

describe('many at once on the same syringe', () => {
  it('posts them all, opens one container at a time, and the shortfall is what the book lacks', async () => {
    const t = await openSmallBook(service, 'rush');
    await t.book.deliver(t.supplier, '2026-01-05', [
      deliveryLine(t.paste, t.store, 2, '72', { lotNumber: 'P-1', expiresOn: '2028-06-30' }),
    ]);
    // 8 g there, 60 visits of 0.2 g each are 12 g
    const body = (n: number) =>
      visitBody(t, {
        chartReference: `R-${n}`,
        usage: [{ line: `r1/a1/5/${t.paste.id}`, dispensed: '0.2' }],
      });
    const answers = await Promise.all(
      Array.from({ length: 60 }, (_, n) => t.book.ask('POST', '/visits', body(n), 'assistant')),
    );
    expect(answers.map((a) => a.status)).toEqual(Array.from({ length: 60 }, () => 201));
    const { rows } = await owner.query(
      `SELECT (SELECT sum(quantity) FROM shortfalls WHERE consumable_id = $1)::text AS missing,
         (SELECT sum(h.on_hand) FROM holdings h JOIN layers l ON l.id = h.layer_id
          WHERE l.consumable_id = $1)::text AS on_hand,
         (SELECT count(*)::int FROM holdings h JOIN layers l ON l.id = h.layer_id
          WHERE l.consumable_id = $1 AND h.opened_on IS NOT NULL) AS opened`,
      [t.paste.id],
    );
    expect(rows).toEqual([{ missing: '4.000000', on_hand: '0.000000', opened: 2 }]);
    await expectRulesHold(owner);
  });
});
