import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { postVisit, restoration, type Visit } from '../book/book.js';
import { testDataSource } from '../harness/database.js';
import { bodyOf, type Charge, ChargeBook, split } from './charge-book.js';
import { planBody } from './pricing-book.js';

let b: ChargeBook;

beforeAll(async () => {
  b = await ChargeBook.open('charges');
});

afterAll(() => b.stop());

beforeEach(() => b.nextPatient());

describe('charges', () => {
  it('are split by the terms of the plan and what is left of it, line by line', async () => {
    const done = await b.visit('2026-05-04', [
      restoration(b.s),
      restoration(b.s, { tooth: '22', surfaces: 'D' }),
      restoration(b.s, { tooth: '11', reason: 'cosmetic' }),
    ]);
    const planId = b.s.plan;
    const body = bodyOf(done, { planId }, { planId }, {});
    const before = await b.preview(body);
    const recorded = await b.record(body);
    // The second one finds the deductible used up; nobody is asked to pay for looks.
    expect(recorded.charges.map(split)).toEqual([
      ['250.00', '104.00', '76.00', '70.00'],
      ['250.00', '144.00', '36.00', '70.00'],
      ['320.00', '0.00', '320.00', '0.00'],
    ]);
    expect(recorded.charges.map((charge) => charge.feeCode)).toEqual([
      'FRONT-1',
      'FRONT-1',
      'LOOKS-1',
    ]);
    expect(recorded.totals).toEqual({
      fee: '820.00',
      planPays: '248.00',
      patientPays: '432.00',
      writeOff: '140.00',
    });
    const left = { asOf: '2026-05-01', deductibleLeft: '0.00', maximumLeft: '752.00' };
    expect(recorded.left).toEqual([{ plan: { id: planId, name: 'Meadow plan' }, ...left }]);
    expect(before.charges.map(split)).toEqual(recorded.charges.map(split));
    expect([before.totals, before.left]).toEqual([recorded.totals, recorded.left]);
  });

  // Published worked example of an alternate benefit (billing-help pages on downgrades): fee 200.00,
  // the cheaper treatment 100.00, coverage 80 %: the plan pays 80.00, the patient 120.00.
  it('are split as in the published example of a downgrade', async () => {
    const fee = { name: 'Back tooth', templateId: b.s.capsuleTemplate, validFrom: '2026-01-01' };
    const { id: feeId } = await b.s.book.done('POST', '/fees', {
      ...fee,
      code: 'BACK-1',
      fee: '200',
    });
    const terms = { feeId, validFrom: '2026-01-01', allowedFee: '200', alternateFee: '100' };
    await b.s.book.done('POST', `/fee-plans/${b.s.plan}/terms`, { ...terms, coverage: '0.8' });
    await b.told('2026-05-02', { deductibleLeft: '0', maximumLeft: '1000' });
    const done = await b.visit('2026-05-04', [
      restoration(b.s, {
        tooth: '36',
        surfaces: 'O',
        cavityClass: 'I',
        templateId: b.s.capsuleTemplate,
        shades: [],
      }),
    ]);
    const { charges } = await b.record(bodyOf(done, { planId: b.s.plan }));
    expect(split(charges[0])).toEqual(['200.00', '80.00', '120.00', '0.00']);
  });

  it('take a fee by its code, or an amount, at the day of the visit', async () => {
    const version = { validFrom: '2026-05-10', fee: '275' };
    await b.s.book.done('POST', `/fees/${b.s.insuredFee}/versions`, version);
    const [early, late] = [await b.visit('2026-05-09'), await b.visit('2026-05-10')];
    expect(split((await b.record(bodyOf(early))).charges[0])[0]).toBe('250.00');
    expect(split((await b.record(bodyOf(late))).charges[0])[0]).toBe('275.00');
    const coded = await b.record(bodyOf(late, { feeCode: 'looks-1' }));
    expect(coded.charges[0]).toMatchObject({ feeCode: 'LOOKS-1', fee: '320.00' });
    const amount = await b.record(bodyOf(late, { fee: '199.90' }));
    expect(amount.charges[0]).toMatchObject({ feeCode: 'FRONT-1', patientPays: '199.90' });
  });

  it('take stated amounts as they are, and those use up the plan too', async () => {
    const done = await b.visit('2026-05-04', [
      restoration(b.s),
      restoration(b.s, { tooth: '22', surfaces: 'D' }),
    ]);
    const planId = b.s.plan;
    const stated = { planPays: '90', patientPays: '100', writeOff: '60', deductibleUsed: '50' };
    const { charges, left } = await b.record(bodyOf(done, { planId, ...stated }, { planId }));
    expect(charges.map(split)).toEqual([
      ['250.00', '90.00', '100.00', '60.00'],
      ['250.00', '144.00', '36.00', '70.00'],
    ]);
    expect(charges).toMatchObject([{ stated: true }, { stated: false }]);
    expect(left).toMatchObject([{ deductibleLeft: '0.00', maximumLeft: '766.00' }]);
  });
});

