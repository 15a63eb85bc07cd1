import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { asOwner } from '../harness/database.js';
import {
  deliveryLine,
  lineOf,
  openStockedBook,
  postVisit,
  restoration,
  type SmallBook,
  TestService,
  type Visit,
  visitBody,
} from './book.js';

let service: TestService;
let owner: pg.Client;
let books = 0;

beforeAll(async () => {
  service = await TestService.start();
  owner = await asOwner(service.databaseUrl);
});

afterAll(async () => {
  await owner.end();
  await service.stop();
});

function stocked(): Promise<SmallBook> {
  books += 1;
  return openStockedBook(service, `visits${books}`);
}

describe('a visit', () => {
  it('takes what its template plans and costs it from the delivery, to the cent', async () => {
    const s = await stocked();
    const visit = await postVisit(s);
    expect(visit.usage.map((l) => `${l.consumable.name} ${l.charged} ${l.cost}`)).toEqual([
      'Patient bib 1 0.045',
      'Etchant gel 0.08 0.333333',
      'Adhesive 0.03 0.66',
      'Clear matrix strip 1 0.07',
      'Paste 0.06 1.08',
    ]);
    // 0.045 + 0.333333 + 0.66 + 0.07 + 1.08 = 2.188333
    expect(visit.materialCost).toBe('2.19');
    expect(visit.restorations[0]?.cost).toEqual({
      own: '1.81',
      shared: '0.38',
      retake: '0.00',
      total: '2.19',
    });
    expect(lineOf(visit, s.paste.id).taken).toMatchObject([
      { lotNumber: 'P-1', quantity: '0.06', sureness: 'assumed', outOfOrder: false },
    ]);
    expect(lineOf(visit, s.strip.id).taken[0]?.sureness).toBe('not stated');
  });

  it('reads back as it was answered', async () => {
    const s = await stocked();
    const visit = await postVisit(s, {
      restorations: [
        restoration(s, { attempts: 2 }),
        restoration(s, { tooth: '11', surfaces: 'MI', cavityClass: 'IV', reason: 'cosmetic' }),
      ],
    });
    expect(await s.book.done('GET', `/visits/${visit.id}`)).toEqual(visit);
  });

  it('opens a container in the room and goes on with it', async () => {
    const s = await stocked();
    await postVisit(s);
    const second = await postVisit(s, { chartReference: 'C-1002', visitedOn: '2026-05-05' });
    expect(lineOf(second, s.paste.id).taken[0]?.sureness).toBe('open container');
    const { rows } = await owner.query(
      `SELECT h.opened_on::text, h.use_by::text, h.on_hand, h.location_id FROM holdings h
       JOIN layers l ON l.id = h.layer_id WHERE l.consumable_id = $1 AND h.opened_on IS NOT NULL`,
      [s.adhesive.id],
    );
    expect(rows).toEqual([
      { opened_on: '2026-05-04', use_by: '2026-11-04', on_hand: '4.940000', location_id: s.room },
    ]);
  });

  it('charges whole single doses and keeps placed, dispensed and charged apart', async () => {
    const s = await stocked();
    const visit = await postVisit(s, {
      restorations: [restoration(s, { templateId: s.capsuleTemplate, shades: [] })],
    });
    const capsules = visit.usage.filter((l) => l.consumable.id === s.capsule.id);
    expect(capsules.map((l) => [l.placed, l.dispensed, l.charged, l.cost])).toEqual([
      ['0.08', '0.1', '0.25', '5.50'],
    ]);
    expect(visit.retakeCost).toBe('0.00');
  });

  it('shares what the visit and the tooth used between restorations', async () => {
    const s = await stocked();
    const visit = await postVisit(s, {
      restorations: [
        restoration(s),
        restoration(s, { surfaces: 'D', reason: 'cosmetic' }),
        restoration(s, { tooth: '11' }),
      ],
    });
    const sum = visit.restorations.reduce(
      (cents, r) => cents + Number(r.cost.total.replace('.', '')),
      0,
    );
    expect(sum).toBe(Number(visit.materialCost.replace('.', '')));
    expect(visit.usage.filter((l) => l.consumable.id === s.bib.id)).toHaveLength(1);
    expect(visit.usage.filter((l) => l.consumable.id === s.etchant.id)).toHaveLength(2);
  });

  it('is planned by a preview that books nothing', async () => {
    const s = await stocked();
    const before = await owner.query('SELECT count(*) FROM movements');
    const { chartReference, dentistId, ...plan } = visitBody(s);
    const preview = await s.book.ask('POST', '/visits/preview', plan, 'assistant');
    expect(preview.status).toBe(200);
    const after = await owner.query('SELECT count(*) FROM movements');
    expect(after.rows).toEqual(before.rows);
    const visit = await postVisit(s, { chartReference, dentistId });
    const shown = preview.body as unknown as Visit;
    expect(shown.materialCost).toBe(visit.materialCost);
    expect(shown.usage.map((l) => [l.planned, l.cost])).toEqual(
      visit.usage.map((l) => [l.planned, l.cost]),
    );
    expect(shown.usage[4]?.line).toBe(`r1/a1/5/${s.paste.id}`);
  });

  it('records what was really used beside what was planned', async () => {
    const s = await stocked();
    const visit = await postVisit(s, {
      usage: [
        { line: `r1/a1/5/${s.paste.id}`, dispensed: '0.1' },
        { consumableId: s.strip.id, dispensed: '2', restoration: 0 },
        { line: `visit/visit/${s.bib.id}`, dispensed: '0' },
      ],
    });
    expect(lineOf(visit, s.paste.id)).toMatchObject({
      planned: '0.06',
      dispensed: '0.1',
      cost: '1.80',
    });
    expect(lineOf(visit, s.bib.id)).toMatchObject({ planned: '1', dispensed: '0', taken: [] });
    expect(visit.usage.at(-1)).toMatchObject({ planned: '0', dispensed: '2', driver: null });
  });

  it('shows teeth in Universal numbers when asked, and stores ISO', async () => {
    const s = await stocked();
    const visit = await postVisit(s, {
      toothNotation: 'universal',
      restorations: [restoration(s, { tooth: '9' })],
    });
    expect(visit.restorations[0]?.tooth).toBe('9');
    const { rows } = await owner.query('SELECT tooth FROM restorations WHERE visit_id = $1', [
      visit.id,
    ]);
    expect(rows).toEqual([{ tooth: 21 }]);
  });
});

