import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
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

// The report reads monthly tables; whatever happens, it says what the restorations say.

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

const changed = async () => {
  const { rows } = await owner.query<{ months: number }>(
    'SELECT count(DISTINCT month)::int AS months FROM cost_changes',
  );
  return rows[0]?.months;
};

describe('the report of costs', () => {
  beforeEach(expectExact);

  it('knows a visit as soon as it is posted', async () => {
    await post();
    expect(await changed()).toBe(1);
    await expectExact();
    expect(await changed()).toBe(0);
  });

  it('leaves out what was reversed', async () => {
    const [, second] = [await post(), await post(), await post()];
    await expectExact();
    await s.book.done('POST', `/visits/${second}/reversal`, note);
    await expectExact();
  });

  it('follows when a late delivery settles what was missing', async () => {
    await post();
    const before = (await report('')).totals.total;
    const line = deliveryLine(s.paste, s.store, 3, '91.13');
    await s.book.deliver(s.supplier, '2026-05-04', [line]);
    expect(await changed()).toBeGreaterThan(0);
    await expectExact();
    expect((await report('')).totals.total).not.toBe(before);
  });

  it('holds dear material too', async () => {
    const line = deliveryLine(s.bib, s.store, 1, '900000', { expiresOn: '2026-12-31' });
    await s.book.deliver(s.supplier, '2026-01-02', [line]);
    await post();
    await expectExact();
    const { rows } = await owner.query<{ width: number }>(
      'SELECT DISTINCT width FROM cost_spans ORDER BY width',
    );
    expect(rows).toEqual([{ width: 2 }, { width: 4 }]);
  });

  it('is exact while months are not folded yet', async () => {
    await post();
    await post();
    const client = await asOwner(service.databaseUrl);
    const key = `fold costs of ${s.book.practice.owner.practiceId}`;
    await client.query('SELECT pg_advisory_lock(hashtextextended($1, 0))', [key]);
    try {
      await expectExact();
      expect(await changed()).toBeGreaterThan(0);
    } finally {
      await client.end();
    }
    await expectExact();
  });

  it('is exact after reports and postings at the same time', async () => {
    const jobs = Array.from({ length: 24 }, (_, n) => (n % 3 === 0 ? report('') : post()));
    await Promise.all(jobs);
    await expectExact();
    expect(await changed()).toBe(0);
  });
});

describe('a period', () => {
  it.each([
    ['2026-01-01', '2026-01-31'],
    ['2026-01-06', '2026-02-01'],
    ['2026-01-31', '2026-04-30'],
    ['2026-02-14', '2026-02-14'],
    ['2026-04-01', '2026-04-29'],
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
