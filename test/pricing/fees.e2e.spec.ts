import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { TestService } from '../book/book.js';
import { openPricedBook, type PricedBook } from './pricing-book.js';

let service: TestService;
let s: PricedBook;

beforeAll(async () => {
  service = await TestService.start();
  s = await openPricedBook(service, 'fees');
});

afterAll(() => service.stop());

async function refused(method: string, path: string, body: unknown) {
  const answer = await s.book.ask(method, path, body);
  const errors = (answer.body.errors ?? []) as { field: string }[];
  return [answer.status, ...errors.map(({ field }) => field)];
}

const auditOf = async (subjectId: string) => {
  const { items } = await s.book.done<{ items: { action: string; subjectId: string }[] }>(
    'GET',
    '/audit-entries',
  );
  return items.filter((entry) => entry.subjectId === subjectId).map((entry) => entry.action);
};

describe('fees', () => {
  it('have versions by day, and a tariff by points is rounded once', async () => {
    // 297 points of 5.62421 cents at 3.5: 58.46, not 3.5 times 16.70 (German ordinance of 1987).
    const made = await s.book.done<{ id: string; current: { fee: string } }>('POST', '/fees', {
      code: 'POINTS-1',
      name: 'By points',
      validFrom: '2026-01-01',
      points: '297',
      pointValue: '0.0562421',
      factor: '3.5',
    });
    expect(made.current).toMatchObject({
      fee: '58.46',
      points: '297',
      pointValue: '0.0562421',
      factor: '3.5',
    });
    const path = `/fees/${made.id}/versions`;
    await s.book.done('POST', path, { validFrom: '2026-06-01', fee: '60' });
    await s.book.done('POST', path, { validFrom: '2026-06-01', fee: '61' });
    await s.book.done('POST', path, { validFrom: '2099-01-01', fee: '99' });
    const read = await s.book.done<{ current: object; versions: { fee: string }[] }>(
      'GET',
      `/fees/${made.id}`,
    );
    expect(read.current).toMatchObject({ fee: '61.00' });
    expect(read.versions.map(({ fee }) => fee)).toEqual(['99.00', '61.00', '60.00', '58.46']);
    const then = await s.book.done<{ items: { current: { fee: string } | null }[] }>(
      'GET',
      '/fees?q=points-1&on=2026-05-31',
    );
    expect(then.items.map(({ current }) => current?.fee)).toEqual(['58.46']);
    const before = await s.book.done<{ items: { current: unknown }[] }>(
      'GET',
      '/fees?q=POINTS&on=2025-12-31',
    );
    expect(before.items.map(({ current }) => current)).toEqual([null]);
    expect(await auditOf(made.id)).toEqual([
      'fee.version-added',
      'fee.version-added',
      'fee.version-added',
      'fee.created',
    ]);
  });

  it('are changed and retired, and told in the audit trail', async () => {
    const { id } = await s.book.done('POST', '/fees', {
      code: 'CHANGED',
      name: 'Changed',
      validFrom: '2026-01-01',
      fee: '10',
      feeClass: 'basic',
    });
    const path = `/fees/${id}`;
    const changed = await s.book.done('PATCH', path, { name: 'Otherwise', feeClass: null });
    expect(changed).toMatchObject({ code: 'CHANGED', name: 'Otherwise', feeClass: null });
    await s.book.done('PATCH', path, { active: false });
    await s.book.done('PATCH', path, {});
    expect(await auditOf(id ?? '')).toEqual(['fee.changed', 'fee.changed', 'fee.created']);
    const { items } = await s.book.done<{ items: object[] }>('GET', '/fees?q=changed&active=true');
    expect(items).toEqual([]);
  });

  it('sent twice are entered once', async () => {
    const body = { code: 'TWICE', name: 'Twice', validFrom: '2026-01-01', fee: '10' };
    const headers = { 'idempotency-key': 'fee-twice' };
    const first = await s.book.ask('POST', '/fees', body, 'owner', { headers });
    const second = await s.book.ask('POST', '/fees', body, 'owner', { headers });
    expect([first.status, second.text]).toEqual([201, first.text]);
  });

  it('that make no sense are refused by their field', async () => {
    const good = { code: 'NEW', name: 'New', validFrom: '2026-01-01', fee: '10' };
    const { fee, ...bare } = good;
    const tariff = { points: '1', pointValue: '0.05', factor: '2' };
    const nobody = '01900000-0000-7000-8000-000000000000';
    const cases: [object, unknown[]][] = [
      [{ ...good, code: ' ' }, [400, 'code']],
      [{ ...good, fee: '-1' }, [400, 'fee']],
      [{ ...good, fee: 10 }, [400, 'fee']],
      [{ ...good, fee: '10.005' }, [422, 'fee']],
      [{ ...good, validFrom: '2026-02-30' }, [400, 'validFrom']],
      [{ ...good, reason: 'beauty' }, [400, 'reason']],
      [{ ...good, templateId: nobody }, [422, 'templateId']],
      [{ ...good, code: 'front-1' }, [409, 'code']],
      [{ ...good, templateId: s.template, reason: 'decay' }, [409, 'templateId']],
      [bare, [422, 'fee']],
      [{ ...good, factor: '2' }, [422, 'factor']],
      [{ ...bare, points: '1', factor: '2' }, [422, 'pointValue']],
      [{ ...bare, ...tariff, pointValue: '0.000000001' }, [400, 'pointValue']],
      [{ ...bare, ...tariff, points: '1000000', pointValue: '1000000' }, [422, 'points']],
    ];
    for (const [body, expected] of cases) {
      expect(await refused('POST', '/fees', body)).toEqual(expected);
    }
    expect(await refused('PATCH', `/fees/${s.cosmeticFee}`, { code: 'FRONT-1' })).toEqual([
      409,
      'code',
    ]);
    expect(fee).toBe('10');
  });
});

describe('who may', () => {
  it('read: all but assistants; change: dentists and owners', async () => {
    const status = async (
      method: string,
      path: string,
      role: 'assistant' | 'manager' | 'auditor',
    ) => (await s.book.ask(method, path, method === 'GET' ? undefined : {}, role)).status;
    expect(await status('GET', '/fees', 'assistant')).toBe(403);
    expect(await status('GET', '/fee-plans', 'manager')).toBe(200);
    expect(await status('GET', '/plan-balances', 'auditor')).toBe(200);
    expect(await status('POST', '/fees', 'manager')).toBe(403);
    expect((await s.book.ask('POST', '/fees', {}, 'dentist')).status).toBe(400);
  });

  it('enter what is left of a plan: managers too, who are told at the desk', async () => {
    const ask = async (role: 'assistant' | 'auditor' | 'manager' | 'dentist') =>
      (await s.book.ask('POST', '/plan-balances', {}, role)).status;
    expect([await ask('assistant'), await ask('auditor')]).toEqual([403, 403]);
    expect([await ask('manager'), await ask('dentist')]).toEqual([400, 400]);
  });

  it('not see those of another practice', async () => {
    const other = await service.openPractice('next');
    const cookie = other.people.owner.cookie;
    const get = async (path: string) =>
      (await service.send('GET', `/api${path}`, { cookie })).status;
    expect(await get(`/fees/${s.insuredFee}`)).toBe(404);
    expect(await get(`/fee-plans/${s.plan}`)).toBe(404);
    const list = await service.send('GET', '/api/plan-balances', { cookie });
    expect(list.body.items).toEqual([]);
  });
});
