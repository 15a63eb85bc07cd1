import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { TestService } from '../book/book.js';
import { asOwner, testDataSource } from '../harness/database.js';
import { openPricedBook, type PricedBook, planBody } from './pricing-book.js';

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

describe('plans', () => {
  it('keep every term that was ever stated', async () => {
    const { id } = await s.book.done('POST', '/fee-plans', planBody({ name: 'Harbour plan' }));
    const path = `/fee-plans/${id}/terms`;
    await s.book.done('POST', path, {
      feeId: s.insuredFee,
      validFrom: '2026-01-01',
      allowedFee: '180',
      alternateFee: '120',
      coverage: '0.5',
      deductibleApplies: false,
      reasons: ['decay', 'wear'],
    });
    const plan = await s.book.done<{ terms: object[] }>('POST', path, {
      feeId: s.cosmeticFee,
      validFrom: '2026-07-01',
      coverage: '0.3',
      reasons: ['cosmetic'],
      cosmeticNote: 'Letter of 2 May 2026',
    });
    expect(plan.terms).toMatchObject([
      {
        feeCode: 'LOOKS-1',
        coverage: '0.3',
        allowedFee: null,
        cosmeticNote: 'Letter of 2 May 2026',
      },
      {
        feeCode: 'FRONT-1',
        allowedFee: '180.00',
        alternateFee: '120.00',
        coverage: '0.5',
        deductibleApplies: false,
        reasons: ['decay', 'wear'],
        cosmeticNote: null,
      },
    ]);
    const changed = await s.book.done('PATCH', `/fee-plans/${id}`, {
      yearlyMaximum: null,
      feeCeiling: 'both',
      ceilingSource: 'Letter of the plan',
      ceilingCheckedOn: '2026-05-01',
    });
    expect(changed).toMatchObject({ yearlyMaximum: null, feeCeiling: 'both' });
    expect(await auditOf(id ?? '')).toEqual([
      'fee-plan.changed',
      'fee-plan.terms-added',
      'fee-plan.terms-added',
      'fee-plan.created',
    ]);
  });

  it('that make no sense are refused by their field', async () => {
    const plan = (changes: object) => planBody({ name: 'Another plan', ...changes });
    const plans: [object, unknown[]][] = [
      [plan({ ceilingSource: '' }), [400, 'ceilingSource']],
      [plan({ ceilingSource: undefined }), [400, 'ceilingSource']],
      [plan({ ceilingCheckedOn: '2099-01-01' }), [422, 'ceilingCheckedOn']],
      [plan({ feeCeiling: 'sometimes' }), [400, 'feeCeiling']],
      [plan({ deductible: '0.001' }), [422, 'deductible']],
      [plan({ name: 'meadow PLAN' }), [409, 'name']],
    ];
    for (const [body, expected] of plans) {
      expect(await refused('POST', '/fee-plans', body)).toEqual(expected);
    }
    const change = await refused('PATCH', `/fee-plans/${s.plan}`, { feeCeiling: 'both' });
    expect(change).toEqual([422, 'ceilingSource', 'ceilingCheckedOn']);
  });

  it('never cover cosmetic work by class or without a note', async () => {
    const from = { validFrom: '2026-01-01' };
    const ofFee = { ...from, feeId: s.insuredFee };
    const ofClass = { ...from, feeClass: 'basic' };
    const cosmetic = { reasons: ['cosmetic'], coverage: '0.8' };
    const nobody = '01900000-0000-7000-8000-000000000000';
    const cases: [object, unknown[]][] = [
      [{ ...ofFee, ...cosmetic }, [422, 'cosmeticNote']],
      [{ ...ofFee, ...cosmetic, cosmeticNote: ' ' }, [400, 'cosmeticNote']],
      [{ ...ofClass, ...cosmetic, cosmeticNote: 'Letter' }, [422, 'reasons']],
      [{ ...ofFee, coverage: '0.8', cosmeticNote: 'Letter' }, [422, 'cosmeticNote']],
      [{ ...ofFee, ...ofClass, coverage: '0.8' }, [422, 'feeClass']],
      [{ ...from, coverage: '0.8' }, [422, 'feeId']],
      [{ ...ofClass, allowedFee: '100' }, [422, 'allowedFee']],
      [ofFee, [422, 'coverage']],
      [{ ...ofFee, coverage: '1.1' }, [400, 'coverage']],
      [{ ...ofFee, reasons: [], coverage: '1' }, [400, 'reasons']],
      [{ ...ofFee, allowedFee: '0.001' }, [422, 'allowedFee']],
      [{ ...from, feeId: nobody, coverage: '1' }, [422, 'feeId']],
    ];
    for (const [body, expected] of cases) {
      expect(await refused('POST', `/fee-plans/${s.plan}/terms`, body)).toEqual(expected);
    }
  });
});

