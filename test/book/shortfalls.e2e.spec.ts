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
} from './book.js';
import { expectRulesHold } from './invariants.js';

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
  return openStockedBook(service, `late${books}`);
}

describe('a shortfall', () => {
  it('never blocks, is priced at the last known cost, and is settled by a delivery', async () => {
    const s = await stocked();
    const visit = await postVisit(s, {
      usage: [{ line: `r1/a1/5/${s.paste.id}`, dispensed: '5' }],
    });
    expect(visit.estimated).toBe(true);
    expect(lineOf(visit, s.paste.id)).toMatchObject({
      charged: '5',
      shortfall: '1',
      cost: '90.00',
    });
    await s.book.deliver(s.supplier, '2026-05-06', [
      deliveryLine(s.paste, s.store, 1, '80', { lotNumber: 'P-3', expiresOn: '2028-06-30' }),
    ]);
    const settled = await s.book.done<Visit>('GET', `/visits/${visit.id}`);
    expect(settled.estimated).toBe(false);
    expect(lineOf(settled, s.paste.id)).toMatchObject({ shortfall: '0', cost: '92.00' });
    expect(lineOf(settled, s.paste.id).taken.map((t) => [t.lotNumber, t.sureness])).toEqual([
      ['P-1', 'assumed'],
      ['P-3', 'not stated'],
    ]);
    // 72 + 20 for the paste, 1.108333 for the rest
    expect(settled.materialCost).toBe('93.11');
    expect(settled.restorations[0]?.cost.total).toBe('93.11');
  });

  it('is settled in part, by the earliest visit first, and by a count', async () => {
    const s = await stocked();
    const first = await postVisit(s, {
      usage: [{ line: `visit/visit/${s.bib.id}`, dispensed: '503' }],
    });
    const second = await postVisit(s, { visitedOn: '2026-05-05', chartReference: 'C-3' });
    expect(lineOf(first, s.bib.id).shortfall).toBe('3');
    expect(lineOf(second, s.bib.id).shortfall).toBe('1');
    const { rows } = await owner.query<{ id: string }>(
      'SELECT h.id FROM holdings h JOIN layers l ON l.id = h.layer_id WHERE l.consumable_id = $1',
      [s.bib.id],
    );
    await s.book.done('POST', '/counts', { lines: [{ holdingId: rows[0]?.id, counted: '2' }] });
    const shortfalls = async () =>
      (
        await owner.query(
          'SELECT quantity - settled AS open FROM shortfalls WHERE consumable_id = $1 ORDER BY used_on, id',
          [s.bib.id],
        )
      ).rows.map((r: { open: string }) => Number(r.open));
    expect(await shortfalls()).toEqual([1, 1]);
    await s.book.done('POST', '/counts', { lines: [{ holdingId: rows[0]?.id, counted: '4' }] });
    expect(await shortfalls()).toEqual([0, 0]);
    expect((await s.book.done<Visit>('GET', `/visits/${first.id}`)).estimated).toBe(false);
  });
});

describe('a reversal', () => {
  it('puts everything back with its value, and the visit stays, marked', async () => {
    const s = await stocked();
    const before = await owner.query(
      'SELECT id, out_quantity, out_cost FROM layers WHERE practice_id = $1 ORDER BY id',
      [s.book.practice.owner.practiceId],
    );
    const visit = await postVisit(s, { restorations: [restoration(s, { attempts: 2 })] });
    const reversed = await s.book.done<{ reversal: { note: string } }>(
      'POST',
      `/visits/${visit.id}/reversal`,
      { note: 'Entered for the wrong chart.' },
    );
    expect(reversed.reversal.note).toBe('Entered for the wrong chart.');
    const after = await owner.query(
      'SELECT id, out_quantity, out_cost FROM layers WHERE practice_id = $1 ORDER BY id',
      [s.book.practice.owner.practiceId],
    );
    expect(after.rows).toEqual(before.rows);
    const again = await s.book.ask('POST', `/visits/${visit.id}/reversal`, { note: 'Again.' });
    expect([again.status, again.body.code]).toEqual([409, 'already_reversed']);
  });

  it('closes the open shortfalls of the visit', async () => {
    const s = await stocked();
    const visit = await postVisit(s, {
      usage: [{ line: `visit/visit/${s.bib.id}`, dispensed: '501' }],
    });
    await s.book.done('POST', `/visits/${visit.id}/reversal`, { note: 'Wrong.' });
    const { rows } = await owner.query(
      'SELECT count(*)::int AS open FROM shortfalls WHERE visit_id = $1 AND cancelled_at IS NULL',
      [visit.id],
    );
    expect(rows).toEqual([{ open: 0 }]);
  });
});

