import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import pg from 'pg';
import { deliveryLine, type SmallBook, visitBody, withFreshCatalogue } from '../book/book.js';
import { TestService } from '../http/service.js';
import { type Forecast, openPlanningBook, type PlanningBook, TODAY } from './planning-book.js';
import { SetClock } from './post-boxes.js';

const clock = new SetClock(new Date(`${TODAY}T06:00:00Z`));
let service: TestService;
let owner: pg.Pool;
let s: PlanningBook;

beforeAll(async () => {
  service = await TestService.start({ clock });
  owner = new pg.Pool({ connectionString: service.databaseUrl, max: 4 });
  s = await openPlanningBook(service, 'plan');
});

afterAll(async () => {
  await owner.end();
  await service.stop();
});

const forecastOf = (id: string, query = '') =>
  s.book.done<Forecast>('GET', `/reorder/forecasts/${id}${query}`);

/** What the ledger says by day: movements to visits less those back, and what is still missing. */
async function ledgerDays(consumableId: string): Promise<Record<string, string>> {
  const { rows } = await owner.query<{ day: string; quantity: string }>(
    `SELECT v.visited_on::text AS day, trim_scale(sum(q.quantity))::text AS quantity FROM visits v
     JOIN (
       SELECT m.visit_id,
         CASE m.to_account WHEN 'visit' THEN quantity ELSE -quantity END AS quantity
       FROM movements m JOIN layers l ON l.id = m.layer_id
       WHERE l.consumable_id = $1 AND 'visit' IN (m.from_account, m.to_account)
       UNION ALL
       SELECT visit_id, quantity - settled FROM shortfalls
       WHERE consumable_id = $1 AND cancelled_at IS NULL
     ) q ON q.visit_id = v.id
     GROUP BY 1 HAVING sum(q.quantity) <> 0 ORDER BY 1`,
    [consumableId],
  );
  return Object.fromEntries(rows.map((row) => [row.day, row.quantity]));
}

const micro = (text: string) => {
  const [whole = '0', fraction = ''] = text.split('.');
  return BigInt(whole) * 1_000_000n + BigInt(fraction.padEnd(6, '0'));
};

function historyDays(forecast: Forecast): Record<string, bigint> {
  return Object.fromEntries(
    forecast.history.days.map((d) => [d.day, micro(d.issued) + micro(d.shortfall)]),
  );
}

async function expectLedger(consumableId: string): Promise<bigint> {
  const forecast = await forecastOf(consumableId);
  const ledger = Object.entries(await ledgerDays(consumableId));
  expect(historyDays(forecast)).toEqual(
    Object.fromEntries(ledger.map(([day, quantity]) => [day, micro(quantity)])),
  );
  const total = ledger.reduce((sum, [, quantity]) => sum + micro(quantity), 0n);
  expect(micro(forecast.history.total)).toBe(total);
  return total;
}

describe('the history of use', () => {
  it('is what the movements say, for every consumable and day', async () => {
    for (const { id } of [s.bib, s.etchant, s.adhesive, s.paste, s.newShade, s.strip, s.expiring]) {
      expect(await expectLedger(id)).toBeGreaterThan(0n);
    }
  });

  it('counts use in a stock-out once, settled since or not, on the day of the visit', async () => {
    const { history, assumptions } = await forecastOf(s.bib.id);
    // Each visit took one bib, whatever the book had.
    expect(history.total).toBe(String(s.visits.length));
    const missing = history.days.reduce((sum, day) => sum + Number(day.shortfall), 0);
    expect(missing).toBe(s.visits.length - 50);
    const { rows } = await owner.query<{ open: string }>(
      `SELECT trim_scale(sum(quantity - settled))::text AS open FROM shortfalls
       WHERE consumable_id = $1`,
      [s.bib.id],
    );
    expect(rows[0]?.open).toBe(String(s.visits.length - 100));
    expect(assumptions).toContain(`${missing} pieces used while the book had none count as use.`);
  });

  it('knows closed days, retakes, and weeks that add up', async () => {
    const { history } = await forecastOf(s.bib.id);
    const visitDays = new Set(history.days.map((day) => day.day));
    // Every day with a visit is evidence and no other: Fridays and holidays say nothing.
    expect(history.knownDays).toBe(visitDays.size);
    expect([history.from, history.to]).toEqual(['2025-11-03', '2026-05-03']);
    const weeks = history.weeks.reduce((sum, week) => sum + micro(week.demand), 0n);
    expect(weeks).toBe(micro(history.demand));
    const paste = (await forecastOf(s.newShade.id)).history;
    const { rows } = await owner.query<{ charged: string }>(
      `SELECT trim_scale(sum(charged))::text AS charged FROM usage_lines
       WHERE consumable_id = $1 AND attempt > 1`,
      [s.newShade.id],
    );
    const retakes = paste.days.reduce((sum, day) => sum + micro(day.retakes), 0n);
    expect(retakes).toBe(micro(rows[0]?.charged ?? ''));
    expect(retakes).toBeGreaterThan(0n);
  });

  it('of a place is that of its rooms only', async () => {
    const all = await forecastOf(s.bib.id);
    expect((await forecastOf(s.bib.id, `?locationId=${s.store}`)).history.total).toBe(
      all.history.total,
    );
    const other = await forecastOf(s.bib.id, `?locationId=${s.otherRoom}`);
    expect([other.history.total, other.history.days]).toEqual(['0', []]);
    const unknown = await s.book.ask(
      'GET',
      `/reorder/forecasts/${s.bib.id}?locationId=${s.supplier}`,
    );
    expect([unknown.status, unknown.body.code]).toEqual([422, 'unknown_reference']);
  });
});

