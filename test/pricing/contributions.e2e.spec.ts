import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { postVisit } from '../book/book.js';
import {
  ContributionBook,
  type Costs,
  cents,
  type Figures,
  figuresOf,
  type Known,
  oneByOne,
  type Row,
  shown,
} from './contribution-book.js';

let b: ContributionBook;

beforeAll(async () => {
  b = await ContributionBook.open('income');
});

afterAll(() => b.stop());

const GROUPINGS = [
  'template',
  'reason',
  'dentist',
  'month',
  'reason,month',
  'template,reason,dentist,month',
];

describe('the report of contributions', () => {
  it.each(GROUPINGS)('by %s says what the restorations say one by one', async (groupBy) => {
    const found = await b.report(`groupBy=${groupBy}`);
    const known = await oneByOne(b);
    const keys = groupBy
      .split(',')
      .map((key) => (/^(template|dentist)$/.test(key) ? `${key}Id` : key));
    const keyOf = (of: object) => keys.map((key) => Reflect.get(of, key)).join(' ');
    const expected = new Map<string, Known[]>();
    for (const each of known) {
      expected.set(keyOf(each), [...(expected.get(keyOf(each)) ?? []), each]);
    }
    expect(found.rows).toHaveLength(expected.size);
    for (const row of found.rows) {
      expect(shown(row)).toEqual(figuresOf(expected.get(keyOf(row)) ?? []));
    }
    expect(shown(found.totals)).toEqual(figuresOf(known));
    expect(found.totals.charged).toBeGreaterThan(10);
    expect(found.totals.fromFeeList).toBeGreaterThan(5);
    expect(found.totals.withoutFee).toBeGreaterThan(3);
  });

  it.each(GROUPINGS)('by %s adds up to its totals and to the report of costs', async (groupBy) => {
    for (const filter of ['', '&reason=decay', '&from=2026-05-29&to=2026-06-14']) {
      const found = await b.report(`groupBy=${groupBy}${filter}`);
      const whole = await b.costs(`groupBy=${groupBy}${filter}`);
      const add = (what: (row: Figures) => number) =>
        found.rows.reduce((sum, row) => sum + what(row), 0);
      for (const figure of ['fee', 'planPays', 'patientPays', 'writeOff', 'material'] as const) {
        expect(add((row) => cents(row[figure]))).toBe(cents(found.totals[figure]));
      }
      expect(add((row) => row.minutes)).toBe(found.totals.minutes);
      const pairOf = (f: Figures) => [
        f.restorations + f.withoutFee,
        cents(f.material) + cents(f.withoutFeeMaterial),
      ];
      expect(pairOf(found.totals)).toEqual([whole.totals.restorations, cents(whole.totals.total)]);
      const keyOf = (r: Costs['rows'][number] | Row) =>
        [r.templateId, r.reason, r.dentistId, r.month].join(' ');
      const byKey = new Map(whole.rows.map((row) => [keyOf(row), row]));
      expect(found.rows).toHaveLength(whole.rows.length);
      for (const row of found.rows) {
        const of = byKey.get(keyOf(row));
        expect(pairOf(row)).toEqual([of?.restorations, cents(of?.total ?? '')]);
      }
    }
  });

  it('has a mean and what an hour leaves, where there are restorations and minutes', async () => {
    const { rows, totals } = await b.report('groupBy=reason');
    const whole = cents(totals.contribution);
    expect(cents(totals.mean ?? '')).toBe(Math.round(whole / totals.restorations));
    expect(cents(totals.contributionPerHour ?? '')).toBe(Math.round((whole * 60) / totals.minutes));
    const wear = rows.find((row) => row.reason === 'wear');
    expect(wear?.charged).toBeGreaterThan(0);
    const none = await b.report('groupBy=reason&reason=fracture');
    const nothing = { mean: null, p10: null, p50: null, p90: null, contributionPerHour: null };
    expect(none).toMatchObject({ rows: [], totals: { restorations: 0, ...nothing } });
  });

  it('counts a charge as soon as it is recorded, and leaves out a reversed visit', async () => {
    const [before, visit] = [(await b.report('')).totals, await b.post(3)];
    const listed = (await b.report('')).totals;
    expect(listed.fromFeeList).toBe(before.fromFeeList + 2);
    await b.charge(visit, 3);
    const charged = (await b.report('')).totals;
    expect([charged.charged, charged.fromFeeList]).toEqual([
      before.charged + 2,
      before.fromFeeList,
    ]);
    expect(cents(charged.writeOff)).toBe(cents(before.writeOff) + 2000);
    await b.s.book.done('POST', `/visits/${visit.id}/reversal`, { note: 'Entered wrongly.' });
    expect((await b.report('')).totals).toEqual(before);
  });

  it('does not count the fee of a retired or unlinked entry, nor one of before its day', async () => {
    const april = await postVisit(b.s, { visitedOn: '2026-03-03', chartReference: 'C-EARLY' });
    const of = async (query: string) => (await b.report(`groupBy=reason&${query}`)).totals;
    expect(await of('to=2026-03-31')).toMatchObject({ fromFeeList: 1, fee: '250.00' });
    await b.s.book.done('PATCH', `/fees/${b.s.insuredFee}`, { active: false });
    expect(await of('to=2026-03-31')).toMatchObject({ fromFeeList: 0, withoutFee: 1 });
    const any = { code: 'ANY', name: 'Any front tooth', templateId: b.s.template };
    await b.s.book.done('POST', '/fees', { ...any, validFrom: '2026-03-03', fee: '99' });
    expect(await of('to=2026-03-31')).toMatchObject({ fromFeeList: 1, fee: '99.00' });
    await b.s.book.done('PATCH', `/fees/${b.s.insuredFee}`, { active: true });
    expect(await of('to=2026-03-31')).toMatchObject({ fromFeeList: 1, fee: '250.00' });
    await b.s.book.done('POST', `/visits/${april.id}/reversal`, { note: 'Entered wrongly.' });
  });

  it('refuses groups it does not know', async () => {
    const answer = await b.s.book.ask('GET', '/reports/contributions?groupBy=tooth');
    expect([answer.status, answer.body.errors]).toMatchObject([400, [{ field: 'groupBy' }]]);
  });
});