describe('a visit entered late', () => {
  it('settles at once from goods that came after its day, unsure of the lot', async () => {
    const s = await stocked();
    await s.book.deliver(s.supplier, '2026-06-01', [
      deliveryLine(s.bib, s.store, 1, '25', { lotNumber: 'B-2' }),
    ]);
    const visit = await postVisit(s, {
      usage: [{ line: `visit/visit/${s.bib.id}`, dispensed: '503' }],
    });
    expect(visit.estimated).toBe(false);
    expect(lineOf(visit, s.bib.id).taken.map((t) => [t.lotNumber, t.quantity, t.sureness])).toEqual(
      [
        [null, '500', 'not stated'],
        ['B-2', '3', 'not stated'],
      ],
    );
    expect(await s.book.done('GET', `/visits/${visit.id}`)).toEqual(visit);
    await expectRulesHold(owner, [s.bib.id]);
  });
});

describe('a wrong delivery that settled a shortfall', () => {
  it('can be reversed: the shortfall is open again, and settled by the right one', async () => {
    const s = await stocked();
    const visit = await postVisit(s, {
      usage: [{ line: `r1/a1/5/${s.paste.id}`, dispensed: '5' }],
    });
    const wrong = await s.book.deliver(s.supplier, '2026-05-06', [
      deliveryLine(s.paste, s.store, 1, '800', { lotNumber: 'P-3', expiresOn: '2028-06-30' }),
    ]);
    const dear = await s.book.done<Visit>('GET', `/visits/${visit.id}`);
    expect(lineOf(dear, s.paste.id).cost).toBe('272.00');
    await s.book.done('POST', `/deliveries/${wrong.id}/reversal`, { note: 'Price mistyped.' });
    const open = await s.book.done<Visit>('GET', `/visits/${visit.id}`);
    expect(lineOf(open, s.paste.id)).toMatchObject({ shortfall: '1', cost: '90.00' });
    expect([open.estimated, open.materialCost]).toEqual([true, visit.materialCost]);
    await s.book.deliver(s.supplier, '2026-05-06', [
      deliveryLine(s.paste, s.store, 1, '80', { lotNumber: 'P-3', expiresOn: '2028-06-30' }),
    ]);
    const right = await s.book.done<Visit>('GET', `/visits/${visit.id}`);
    expect(lineOf(right, s.paste.id)).toMatchObject({ shortfall: '0', cost: '92.00' });
    await expectRulesHold(owner, [s.paste.id]);
  });
});

describe('an opened container that was carried elsewhere', () => {
  it('stays itself: it can be scanned, and a reversal finds it', async () => {
    const s = await stocked();
    const visit = await postVisit(s);
    const opened = `SELECT h.id, h.location_id, h.on_hand FROM holdings h
      JOIN layers l ON l.id = h.layer_id WHERE l.consumable_id = $1 AND h.opened_on IS NOT NULL`;
    const { rows } = await owner.query<{ id: string }>(opened, [s.paste.id]);
    const body = { holdingId: rows[0]?.id, toLocationId: s.otherRoom, quantity: '3.94' };
    const { movementIds } = await s.book.done<{ movementIds: string[] }>(
      'POST',
      '/stock/moves',
      body,
    );
    await s.book.done('POST', `/visits/${visit.id}/reversal`, { note: 'Wrong chart.' });
    const there = { id: rows[0]?.id, location_id: s.otherRoom, on_hand: '4.000000' };
    expect((await owner.query(opened, [s.paste.id])).rows).toEqual([there]);
    await expectRulesHold(owner, [s.paste.id]);
    const again = await s.book.ask('POST', `/movements/${movementIds[0]}/reversal`, {
      note: 'Back.',
    });
    expect(again.status).toBe(201);
    expect((await owner.query(opened, [s.paste.id])).rows).toEqual([
      { ...there, location_id: s.room },
    ]);
  });
});
