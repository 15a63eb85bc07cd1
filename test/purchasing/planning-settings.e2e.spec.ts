import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openSmallBook, type SmallBook, TestService } from '../book/book.js';

let service: TestService;
let s: SmallBook;

beforeAll(async () => {
  service = await TestService.start();
  s = await openSmallBook(service, 'rules');
});

afterAll(() => service.stop());

const PLAIN = {
  serviceMeasure: 'cycle service',
  serviceLevel: '0.95',
  reviewDays: 7,
  expiryCertainty: '0.9',
  carryingRate: '0.2',
  orderCost: '5.00',
  leadDays: 3,
  leaveOutRetakes: false,
};
const TERMS = {
  leadDays: 5,
  orderCost: '3.50',
  minimumOrder: '100.00',
  freight: '7.90',
  freeFreightFrom: '250.00',
  workingDays: ['monday', 'thursday'],
  closures: [{ firstDay: '2026-12-24', lastDay: '2027-01-01', note: 'Turn of the year' }],
};

const put = (path: string, body: object, role: 'owner' | 'manager' | 'assistant' = 'owner') =>
  s.book.ask('PUT', `/reorder/settings${path}`, body, role);
const get = (path: string) => s.book.done<object>('GET', `/reorder/settings${path}`);

function namedFields(answer: { body: Record<string, unknown> }): string[] {
  return (answer.body.errors as { field: string }[]).map((error) => error.field);
}

async function audited(action: string): Promise<Record<string, unknown>[]> {
  const { items } = await s.book.done<{ items: Record<string, unknown>[] }>(
    'GET',
    '/audit-entries?limit=100',
  );
  return items.filter((entry) => entry.action === action);
}

describe('the settings of the practice', () => {
  it('are plain until somebody sets them, and audited with what was before', async () => {
    expect(await get('')).toEqual(PLAIN);
    const after = { ...PLAIN, serviceMeasure: 'fill rate', serviceLevel: '0.99', reviewDays: 14 };
    const answer = await put('', after, 'manager');
    expect([answer.status, answer.body]).toEqual([200, after]);
    expect(await get('')).toEqual(after);
    expect(await audited('planning-settings.changed')).toEqual([
      expect.objectContaining({ details: { before: PLAIN, after } }),
    ]);
    await put('', PLAIN);
  });

  it('name the field of what cannot be, and stay as they were', async () => {
    const cases = [
      ['serviceLevel', '1'],
      ['serviceLevel', '0'],
      ['serviceLevel', 0.95],
      ['serviceMeasure', 'always'],
      ['reviewDays', 91],
      ['expiryCertainty', '0'],
      ['carryingRate', '0'],
      ['orderCost', '-1'],
      ['leadDays', 2.5],
      ['leadDays', -1],
      ['leaveOutRetakes', 'no'],
    ] as const;
    for (const [field, value] of cases) {
      const answer = await put('', { ...PLAIN, [field]: value });
      expect([answer.status, namedFields(answer)]).toEqual([400, [field]]);
    }
    expect(await get('')).toEqual(PLAIN);
  });

  it('are read by all who order, and set by managers and owners only', async () => {
    expect((await s.book.ask('GET', '/reorder/settings', undefined, 'assistant')).status).toBe(200);
    for (const path of ['', `/consumables/${s.bib.id}`, `/suppliers/${s.supplier}`]) {
      expect((await put(path, PLAIN, 'assistant')).status).toBe(403);
    }
    expect((await s.book.ask('POST', '/reorder/one-offs', {}, 'dentist')).status).toBe(403);
  });
});

describe('what a consumable has of its own', () => {
  it('goes over the settings of the practice, and is taken back by leaving it out', async () => {
    const own = {
      serviceMeasure: 'fill rate',
      serviceLevel: '0.98',
      orderUpTo: '40',
      note: 'Rare.',
    };
    const answer = await put(`/consumables/${s.bib.id}`, own);
    expect(answer.body).toMatchObject({
      own: { ...own, reviewDays: null, reorderAt: null },
      inForce: { ...PLAIN, serviceMeasure: 'fill rate', serviceLevel: '0.98' },
    });
    expect(await get(`/consumables/${s.bib.id}`)).toEqual(answer.body);
    expect((await put(`/consumables/${s.bib.id}`, {})).body).toMatchObject({ inForce: PLAIN });
    expect(await audited('consumable-planning.changed')).toHaveLength(2);
  });

  it('is refused by field where it makes no sense, or is of nobody here', async () => {
    const path = `/consumables/${s.bib.id}`;
    const alone = await put(path, { serviceLevel: '0.9' });
    expect([alone.status, namedFields(alone)]).toEqual([400, ['serviceMeasure']]);
    const crossed = await put(path, { reorderAt: '10', orderUpTo: '9.5' });
    expect([crossed.status, namedFields(crossed)]).toEqual([400, ['orderUpTo']]);
    const other = await openSmallBook(service, 'else');
    expect((await put(`/consumables/${other.bib.id}`, {})).status).toBe(404);
    expect((await put(`/suppliers/${other.supplier}`, TERMS)).status).toBe(404);
  });
});

describe('the terms of a supplier', () => {
  it('are kept exactly, and audited', async () => {
    const answer = await put(`/suppliers/${s.supplier}`, TERMS);
    expect([answer.status, answer.body]).toMatchObject([
      200,
      { supplierId: s.supplier, terms: TERMS, lead: { statedDays: 5, statedBy: 'supplier' } },
    ]);
    expect(await get(`/suppliers/${s.supplier}`)).toEqual(answer.body);
    expect(await audited('supplier-terms.changed')).toHaveLength(1);
  });

  it('need a day on which the supplier works', async () => {
    for (const workingDays of [[], ['mo'], ['monday', 'monday']]) {
      const answer = await put(`/suppliers/${s.supplier}`, { ...TERMS, workingDays });
      expect([answer.status, namedFields(answer)]).toEqual([400, ['workingDays']]);
    }
  });
});

describe('a one-off mark', () => {
  it('names the field of what cannot be, and nothing is marked', async () => {
    const mark = (changes: object) =>
      s.book.ask('POST', '/reorder/one-offs', {
        ...{
          consumableId: s.bib.id,
          firstDay: '2026-05-04',
          lastDay: '2026-05-05',
          note: 'Course.',
        },
        ...changes,
      });
    const cases = [
      [{ lastDay: '2026-05-03' }, 400, ['lastDay']],
      [{ lastDay: '2027-05-05' }, 400, ['lastDay']],
      [{ note: ' ' }, 400, ['note']],
      [{ consumableId: s.supplier }, 422, ['consumableId']],
    ] as const;
    for (const [changes, status, fields] of cases) {
      const answer = await mark(changes);
      expect([answer.status, namedFields(answer)]).toEqual([status, fields]);
    }
    expect(await s.book.done('GET', '/reorder/one-offs')).toEqual({ marks: [] });
  });
});
