import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { BackgroundWork } from '#lib/platform';
import { compare, type Report, recompute } from '../bench/report-check.js';
import {
  deliveryLine,
  openSmallBook,
  restoration,
  type SmallBook,
  TestService,
  visitBody,
} from '../book/book.js';
import { asOwner } from '../harness/database.js';

// The report reads packed spans and what changed since; whatever happens, it says what the
// restorations say.

let service: TestService;
let owner: pg.Client;
let s: SmallBook;
let visits = 0;

beforeAll(async () => {
  service = await TestService.start();
  owner = await asOwner(service.databaseUrl);
  s = await openSmallBook(service, 'exact');
  const items = [s.etchant, s.adhesive, s.strip, s.bib, s.capsule];
  const lines = items.map((item) => deliveryLine(item, s.store, 2, '37.31'));
  await s.book.deliver(s.supplier, '2026-01-02', lines);
});

afterAll(async () => {
  await owner.end();
  await service.stop();
});

const days = ['2026-01-05', '2026-01-31', '2026-02-01', '2026-02-14', '2026-04-30'];
const note = { note: 'Entered wrongly.' };

async function post(): Promise<string> {
  visits += 1;
  const body = visitBody(s, {
    visitedOn: days[visits % days.length],
    chartReference: `C-${visits}`,
    restorations: [
      restoration(s),
      restoration(s, { tooth: '22', surfaces: 'D', reason: visits % 2 ? 'cosmetic' : 'decay' }),
      restoration(s, { tooth: '22', templateId: s.capsuleTemplate, shades: [] }),
    ],
  });
  return (await s.book.done<{ id: string }>('POST', '/visits', body)).id;
}

const report = (query: string) => s.book.done<Report>('GET', `/reports/restoration-costs?${query}`);

async function expectExact(): Promise<void> {
  await recompute(owner, 'restorations');
  await compare(owner, await report('groupBy=template'), ['templateId']);
  await compare(owner, await report('groupBy=reason'), ['reason']);
  await compare(owner, await report('groupBy=reason,dentist'), ['reason', 'dentistId']);
  await compare(owner, await report('groupBy=month'), ['month']);
  const keys = ['templateId', 'reason', 'dentistId', 'month'] as const;
  await compare(owner, await report('groupBy=template,reason,dentist,month'), keys);
}

const changes = async () => {
  const { rows } = await owner.query<{ n: number }>('SELECT count(*)::int AS n FROM cost_changes');
  return rows[0]?.n ?? 0;
};

/** One step of folding, so many changes at most; answers how many it folded. */
async function fold(most: number): Promise<number> {
  const { rows } = await owner.query<{ n: number }>('SELECT fold_cost_changes($1) AS n', [most]);
  return rows[0]?.n ?? 0;
}

async function foldAll(): Promise<void> {
  while ((await changes()) > 0) await fold(1000);
}

/** Works while somebody else is as if folding, so that the service does not. */
async function unfolded(work: () => Promise<void>): Promise<void> {
  const client = await asOwner(service.databaseUrl);
  const key = `fold costs of ${s.book.practice.owner.practiceId}`;
  await client.query('SELECT pg_advisory_lock(hashtextextended($1, 0))', [key]);
  try {
    await work();
  } finally {
    await client.end();
  }
}

