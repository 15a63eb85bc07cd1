import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { postVisit, restoration, TestService } from '../book/book.js';
import { asOwner, testDataSource } from '../harness/database.js';
import { openPricedBook, type PricedBook, planBody } from './pricing-book.js';

let service: TestService;
let s: PricedBook;

beforeAll(async () => {
  service = await TestService.start();
  s = await openPricedBook(service, 'plans');
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

  it('is shown as it was on a day, one line for each chart and plan', async () => {
    const second = (await s.book.done('POST', '/fee-plans', planBody({ name: 'Brook plan' }))).id;
    const entries: readonly (readonly [string, string, string])[] = [
      ['D-1', '2026-02-01', '900'],
      ['d-1', '2026-03-01', '700'],
      ['D-1', '2026-03-01', '650'],
      ['D-2', '2026-02-15', '1500'],
    ];
    for (const [chartReference, asOf, maximumLeft] of entries) {
      const body = { planId: second, chartReference, asOf, deductibleLeft: '0', maximumLeft };
      await s.book.done('POST', '/plan-balances', body);
    }
    type Listed = { items: { chartReference: string; maximumLeft: string }[]; nextCursor: string };
    const left = async (query: string) => {
      const path = `/plan-balances?planId=${second}&${query}`;
      const { items, nextCursor } = await s.book.done<Listed>('GET', path);
      const texts = items.map((each) => `${each.chartReference} ${each.maximumLeft}`);
      return { texts, nextCursor };
    };
    expect((await left('show=counting')).texts).toEqual(['D-1 650.00', 'D-2 1500.00']);
    expect((await left('show=counting&on=2026-02-20')).texts).toEqual([
      'D-2 1500.00',
      'D-1 900.00',
    ]);
    expect((await left('on=2026-02-10')).texts).toEqual(['D-1 900.00']);
    const { nextCursor } = await left('show=counting&limit=1');
    const next = await left(`show=counting&limit=1&cursor=${nextCursor}`);
    expect(next).toEqual({ texts: ['D-2 1500.00'], nextCursor: null });
    expect((await left('show=counting&chartReference=D-2')).texts).toEqual(['D-2 1500.00']);
    expect(await refused('GET', '/plan-balances?show=latest', undefined)).toEqual([400, 'show']);
  });

  it('of one chart is shown less what charges of later visits used', async () => {
    const chartReference = 'E-1';
    const told = { asOf: '2026-05-01', deductibleLeft: '50', maximumLeft: '1000' };
    await s.book.done('POST', '/plan-balances', { planId: s.plan, chartReference, ...told });
    const path = `/plan-balances?chartReference=e-1&show=counting`;
    const nowOf = async (query = path) =>
      (await s.book.done<{ items: { deductibleLeft: string; now: unknown }[] }>('GET', query))
        .items[0];
    const whole = { deductibleLeft: '50.00', maximumLeft: '1000.00' };
    expect(await nowOf()).toMatchObject({ ...whole, now: whole });
    const visit = await postVisit(s, {
      chartReference,
      visitedOn: '2026-05-04',
      restorations: [restoration(s)],
    });
    const [made] = visit.restorations;
    const charges = [{ restorationId: made?.id, planId: s.plan }];
    await s.book.done('POST', '/charges', { visitId: visit.id, charges });
    const now = { deductibleLeft: '0.00', maximumLeft: '896.00' };
    expect(await nowOf()).toMatchObject({ ...whole, now });
    expect(await nowOf(`${path}&on=2026-05-04`)).toMatchObject({ ...whole, now: null });
    expect(await nowOf('/plan-balances?chartReference=E-1')).toMatchObject({ now: null });
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
