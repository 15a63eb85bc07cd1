import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { restoration } from '../book/book.js';
import { bodyOf, ChargeBook } from './charge-book.js';
import { openPricedBook } from './pricing-book.js';

let b: ChargeBook;

beforeAll(async () => {
  b = await ChargeBook.open('refused');
});

afterAll(() => b.stop());

beforeEach(() => b.nextPatient());

async function refused(body: unknown, path = '/charges') {
  const before = await b.count('charges');
  const answer = await b.s.book.ask('POST', path, body);
  const errors = (answer.body.errors ?? []) as { field: string }[];
  expect(await b.count('charges')).toBe(before);
  return [answer.status, answer.body.code, ...errors.map(({ field }) => field)];
}

describe('a charge is refused', () => {
  it('with the field that is wrong, and nothing is recorded', async () => {
    const done = await b.visit('2026-05-04', [
      restoration(b.s),
      restoration(b.s, { tooth: '11', reason: 'wear' }),
    ]);
    const other = await b.visit('2026-05-05');
    const [first, second] = done.restorations.map(({ id }) => ({ restorationId: id }));
    const of = (...charges: object[]) => ({ visitId: done.id, charges });
    const amounts = { planPays: '100', patientPays: '80', writeOff: '70' };
    const cases: [object, unknown[]][] = [
      [of(), [400, 'invalid_request', 'charges']],
      [{ ...of({ ...first }), visitId: randomUUID() }, [422, 'unknown_reference', 'visitId']],
      [
        of({ restorationId: other.restorations[0]?.id }),
        [422, 'unknown_reference', 'charges[0].restorationId'],
      ],
      [of({ ...first }, { ...first }), [422, 'split_does_not_fit', 'charges[1].restorationId']],
      [of({ ...first }, { ...second }), [422, 'fee_not_known', 'charges[1].fee']],
      [of({ ...first, feeCode: 'NONE' }), [422, 'unknown_reference', 'charges[0].feeCode']],
      [of({ ...first, fee: '-1' }), [400, 'invalid_request', 'charges[0].fee']],
      [of({ ...first, fee: 250 }), [400, 'invalid_request', 'charges[0].fee']],
      [of({ ...first, fee: '1.005' }), [422, 'finer_than_coin', 'charges[0].fee']],
      [of({ ...first, planId: randomUUID() }), [422, 'unknown_reference', 'charges[0].planId']],
      [of({ ...first, ...amounts }), [422, 'split_does_not_fit', 'charges[0].planId']],
      [
        of({ ...first, planId: b.s.plan, ...amounts, writeOff: '69' }),
        [422, 'split_does_not_fit', 'charges[0].patientPays'],
      ],
      [
        of({ ...first, planId: b.s.plan, planPays: '100' }),
        [422, 'split_does_not_fit', 'charges[0].patientPays', 'charges[0].writeOff'],
      ],
      [
        of({ ...first, planId: b.s.plan, ...amounts, deductibleUsed: '251' }),
        [422, 'split_does_not_fit', 'charges[0].deductibleUsed'],
      ],
    ];
    for (const [body, expected] of cases) expect(await refused(body)).toEqual(expected);
    for (const [body, expected] of cases) {
      expect(await refused(body, '/charges/preview')).toEqual(expected);
    }
  });

  it('under a plan of which nobody was told, unless the amounts are stated', async () => {
    const done = await b.visit('2026-04-30');
    const planId = b.s.plan;
    const untold = [422, 'balance_not_known', 'charges[0].planId'];
    expect(await refused(bodyOf(done, { planId }))).toEqual(untold);
    const stated = { planId, planPays: '100', patientPays: '80', writeOff: '70' };
    const { left } = await b.record(bodyOf(done, stated));
    expect(left).toEqual([]);
  });

  it('for a visit that was reversed', async () => {
    const done = await b.visit('2026-05-04');
    await b.s.book.done('POST', `/visits/${done.id}/reversal`, { note: 'Entered wrongly.' });
    expect(await refused(bodyOf(done))).toEqual([409, 'visit_reversed', 'visitId']);
  });

  it('to those who may not record it, and of another practice to everybody', async () => {
    const done = await b.visit('2026-05-04');
    const statuses = [];
    for (const role of ['assistant', 'auditor', 'manager', 'dentist'] as const) {
      statuses.push((await b.s.book.ask('POST', '/charges', bodyOf(done), role)).status);
    }
    expect(statuses).toEqual([403, 403, 201, 201]);
    const stranger = await openPricedBook(b.service, `stranger${b.chart}`);
    const answer = await stranger.book.ask('POST', '/charges', bodyOf(done));
    expect([answer.status, answer.body.code]).toEqual([422, 'unknown_reference']);
    const { items } = await stranger.book.done<{ items: object[] }>('GET', '/charges?show=all');
    expect(items).toEqual([]);
  });
});

it('the rates of the chairs are read by the manager and entered by the owner', async () => {
  const body = { validFrom: '2026-01-01', yearlyCost: '120000', practicalMinutes: 90000 };
  const entered = await b.s.book.ask('POST', '/cost-rates', body, 'manager');
  expect(entered.status).toBe(403);
  expect((await b.s.book.ask('POST', '/cost-rates', body)).status).toBe(201);
  const read = await b.s.book.ask('GET', '/cost-rates', undefined, 'manager');
  expect([read.status, read.body.items]).toMatchObject([200, [{ yearlyCost: '120000.00' }]]);
});