describe('a forecast', () => {
  it('lets what died out fade, and says so', async () => {
    const [gone, alive] = [await forecastOf(s.paste.id), await forecastOf(s.newShade.id)];
    expect([gone.diedOut, alive.diedOut]).toEqual([true, false]);
    expect(gone.assumptions.join(' ')).toMatch(/seems to have died out: no use for \d+ days/);
    const last = (f: Forecast) => Number(f.horizons.at(-1)?.mean);
    expect(last(gone)).toBeLessThan(0.1 * last(alive));
  });

  it('shows each method with its score, and has chosen among them', async () => {
    const { methods, origins, choice, demandClass } = await forecastOf(s.bib.id);
    expect(origins).toBeGreaterThan(5);
    const [chosen, ...others] = methods.filter((method) => method.chosen);
    expect(others).toEqual([]);
    expect(choice).toContain(chosen?.method);
    const judged = methods.filter((method) => method.loss !== null);
    expect(judged.length).toBeGreaterThan(8);
    expect(demandClass).toBe('smooth');
  });

  it('widens with the horizon, and its range holds the recent past', async () => {
    const { horizons, history } = await forecastOf(s.bib.id);
    expect(horizons.map((h) => h.days)).toEqual([7, 14, 21, 30, 45, 60, 75, 90]);
    for (const { quantiles } of horizons) {
      const rising = quantiles.map((q) => Number(q.quantity));
      expect(rising).toEqual([...rising].sort((a, b) => a - b));
    }
    const lastMonth = history.days
      .filter((day) => day.day >= '2026-04-04')
      .reduce((sum, day) => sum + Number(day.issued) + Number(day.shortfall), 0);
    const month = horizons[2]?.quantiles ?? [];
    expect(lastMonth).toBeGreaterThanOrEqual(Number(month[0]?.quantity));
    expect(lastMonth).toBeLessThanOrEqual(Number(month.at(-1)?.quantity));
  });

  it('of what was never used expects nothing, and of an unknown one is not found', async () => {
    const never = await forecastOf(s.capsule.id);
    expect(never.history.total).toBe('0');
    expect(never.horizons.every((h) => Number(h.mean) === 0)).toBe(true);
    expect(never.assumptions.join(' ')).toContain('No use is on record');
    const unknown = await s.book.ask('GET', `/reorder/forecasts/${s.supplier}`);
    expect(unknown.status).toBe(404);
  });
});

