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

// Random histories of one practice, sent by several people at the same moment, against the real
// database. Whatever is answered, the rules hold afterwards, and nothing is ever answered with a 500.

const RUNS = Number(process.env.TRAYBOOK_MODEL_RUNS ?? 1000);
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

const DAYS = ['2026-03-02', '2026-03-20', '2026-05-04', '2026-07-01', '2026-11-20'] as const;
const anyDay = fc.constantFrom(...DAYS);
const anyItem = fc.constantFrom('etchant', 'adhesive', 'paste', 'capsule', 'strip', 'bib');
const anyPlace = fc.constantFrom('store', 'room', 'otherRoom');
const pick = fc.nat({ max: 1_000_000 });
const amount = fc.constantFrom('0.01', '0.25', '0.333333', '1', '1.5', '2', '3', '4', '7', '40');

const step = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constant('deliver' as const),
      day: anyDay,
      item: anyItem,
      at: anyPlace,
      packs: fc.integer({ min: 1, max: 2 }),
      price: fc.constantFrom('0', '0.07', '9.99', '100'),
      lot: fc.constantFrom('L1', 'L2', null),
      expires: fc.constantFrom('2026-04-01', '2026-06-30', '2028-01-31'),
      freight: fc.constantFrom('0', '3.33'),
    }),
  },
  {
    weight: 6,
    arbitrary: fc.record({
      do: fc.constant('visit' as const),
      day: anyDay,
      at: anyPlace,
      teeth: fc.subarray(['11', '21', '36'], { minLength: 1 }),
      attempts: fc.integer({ min: 1, max: 3 }),
      capsules: fc.boolean(),
      key: fc.constantFrom('equal', 'minutes', 'surfaces'),
      more: fc.option(fc.record({ item: anyItem, amount })),
      scan: fc.option(pick),
    }),
  },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('reverse visit' as const), which: pick }) },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('reverse delivery' as const), which: pick }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('reverse movement' as const), which: pick }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constantFrom(
        'write off' as const,
        'return' as const,
        'move' as const,
        'count' as const,
      ),
      which: pick,
      amount,
      at: anyPlace,
      day: anyDay,
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('open' as const), which: pick, day: anyDay }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('hold' as const),
      which: pick,
      status: fc.constantFrom('recalled', 'quarantined', 'released'),
    }),
  },
);
type Step = typeof step extends fc.Arbitrary<infer T> ? T : never;

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
  return visitBody(s, {
    visitedOn: the.day,
    locationId: s[the.at as 'room'],
    costShareKey: the.key,
    restorations: the.teeth.map((tooth) =>
      restoration(s, {
        tooth,
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
    case 'deliver': {
      const line = deliveryLine(
        s[the.item as 'bib'] as Item,
        s[the.at as 'room'],
        the.packs,
        the.price,
        {
          lotNumber: the.lot,
          expiresOn: the.expires,
        },
      );
      return post('/deliveries', {
        supplierId: s.supplier,
        receivedOn: the.day,
        freight: the.freight,
        lines: [line],
      });
    }
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