describe('the report of costs', () => {
  beforeEach(expectExact);

  it('knows a visit as soon as it is posted, and after it is folded', async () => {
    await unfolded(async () => {
      await post();
      expect(await changes()).toBeGreaterThan(0);
      expect(await fold(1000)).toBe(0);
      await expectExact();
    });
    await foldAll();
    await expectExact();
  });

  it('leaves out what was reversed, folded before or not', async () => {
    const [first, second] = [await post(), await post(), await post()];
    await foldAll();
    await s.book.done('POST', `/visits/${second}/reversal`, note);
    await expectExact();
    await foldAll();
    await expectExact();
    await unfolded(async () => {
      await s.book.done('POST', `/visits/${first}/reversal`, note);
      await s.book.done('POST', `/visits/${await post()}/reversal`, note);
      await expectExact();
    });
    await foldAll();
    await expectExact();
  });

  it('follows when a late delivery settles what was missing', async () => {
    await post();
    await foldAll();
    const before = (await report('')).totals.total;
    const line = deliveryLine(s.paste, s.store, 3, '91.13');
    await unfolded(async () => {
      await s.book.deliver(s.supplier, '2026-05-04', [line]);
      expect(await changes()).toBeGreaterThan(0);
      await expectExact();
    });
    expect((await report('')).totals.total).not.toBe(before);
    while ((await fold(2)) > 0) await expectExact();
  });

  it('holds dear material too', async () => {
    const line = deliveryLine(s.bib, s.store, 1, '900000', { expiresOn: '2026-12-31' });
    await s.book.deliver(s.supplier, '2026-01-02', [line]);
    await post();
    await expectExact();
    await foldAll();
    await expectExact();
    const { rows } = await owner.query<{ width: number }>(
      'SELECT DISTINCT unnest(widths) AS width FROM cost_spans ORDER BY width',
    );
    expect(rows).toEqual([{ width: 2 }, { width: 4 }]);
  });

  it('is exact after reports, postings, reversals and folding at the same time', async () => {
    const jobs = Array.from({ length: 32 }, async (_, n) => {
      if (n % 4 === 0) return report('');
      if (n % 4 === 1) return fold(n);
      const visit = await post();
      if (n % 8 === 2) await s.book.done('POST', `/visits/${visit}/reversal`, note);
      return visit;
    });
    await Promise.all(jobs);
    await expectExact();
    await foldAll();
    await expectExact();
  });

  it('is folded in the background, without anybody asking for it', async () => {
    s.book.service.app.get(BackgroundWork).start();
    await post();
    const end = Date.now() + 25_000;
    while ((await changes()) > 0 && Date.now() < end) {
      await new Promise((resolve) => setTimeout(resolve, 200));
    }
    expect(await changes()).toBe(0);
    await expectExact();
  }, 40_000);

  it('has packed spans that say the same as those made anew', async () => {
    await foldAll();
    const select = `SELECT c.*, encode(c.costs, 'hex') AS costs FROM (
      SELECT span, first_day, kind, category_number, width, restorations, visits,
             visits_of_template, visits_of_reason, visits_of_both, own_cost, shared_cost,
             retake_cost, category_cost, (
               SELECT coalesce(string_agg(b, '' ORDER BY b), '') FROM generate_series(1,
                 length(costs), greatest(width, 1)::int) n, substring(costs, n, width) b
             ) AS costs
      FROM cost_cells) c ORDER BY 1, 2, 3, 4, 5`;
    const folded = (await owner.query<object>(select)).rows;
    await owner.query('SELECT build_cost_spans(id) FROM practices');
    expect((await owner.query<object>(select)).rows).toEqual(folded);
    expect(folded.length).toBeGreaterThan(20);
  });
});

describe('a period', () => {
  it.each([
    ['2026-01-01', '2026-01-31'],
    ['2026-01-06', '2026-02-01'],
    ['2026-01-31', '2026-04-30'],
    ['2026-02-14', '2026-02-14'],
    ['2026-04-01', '2026-04-29'],
    ['2025-01-01', '2026-12-31'],
    ['2026-01-05', '2026-04-30'],
  ])('from %s to %s has its visits only', async (from, to) => {
    const found = await report(`groupBy=reason&from=${from}&to=${to}`);
    const { rows } = await owner.query<{ total: string; restorations: number; visits: number }>(
      `SELECT coalesce(sum(r.own_cost + r.shared_cost), 0)::numeric(20,2)::text AS total,
              count(*)::int AS restorations, count(DISTINCT v.id)::int AS visits
       FROM restorations r JOIN visits v ON v.id = r.visit_id
       WHERE v.reversed_at IS NULL AND v.visited_on BETWEEN $1 AND $2`,
      [from, to],
    );
    expect(found.totals).toMatchObject(rows[0] ?? {});
    expect(found.visitsMaterialCost).toBe(rows[0]?.total);
  });

  it('of one template and one reason counts the visits that have it', async () => {
    const filter = `templateId=${s.template}&reason=cosmetic`;
    const found = await report(`groupBy=month&${filter}`);
    const { rows } = await owner.query<{ visits: number }>(
      `SELECT count(DISTINCT v.id)::int AS visits
       FROM restorations r JOIN visits v ON v.id = r.visit_id
       WHERE v.reversed_at IS NULL AND r.template_id = $1 AND r.reason = 'cosmetic'`,
      [s.template],
    );
    expect([found.totals.visits, found.visitsMaterialCost]).toEqual([rows[0]?.visits, null]);
  });
});