describe('one-off events', () => {
  it('are left out of the demand while marked, and count again when taken back', async () => {
    const before = (await forecastOf(s.bib.id)).history;
    const [first] = before.days;
    const body = { consumableId: s.bib.id, firstDay: first?.day, lastDay: first?.day };
    const note = 'Course for colleagues.';
    const mark = await s.book.done('POST', '/reorder/one-offs', { ...body, note });
    const marked = (await forecastOf(s.bib.id)).history;
    expect(marked.total).toBe(before.total);
    const left = micro(first?.issued ?? '') + micro(first?.shortfall ?? '');
    expect(micro(marked.demand)).toBe(micro(before.demand) - left);
    expect(marked.knownDays).toBe(before.knownDays - 1);
    expect(marked.days[0]?.oneOff).toBe(true);
    await s.book.done('POST', `/reorder/one-offs/${mark.id}/withdrawal`);
    expect((await forecastOf(s.bib.id)).history).toEqual(before);
    const again = await s.book.ask('POST', `/reorder/one-offs/${mark.id}/withdrawal`);
    expect([again.status, again.body.code]).toEqual([409, 'already_withdrawn']);
    const list = await s.book.done<{ marks: object[] }>('GET', '/reorder/one-offs');
    expect(list.marks).toEqual([expect.objectContaining({ id: mark.id, note, withdrawn: true })]);
  });
});

const DAYS = ['2026-03-02', '2026-03-03', '2026-03-12', '2026-04-20'] as const;
const event = fc.oneof(
  fc.record({
    do: fc.constant('visit' as const),
    day: fc.constantFrom(...DAYS),
    bibs: fc.integer({ min: 0, max: 30 }),
  }),
  fc.record({
    do: fc.constant('deliver' as const),
    day: fc.constantFrom(...DAYS),
    packs: fc.constant(1),
  }),
  fc.record({ do: fc.constant('reverse visit' as const), which: fc.nat(5) }),
  fc.record({ do: fc.constant('reverse delivery' as const), which: fc.nat(5) }),
  fc.record({ do: fc.constant('write off' as const), amount: fc.integer({ min: 1, max: 9 }) }),
  fc.record({ do: fc.constant('count' as const), amount: fc.integer({ min: 0, max: 40 }) }),
);
type Event = typeof event extends fc.Arbitrary<infer T> ? T : never;

async function happen(
  small: SmallBook,
  the: Event,
  done: { visits: string[]; deliveries: string[] },
): Promise<void> {
  const { book, bib } = small;
  const ask = async (path: string, body: object) => {
    const answer = await book.ask('POST', path, body);
    if (answer.status >= 500) throw new Error(`${path}: ${answer.text}`);
    return String(answer.body.id ?? '');
  };
  const pick = (ids: string[], which: number) => ids[which % Math.max(1, ids.length)];
  if (the.do === 'visit') {
    const usage = [{ line: `visit/visit/${bib.id}`, dispensed: String(the.bibs) }];
    done.visits.push(await ask('/visits', visitBody(small, { visitedOn: the.day, usage })));
  } else if (the.do === 'deliver') {
    const line = deliveryLine(bib, small.store, the.packs, '4');
    const body = { supplierId: small.supplier, receivedOn: the.day, lines: [line] };
    done.deliveries.push(await ask('/deliveries', body));
  } else if (the.do === 'reverse visit' || the.do === 'reverse delivery') {
    const visit = the.do === 'reverse visit';
    const id = pick(visit ? done.visits : done.deliveries, the.which);
    if (id) await ask(`/${visit ? 'visits' : 'deliveries'}/${id}/reversal`, { note: 'Wrong.' });
  } else {
    const { rows } = await owner.query<{ id: string }>(
      `SELECT h.id FROM holdings h JOIN layers l ON l.id = h.layer_id
       WHERE l.consumable_id = $1 AND h.on_hand > 0 ORDER BY h.id LIMIT 1`,
      [bib.id],
    );
    const holdingId = rows[0]?.id;
    if (!holdingId) return;
    const amount = String(the.amount);
    if (the.do === 'count') await ask('/counts', { lines: [{ holdingId, counted: amount }] });
    else await ask('/stock/write-offs', { holdingId, quantity: amount, reason: 'damaged' });
  }
}

describe('whatever happens to the book', () => {
  it('the history adds up to what the ledger says visits used', async () => {
    let mark = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(event, { minLength: 3, maxLength: 9 }), async (events) => {
        mark += 1;
        const small = await withFreshCatalogue(s, `${mark}`);
        const done = { visits: [], deliveries: [] };
        for (const the of events) await happen(small, the, done);
        for (const { id } of [small.bib, small.paste]) await expectLedger(id);
      }),
      { numRuns: 12, seed: 20_261_127 },
    );
  });
});