describe('what is left of a plan', () => {
  const planned = (of: Visit) => bodyOf(of, { planId: b.s.plan });
  const used = async (of: Visit) => (await b.preview(planned(of))).charges[0]?.deductibleUsed;

  it('is what was told less the charges since; no balance is recorded', async () => {
    const balances = await b.count('plan_balances');
    await b.record(planned(await b.visit('2026-05-04')));
    const next = await b.record(planned(await b.visit('2026-05-05')));
    expect(split(next.charges[0])).toEqual(['250.00', '144.00', '36.00', '70.00']);
    expect(next.left).toMatchObject([{ deductibleLeft: '0.00', maximumLeft: '752.00' }]);
    expect(await b.count('plan_balances')).toBe(balances);
    // A quote for more work counts from the same remainder.
    const quote = await b.s.book.done<{ plan: object }>('POST', '/quotes', {
      ...{ chartReference: b.chart, planId: b.s.plan, quotedOn: '2026-05-06' },
      restorations: [restoration(b.s)],
    });
    expect(quote.plan).toMatchObject({ deductibleLeft: '0.00', maximumLeft: '752.00' });
  });

  it('is given back when a charge is replaced or its visit reversed', async () => {
    const [first, second] = [await b.visit('2026-05-04'), await b.visit('2026-05-06')];
    await b.record(planned(first));
    expect(await used(second)).toBe('0.00');
    await b.record(bodyOf(first, { fee: '100' }));
    expect(await used(second)).toBe('50.00');
    await b.record(planned(first));
    // Recorded again, it uses what it gave back itself.
    expect(split((await b.record(planned(first))).charges[0])[1]).toBe('104.00');
    expect(await used(second)).toBe('0.00');
    await b.s.book.done('POST', `/visits/${first.id}/reversal`, { note: 'Entered wrongly.' });
    expect(await used(second)).toBe('50.00');
  });

  it('is what was told last, which knows of the charges before it', async () => {
    const [first, second] = [await b.visit('2026-05-04'), await b.visit('2026-05-06')];
    await b.record(planned(first));
    await b.told('2026-05-05', { deductibleLeft: '20', maximumLeft: '700' });
    expect(await used(second)).toBe('20.00');
    expect((await b.preview(planned(second))).left).toMatchObject([{ asOf: '2026-05-05' }]);
    // For a visit of before that day the earlier figure counts.
    expect(await used(first)).toBe('50.00');
  });

  it('on the very day of a figure counts what was charged after it only', async () => {
    const [first, second] = [await b.visit('2026-05-01'), await b.visit('2026-05-06')];
    await b.record(planned(first));
    expect(await used(second)).toBe('0.00');
    await b.told('2026-05-01', { deductibleLeft: '10', maximumLeft: '800' });
    expect(await used(second)).toBe('10.00');
    await b.record(bodyOf(first, { planId: b.s.plan, fee: '90' }));
    expect(await used(second)).toBe('10.00');
  });

  it('is used up by later visits too, once they were charged', async () => {
    const first = await b.visit('2026-05-04');
    await b.record(planned(await b.visit('2026-05-20')));
    expect(await used(first)).toBe('0.00');
    // Those of after the next figure use that one.
    await b.told('2026-05-10', { deductibleLeft: '0', maximumLeft: '900' });
    expect(await used(first)).toBe('50.00');
  });

  it('is of one chart and one plan', async () => {
    const first = await b.visit('2026-05-04');
    const { id } = await b.s.book.done('POST', '/fee-plans', planBody({ name: `Hill ${b.chart}` }));
    await b.told('2026-05-01', { deductibleLeft: '50', maximumLeft: '1000' }, id);
    await b.record(bodyOf(await b.visit('2026-05-04'), { planId: id }));
    const another = { chartReference: `${b.chart}0`, visitedOn: '2026-05-04' };
    await b.s.book.done('POST', '/plan-balances', {
      ...{ planId: b.s.plan, chartReference: another.chartReference, asOf: '2026-05-01' },
      ...{ deductibleLeft: '50', maximumLeft: '1000' },
    });
    await b.record(planned(await postVisit(b.s, another)));
    expect(await used(first)).toBe('50.00');
  });

  it('is never used twice by visits that are charged at the same time', async () => {
    await b.told('2026-05-02', { deductibleLeft: '50', maximumLeft: '300' });
    const visits: Visit[] = [];
    for (let day = 4; day < 10; day += 1) visits.push(await b.visit(`2026-05-0${day}`));
    const done = await Promise.all(visits.map((each) => b.record(planned(each))));
    const added = (of: (charge: Charge) => string) =>
      done.reduce((sum, { charges: [charge] }) => sum + Number(charge ? of(charge) : NaN), 0);
    expect(added((charge) => charge.deductibleUsed)).toBe(50);
    expect(added((charge) => charge.planPays)).toBe(300);
  });
});