describe('scanned lots', () => {
  it('go first, and are noted when another lot expires earlier', async () => {
    const s = await stocked();
    const later = await s.book.deliver(s.supplier, '2026-02-01', [
      deliveryLine(s.paste, s.store, 1, '80', { lotNumber: 'P-2', expiresOn: '2028-06-30' }),
    ]);
    const lotId = later.lines[0]?.lot.id;
    const visit = await postVisit(s, { scanned: [{ lotId }] });
    expect(lineOf(visit, s.paste.id).taken).toMatchObject([
      { lotNumber: 'P-2', sureness: 'scanned', outOfOrder: true },
    ]);
  });

  it('become a shortfall of that very lot when the book has none left', async () => {
    const s = await stocked();
    const used = await s.book.deliver(s.supplier, '2026-02-01', [
      deliveryLine(s.strip, s.room, 1, '9', { lotNumber: 'S-9' }),
    ]);
    const lotId = used.lines[0]?.lot.id;
    await postVisit(s, {
      usage: [{ consumableId: s.strip.id, dispensed: '99' }],
      scanned: [{ lotId }],
    });
    const visit = await postVisit(s, { chartReference: 'C-2', scanned: [{ lotId }] });
    expect(lineOf(visit, s.strip.id)).toMatchObject({ shortfall: '1', taken: [] });
    const { rows } = await owner.query('SELECT lot_id FROM shortfalls WHERE visit_id = $1', [
      visit.id,
    ]);
    expect(rows).toEqual([{ lot_id: lotId }]);
  });
});

describe('a request sent twice (rule 8)', () => {
  it('is booked once and answered alike, also when both arrive at once', async () => {
    const s = await stocked();
    const headers = { 'idempotency-key': randomUUID() };
    const body = visitBody(s);
    const answers = await Promise.all(
      [1, 2, 3].map(() => s.book.ask('POST', '/visits', body, 'assistant', { headers })),
    );
    expect(answers.map((a) => a.status)).toEqual([201, 201, 201]);
    expect(new Set(answers.map((a) => a.text)).size).toBe(1);
    const { rows } = await owner.query(
      'SELECT count(*)::int AS n FROM visits WHERE practice_id = $1',
      [s.book.practice.owner.practiceId],
    );
    expect(rows).toEqual([{ n: 1 }]);
  });

  it('is refused when the body differs, and books nothing', async () => {
    const s = await stocked();
    const headers = { 'idempotency-key': 'same-key' };
    await s.book.ask('POST', '/visits', visitBody(s), 'assistant', { headers });
    const other = visitBody(s, { chartReference: 'C-9' });
    const answer = await s.book.ask('POST', '/visits', other, 'assistant', { headers });
    expect([answer.status, answer.body.code]).toEqual([409, 'idempotency_key_reused']);
    expect((answer.body.errors as { field: string }[])[0]?.field).toBe('Idempotency-Key');
  });
});
