import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import {
  deliveryLine,
  lineOf,
  openSmallBook,
  openStockedBook,
  postVisit,
  restoration,
  type SmallBook,
  TestService,
  type UsageLine,
  type Visit,
  visitBody,
} from './book.js';
import { expectRulesHold } from './invariants.js';

// Single doses that the restorations of a visit share: charged whole once, divided among them.

let service: TestService;
let owner: pg.Pool;
let books = 0;

beforeAll(async () => {
  service = await TestService.start();
  owner = new pg.Pool({ connectionString: service.databaseUrl, max: 2 });
});

afterAll(async () => {
  await expectRulesHold(owner);
  await owner.end();
  await service.stop();
});

const nextPrefix = () => {
  books += 1;
  return `doses${books}`;
};

const stocked = () => openStockedBook(service, nextPrefix());

const inCapsules = (s: SmallBook, changes: object = {}) =>
  restoration(s, { templateId: s.capsuleTemplate, shades: [], ...changes });

type SharedLine = UsageLine & { readonly sharedDose: { lines: number; charged: string } | null };

const capsulesOf = (visit: Visit, s: SmallBook) =>
  visit.usage.filter((line) => line.consumable.id === s.capsule.id) as SharedLine[];

const figures = (lines: readonly SharedLine[]) =>
  lines.map((l) => [l.placed, l.dispensed, l.charged, l.cost]);

async function onHand(consumableId: string): Promise<string> {
  const { rows } = await owner.query<{ on_hand: string }>(
    `SELECT sum(h.on_hand)::numeric(18, 2)::text AS on_hand FROM holdings h
     JOIN layers l ON l.id = h.layer_id WHERE l.consumable_id = $1`,
    [consumableId],
  );
  return rows[0]?.on_hand ?? '';
}

describe('a dose that several restorations of a visit share', () => {
  it('is charged whole once, in the preview as in the book, and traced to every tooth', async () => {
    const s = await stocked();
    const restorations = [inCapsules(s), inCapsules(s, { tooth: '11' })];
    const { chartReference: _, dentistId: __, ...plan } = visitBody(s, { restorations });
    const preview = await s.book.done<Visit>('POST', '/visits/preview', plan);
    const visit = await postVisit(s, { restorations });
    for (const each of [preview, visit, await s.book.done<Visit>('GET', `/visits/${visit.id}`)]) {
      const capsules = capsulesOf(each, s);
      expect(figures(capsules)).toEqual([
        ['0.08', '0.1', '0.125', '2.75'],
        ['0.08', '0.1', '0.125', '2.75'],
      ]);
      expect(capsules.map((l) => l.sharedDose)).toEqual([
        { lines: 2, charged: '0.25' },
        { lines: 2, charged: '0.25' },
      ]);
      expect(capsules.flatMap((l) => l.taken.map((t) => t.lotNumber))).toEqual(['K-1', 'K-1']);
    }
    expect(await onHand(s.capsule.id)).toBe('4.75');
    const lotId = lineOf(visit, s.capsule.id).taken[0]?.lotId ?? '';
    const trace = await s.book.ask('GET', `/lots/${lotId}/trace`);
    expect(trace.text).toContain('"21"');
    expect(trace.text).toContain('"11"');
    await s.book.done('POST', `/visits/${visit.id}/reversal`, { note: 'Wrong chart.' });
    expect(await onHand(s.capsule.id)).toBe('5.00');
  });

  it('takes the next dose when the amounts say so; its rest is borne by what was placed', async () => {
    const s = await stocked();
    const visit = await postVisit(s, {
      restorations: [inCapsules(s), inCapsules(s, { tooth: '11' })],
      usage: [{ line: `r1/a1/5/${s.capsule.id}`, placed: '0.16', dispensed: '0.2' }],
    });
    // 0.3 g are two doses; of the 0.2 g that stay in them, two thirds and one third.
    expect(figures(capsulesOf(visit, s))).toEqual([
      ['0.16', '0.2', '0.333333', '7.333326'],
      ['0.08', '0.1', '0.166667', '3.666674'],
    ]);
  });

  it('is part of the retake by what the retake took, and of what is added by hand', async () => {
    const s = await stocked();
    const visit = await postVisit(s, {
      restorations: [inCapsules(s, { attempts: 2 })],
      usage: [{ consumableId: s.capsule.id, restoration: 0, dispensed: '0.05', placed: '0.04' }],
    });
    expect(figures(capsulesOf(visit, s))).toEqual([
      ['0.08', '0.1', '0.1', '2.20'],
      ['0.08', '0.1', '0.1', '2.20'],
      ['0.04', '0.05', '0.05', '1.10'],
    ]);
    expect(visit.retakeCost).toBe('2.20');
  });

  it('is not shared where the template says so, and never with another visit', async () => {
    const s = await stocked();
    const lines = [
      {
        consumableId: s.capsule.id,
        driver: 'restoration',
        placed: '0.08',
        dispensed: '0.1',
        sharesDose: false,
      },
    ];
    const templateId = await s.book.template('A capsule for each', lines);
    const each = { templateId, shades: [] };
    const visit = await postVisit(s, {
      restorations: [restoration(s, each), restoration(s, { ...each, tooth: '11' })],
    });
    expect(capsulesOf(visit, s).map((l) => [l.charged, l.cost, l.sharedDose])).toEqual([
      ['0.25', '5.50', null],
      ['0.25', '5.50', null],
    ]);
    await postVisit(s, { restorations: [inCapsules(s)] });
    await postVisit(s, { restorations: [inCapsules(s)], chartReference: 'C-2' });
    expect(await onHand(s.capsule.id)).toBe('4.00');
  });

  it('is missing once and settled once, also when the delivery was a mistake', async () => {
    const s = await openSmallBook(service, nextPrefix());
    const visit = await postVisit(s, {
      restorations: [inCapsules(s), inCapsules(s, { tooth: '11' }), inCapsules(s, { tooth: '12' })],
    });
    expect(capsulesOf(visit, s).map((l) => [l.shortfall, l.charged])).toEqual([
      ['0.166667', '0.166667'],
      ['0.166667', '0.166667'],
      ['0.166666', '0.166666'],
    ]);
    const line = deliveryLine(s.capsule, s.store, 1, '110', { lotNumber: 'K-9' });
    const wrong = await s.book.deliver(s.supplier, '2026-05-10', [line]);
    const settled = await s.book.done<Visit>('GET', `/visits/${visit.id}`);
    expect(capsulesOf(settled, s).map((l) => [l.shortfall, l.charged, l.cost])).toEqual([
      ['0', '0.166667', '3.666674'],
      ['0', '0.166667', '3.666674'],
      ['0', '0.166666', '3.666652'],
    ]);
    expect(await onHand(s.capsule.id)).toBe('4.50');
    await s.book.done('POST', `/deliveries/${wrong.id}/reversal`, { note: 'Never came.' });
    expect(lineOf(await s.book.done('GET', `/visits/${visit.id}`), s.capsule.id).shortfall).toBe(
      '0.166667',
    );
    await s.book.deliver(s.supplier, '2026-05-12', [{ ...line, lotNumber: 'K-10' }]);
    expect(await onHand(s.capsule.id)).toBe('4.50');
  });
});