describe('records', () => {
  it('replace the earlier one of the same restoration, which stays to be read', async () => {
    const done = await b.visit('2026-05-04');
    const first = (await b.record(bodyOf(done))).charges[0];
    const body = { ...bodyOf(done, { fee: '240' }), note: ' Agreed before. ' };
    const second = (await b.record(body)).charges[0];
    expect(second).toMatchObject({ replacesId: first?.id, note: 'Agreed before.' });
    const list = (query: string) =>
      b.s.book.done<{ items: Charge[]; nextCursor: string | null }>('GET', `/charges?${query}`);
    const current = await list(`visitId=${done.id}`);
    expect(current.items).toEqual([second]);
    const all = await list(`visitId=${done.id}&show=all&limit=1`);
    expect(all.items).toEqual([second]);
    const rest = await list(`visitId=${done.id}&show=all&limit=1&cursor=${all.nextCursor}`);
    expect(rest.items).toEqual([{ ...first, current: false }]);
    expect(rest.nextCursor).toBeNull();
    await b.s.book.done('POST', `/visits/${done.id}/reversal`, { note: 'Entered wrongly.' });
    expect((await list(`visitId=${done.id}`)).items).toEqual([]);
    expect((await list(`visitId=${done.id}&show=all`)).items).toMatchObject([
      { visitReversed: true },
      { visitReversed: true },
    ]);
  });

  it('form one line, however many people record at once', async () => {
    const done = await b.visit('2026-05-04');
    const fees = Array.from({ length: 8 }, (_, n) => ({ fee: String(100 + n) }));
    await Promise.all(fees.map((fee) => b.record(bodyOf(done, fee))));
    const of = `WHERE restoration_id = '${done.restorations[0]?.id}'`;
    expect(await b.count(`charges ${of}`)).toBe(8);
    expect(await b.count(`current_charges ${of}`)).toBe(1);
    expect(await b.count(`charges ${of} AND replaces_id IS NULL`)).toBe(1);
  });

  it('are made once for one key', async () => {
    const done = await b.visit('2026-05-04');
    const headers = { 'idempotency-key': randomUUID() };
    const send = (fee: string) =>
      b.s.book.ask('POST', '/charges', bodyOf(done, { fee }), 'manager', { headers });
    const [first, second] = [await send('100'), await send('100')];
    expect([first.status, second.status, second.text]).toEqual([201, 201, first.text]);
    expect((await send('101')).status).toBe(409);
    const of = `charges WHERE restoration_id = '${done.restorations[0]?.id}'`;
    expect(await b.count(of)).toBe(1);
  });

  it('are neither changed nor deleted, by the service or by anybody', async () => {
    await b.record(bodyOf(await b.visit('2026-05-04')));
    const asService = await testDataSource(b.service.databaseUrl);
    const tries = ['UPDATE charges SET fee = 0', 'DELETE FROM charges', 'TRUNCATE charges'];
    for (const statement of tries) {
      await expect(asService.query(statement)).rejects.toThrow('permission denied');
      await expect(b.owner.query(statement)).rejects.toThrow('append-only');
    }
    await asService.destroy();
  });

  it.each([
    ['patient_pays = patient_pays + 1', 'charges_check'],
    ['plan_pays = 1, patient_pays = fee - 1, plan_id = NULL', 'charges_check'],
    ['write_off = -1, patient_pays = fee + 1', 'charges_write_off_check'],
    ['replaces_id = id', 'charges_check'],
    ['replaces_id = NULL', 'charges_first'],
  ])('that do not hold together are refused by the database: %s', async (change, constraint) => {
    const done = await b.visit('2026-05-04');
    await b.record(bodyOf(done));
    const columns = 'restoration_id, replaces_id, fee, plan_id, plan_pays, patient_pays, write_off';
    await b.owner.query('BEGIN');
    await b.owner.query(
      `CREATE TEMP TABLE bad ON COMMIT DROP AS SELECT * FROM charges
       WHERE restoration_id = '${done.restorations[0]?.id}'`,
    );
    await b.owner.query(`UPDATE bad SET id = gen_random_uuid(), replaces_id = id`);
    await b.owner.query(`UPDATE bad SET ${change}`);
    const insert = b.owner.query(
      `INSERT INTO charges (id, practice_id, charged_on, stated, recorded_by, ${columns})
       SELECT id, practice_id, charged_on, stated, recorded_by, ${columns} FROM bad`,
    );
    await expect(insert).rejects.toThrow(constraint);
    await b.owner.query('ROLLBACK');
  });
});