describe('what is left of a plan', () => {
  it('is entered as of a day and listed with the latest first', async () => {
    const chartReference = 'C-9';
    for (const [asOf, maximumLeft] of [
      ['2026-02-01', '900'],
      ['2026-04-01', '700'],
      ['2026-03-01', '800'],
    ]) {
      const body = { planId: s.plan, chartReference, asOf, deductibleLeft: '0', maximumLeft };
      await s.book.done('POST', '/plan-balances', body);
    }
    const path = `/plan-balances?chartReference=c-9&planId=${s.plan}&limit=2`;
    type Listed = { items: { maximumLeft: string }[]; nextCursor: string };
    const first = await s.book.done<Listed>('GET', path);
    const rest = await s.book.done<Listed>('GET', `${path}&cursor=${first.nextCursor}`);
    const listed = [...first.items, ...rest.items].map(({ maximumLeft }) => maximumLeft);
    expect(listed).toEqual(['700.00', '800.00', '900.00']);
    expect(rest.nextCursor).toBeNull();
  });

  it('that cannot be is refused by its field', async () => {
    const good = {
      planId: s.plan,
      chartReference: 'C-9',
      asOf: '2026-05-01',
      deductibleLeft: '0',
      maximumLeft: '1',
    };
    const cases: [object, unknown[]][] = [
      [{ planId: '01900000-0000-7000-8000-000000000000' }, [422, 'planId']],
      [{ asOf: '2099-01-01' }, [422, 'asOf']],
      [{ deductibleLeft: '50.01' }, [422, 'deductibleLeft']],
      [{ deductibleLeft: '0.001' }, [422, 'deductibleLeft']],
      [{ maximumLeft: '1500.01' }, [422, 'maximumLeft']],
      [{ maximumLeft: null }, [422, 'maximumLeft']],
      [{ chartReference: '' }, [400, 'chartReference']],
    ];
    for (const [changes, expected] of cases) {
      expect(await refused('POST', '/plan-balances', { ...good, ...changes })).toEqual(expected);
    }
  });
});

describe('what was stated', () => {
  it.each(['fee_versions', 'fee_plan_terms', 'plan_balances'])(
    'can neither be changed nor deleted in %s',
    async (table) => {
      const asService = await testDataSource(service.databaseUrl);
      try {
        await expect(asService.query(`DELETE FROM ${table}`)).rejects.toThrow('permission denied');
        const update = asService.query(`UPDATE ${table} SET practice_id = practice_id`);
        await expect(update).rejects.toThrow('permission denied');
      } finally {
        await asService.destroy();
      }
    },
  );

  it('cannot cover cosmetic work by class or without a note, whoever writes it', async () => {
    const owner = await asOwner(service.databaseUrl);
    try {
      const write = (feeId: string | null, note: string | null) =>
        owner.query(
          `INSERT INTO fee_plan_terms (id, practice_id, plan_id, fee_id, fee_class, valid_from,
             coverage, reasons, cosmetic_note, recorded_by)
           VALUES (gen_random_uuid(), $1, $2, $3, $4, '2026-01-01', 1, '{cosmetic}', $5, $6)`,
          [
            s.book.practice.owner.practiceId,
            s.plan,
            feeId,
            feeId === null ? 'basic' : null,
            note,
            s.book.practice.owner.personId,
          ],
        );
      await expect(write(null, 'Letter')).rejects.toThrow('check constraint');
      await expect(write(s.cosmeticFee, null)).rejects.toThrow('check constraint');
    } finally {
      await owner.end();
    }
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
