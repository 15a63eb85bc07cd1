import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import {
  deliveryLine,
  openSmallBook,
  type SmallBook,
  TestService,
  visitBody,
} from '../book/book.js';

let service: TestService;
let s: SmallBook;

beforeAll(async () => {
  service = await TestService.start();
  s = await openSmallBook(service, 'chairs');
  const items = [s.etchant, s.adhesive, s.paste, s.strip, s.bib];
  const lines = items.map((item) => deliveryLine(item, s.store, 1, '40'));
  await s.book.deliver(s.supplier, '2026-01-05', lines);
  for (const visitedOn of ['2026-02-10', '2026-02-11', '2026-03-10']) {
    await s.book.done('POST', '/visits', visitBody(s, { visitedOn }));
  }
});

afterAll(() => service.stop());

const rate = (validFrom: string, more: object = {}) => ({
  validFrom,
  yearlyCost: '365000',
  practicalMinutes: 365_000,
  ...more,
});

describe('the cost of chair time', () => {
  it('is entered by who manages the practice, once per day', async () => {
    const id = '01900000-0000-7000-8000-00000000000a';
    const made = await s.book.done<{ ratePerMinute: string }>(
      'POST',
      '/cost-rates',
      rate('2026-02-11', { id, assistantRate: '0.5', note: 'Two chairs' }),
    );
    expect(made).toMatchObject({ id, ratePerMinute: '1.00', assistantRate: '0.50' });
    const again = rate('2026-02-11', { id, assistantRate: '0.5', note: 'Two chairs' });
    expect(await s.book.done('POST', '/cost-rates', again)).toEqual(made);
    const twice = await s.book.ask('POST', '/cost-rates', rate('2026-02-11'));
    expect([twice.status, twice.body.errors]).toMatchObject([409, [{ field: 'validFrom' }]]);
    const other = await s.book.ask('POST', '/cost-rates', rate('2026-02-12', { id }));
    expect([other.status, other.body.errors]).toMatchObject([409, [{ field: 'id' }]]);
    const refused = await s.book.ask('POST', '/cost-rates', rate('2026-05-01'), 'manager');
    expect(refused.status).toBe(403);
    const wrong = await s.book.ask(
      'POST',
      '/cost-rates',
      rate('2026-05-01', { practicalMinutes: 0 }),
    );
    expect([wrong.status, wrong.body.errors]).toMatchObject([400, [{ field: 'practicalMinutes' }]]);
    await s.book.done('POST', '/cost-rates', rate('2026-03-01', { yearlyCost: '730000' }));
    const { items } = await s.book.done<{ items: { validFrom: string }[] }>('GET', '/cost-rates');
    expect(items.map((each) => each.validFrom)).toEqual(['2026-03-01', '2026-02-11']);
    const audit = await s.book.ask('GET', '/audit-entries?limit=1');
    expect(audit.text).toContain('cost-rate.created');
  });

  it('is that of the day, and idle time is loaded on nobody', async () => {
    const found = await s.book.done<Record<string, unknown>>(
      'GET',
      '/reports/chair-time?from=2026-02-01&to=2026-03-31',
    );
    // 40 minutes each: before any rate, at 1.00 and at 2.00. 18 days at 1,000 and 31 at 2,000.
    expect(found.rows).toMatchObject([
      { restorations: 3, minutes: 120, cost: '120.00', minutesWithoutRate: 40 },
    ]);
    expect(found.capacity).toEqual({
      minutes: 49_000,
      cost: '80000.00',
      usedMinutes: 80,
      usedCost: '120.00',
      usedShare: '0.0016',
      idleMinutes: 48_920,
      idleCost: '79880.00',
    });
  });

  it('is grouped like the other reports', async () => {
    const { rows } = await s.book.done<{ rows: object[] }>(
      'GET',
      '/reports/chair-time?from=2026-02-01&to=2026-03-31&groupBy=month,reason',
    );
    expect(rows).toMatchObject([
      { month: '2026-02', reason: 'decay', minutes: 80, cost: '40.00' },
      { month: '2026-03', reason: 'decay', minutes: 40, cost: '80.00' },
    ]);
    const none = await s.book.done<{ rows: object[] }>(
      'GET',
      '/reports/chair-time?from=2026-04-01&to=2026-03-01',
    );
    expect(none.rows).toEqual([]);
    const wrong = await s.book.ask('GET', '/reports/chair-time?groupBy=restoration');
    expect(wrong.status).toBe(400);
  });
});
