import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { asOwner } from '../harness/database.js';
import {
  consumablesOf,
  openSmallBook,
  type SmallBook,
  TestService,
  type Visit,
  visitBody,
  withFreshCatalogue,
} from './book.js';
import { expectRulesHold } from './invariants.js';
import { firstHolding, holdingsOf, layersOf, refusalOf, shelve } from './stock-steps.js';

let service: TestService;
let owner: pg.Client;
let shared: SmallBook;
let s: SmallBook;
let catalogues = 0;

beforeAll(async () => {
  service = await TestService.start();
  owner = await asOwner(service.databaseUrl);
  shared = await openSmallBook(service, 'stock');
});

beforeEach(async () => {
  catalogues += 1;
  s = await withFreshCatalogue(shared, String(catalogues));
});

afterEach(() => expectRulesHold(owner, consumablesOf(s)));

afterAll(async () => {
  await expectRulesHold(owner);
  await owner.end();
  await service.stop();
});

interface Booked {
  readonly movementIds: string[];
  readonly holdingId: string;
}

const post = (path: string, body: object) => s.book.ask('POST', path, body);
const booked = (path: string, body: object) => s.book.done<Booked>('POST', path, body);
const move = (holdingId: string, quantity: string, toLocationId: string) =>
  post('/stock/moves', { holdingId, quantity, toLocationId });
const undo = (movementId: string | undefined) =>
  post(`/movements/${movementId}/reversal`, { note: 'Entered wrongly.' });
const onHand = async (of: SmallBook['bib']) =>
  (await holdingsOf(owner, of)).map((h) => [h.location_id, h.on_hand, h.opened_on]);

describe('a move', () => {
  it('lets sealed goods join the sealed goods of the same delivery line', async () => {
    const { id } = await shelve(owner, s, s.capsule);
    const first = await booked('/stock/moves', {
      holdingId: id,
      quantity: '0.5',
      toLocationId: s.room,
    });
    const second = await move(id, '0.25', s.room);
    expect(second.body.holdingId).toBe(first.holdingId);
    expect(await onHand(s.capsule)).toEqual([
      [s.store, '4.25', null],
      [s.room, '0.75', null],
    ]);
    expect(refusalOf(await move(id, '0.3', s.room))).toBe('422 not_whole quantity');
    expect(refusalOf(await move(id, '4.5', s.room))).toBe('422 not_enough_stock quantity');
    expect(refusalOf(await move(id, '1', s.store))).toBe('422 nothing_to_do toLocationId');
  });

  it('takes an opened container whole, and keeps its date', async () => {
    const { id } = await shelve(owner, s, s.adhesive, { expiresOn: '2027-01-31' });
    const open = await booked('/stock/openings', { holdingId: id, openedOn: '2026-03-31' });
    expect(refusalOf(await move(open.holdingId, '2', s.room))).toBe('422 not_whole quantity');
    const there = (await move(open.holdingId, '5', s.room)).body as unknown as Booked;
    const carried = (await holdingsOf(owner, s.adhesive)).find((h) => h.id === there.holdingId);
    expect(carried).toMatchObject({ on_hand: '5', opened_on: '2026-03-31', use_by: '2026-09-30' });
    expect((await undo(there.movementIds[0])).status).toBe(201);
    expect((await undo(open.movementIds[0])).status).toBe(201);
    expect((await holdingsOf(owner, s.adhesive)).map((h) => h.on_hand)).toEqual(['5', '0']);
  });

  it('does not go to a location that is no longer in use', async () => {
    const { id } = await shelve(owner, s, s.strip);
    const closed = await s.book.location(`Drawer ${catalogues}`, 'drawer', s.room);
    await s.book.done('PATCH', `/locations/${closed}`, { active: false });
    expect(refusalOf(await move(id, '1', closed))).toBe('422 not_in_use toLocationId');
  });
});

describe('an opening', () => {
  it.each([
    ['2026-03-31', '2028-01-31', '2026-09-30'],
    ['2026-03-31', '2026-06-30', '2026-06-30'],
    ['2026-05-04', null, '2026-11-04'],
  ])('on %s of a label good to %s may be used until %s', async (openedOn, expiresOn, useBy) => {
    const { id } = await shelve(owner, s, s.adhesive, expiresOn === null ? {} : { expiresOn });
    const { holdingId } = await booked('/stock/openings', { holdingId: id, openedOn });
    const opened = (await holdingsOf(owner, s.adhesive)).find((h) => h.id === holdingId);
    expect([opened?.use_by, opened?.on_hand]).toEqual([useBy, '5']);
    const again = await post('/stock/openings', { holdingId });
    expect(refusalOf(again)).toBe('422 cannot_open holdingId');
  });

  it('is for containers that are used more than once and may be used', async () => {
    const dose = await shelve(owner, s, s.capsule);
    const strips = await shelve(owner, s, s.strip);
    const late = await shelve(owner, s, s.paste, { lotNumber: 'P-1', expiresOn: '2026-02-28' });
    const opening = (holdingId: string, openedOn: string) =>
      post('/stock/openings', { holdingId, openedOn });
    for (const [holding, day] of [
      [dose, '2026-02-01'],
      [strips, '2026-02-01'],
      [late, '2026-03-01'],
    ] as const) {
      expect(refusalOf(await opening(holding.id, day))).toBe('422 cannot_open holdingId');
    }
    expect((await opening(late.id, '2026-02-28')).status).toBe(201);
    expect(refusalOf(await opening(late.id, '2026-02-28'))).toBe('422 cannot_open holdingId');
  });
});

describe('goods that leave unused', () => {
  it('are written off for any of the reasons, with their value', async () => {
    const { id } = await shelve(owner, s, s.strip, { price: '9.99' });
    const reasons = [
      'expired',
      'after-opening limit',
      'contaminated',
      'wrong shade opened',
      'residue',
      'damaged',
      'temperature',
      'recall',
      'sample',
    ];
    for (const reason of reasons) {
      await booked('/stock/write-offs', { holdingId: id, quantity: '1', reason });
    }
    const { rows } = await owner.query(
      `SELECT waste_reason FROM movements m JOIN layers l ON l.id = m.layer_id
       WHERE l.consumable_id = $1 AND to_account = 'waste' ORDER BY sequence`,
      [s.strip.id],
    );
    expect(rows.map((row: { waste_reason: string }) => row.waste_reason)).toEqual(reasons);
    expect(await layersOf(owner, s.strip)).toEqual([
      { received: '100', out: '9', landed: '9.99', cost: '0.8991' },
    ]);
  });

  it('may be part of a dose, and the rest of it is used for no patient', async () => {
    const { id } = await shelve(owner, s, s.capsule, { price: '20' });
    await booked('/stock/write-offs', { holdingId: id, quantity: '4.9', reason: 'temperature' });
    const body = visitBody(s, {
      restorations: [
        { tooth: '21', surfaces: 'M', reason: 'decay', templateId: s.capsuleTemplate },
      ],
    });
    const visit = await s.book.done<Visit>('POST', '/visits', body);
    const line = visit.usage.find((l) => l.consumable.id === s.capsule.id);
    expect(line).toMatchObject({ charged: '0.25', shortfall: '0.25', taken: [] });
    const rest = { holdingId: id, quantity: '0.1', reason: 'residue' };
    await booked('/stock/write-offs', rest);
    expect((await firstHolding(owner, s.capsule)).on_hand).toBe('0');
  });

  it('are sent back, also when recalled, but no more than is there', async () => {
    const { id } = await shelve(owner, s, s.strip, { lotNumber: 'S-1' });
    const { rows } = await owner.query<{ id: string }>(
      'SELECT id FROM lots WHERE consumable_id = $1',
      [s.strip.id],
    );
    const note = 'Notice of the maker.';
    await s.book.done('PUT', `/lots/${rows[0]?.id}/status`, { status: 'recalled', note });
    const back = (quantity: string) => post('/stock/returns', { holdingId: id, quantity, note });
    expect((await back('60')).status).toBe(201);
    expect(refusalOf(await back('41'))).toBe('422 not_enough_stock quantity');
    const last = await back('40');
    expect(await layersOf(owner, s.strip)).toEqual([
      { received: '100', out: '100', landed: '10', cost: '10' },
    ]);
    expect((await undo((last.body.movementIds as string[])[0])).status).toBe(201);
    expect((await firstHolding(owner, s.strip)).on_hand).toBe('40');
  });
});

describe('a count', () => {
  const count = (...lines: [holdingId: string, counted: string][]) =>
    post('/counts', { lines: lines.map(([holdingId, counted]) => ({ holdingId, counted })) });

  it('books what is missing and what was found, and nothing where all is well', async () => {
    const { id } = await shelve(owner, s, s.strip);
    expect((await count([id, '100'])).body.movementIds).toEqual([]);
    const less = await count([id, '97']);
    expect(less.body.lines).toEqual([
      { holdingId: id, expected: '100', counted: '97', difference: '-3' },
    ]);
    expect((await count([id, '99'])).status).toBe(201);
    expect(await layersOf(owner, s.strip)).toEqual([
      { received: '100', out: '1', landed: '10', cost: '0.1' },
    ]);
  });

  it('finds no more than was ever received', async () => {
    const { id } = await shelve(owner, s, s.strip);
    expect(refusalOf(await count([id, '101']))).toBe('422 more_than_received lines[0].counted');
  });

  it('finds in one place what is missing in another, in any order', async () => {
    const { id } = await shelve(owner, s, s.strip);
    const { holdingId } = (await move(id, '40', s.room)).body as unknown as Booked;
    const answer = await count([holdingId, '43'], [id, '57']);
    expect(answer.status).toBe(201);
    expect(await onHand(s.strip)).toEqual([
      [s.store, '57', null],
      [s.room, '43', null],
    ]);
  });

  it('names a holding once, and whole pieces', async () => {
    const { id } = await shelve(owner, s, s.strip);
    const twice = await count([id, '99'], [id, '98']);
    expect(refusalOf(twice)).toBe('422 nothing_to_do lines[1].holdingId');
    expect(refusalOf(await count([id, '98.5']))).toBe('422 not_whole lines[0].counted');
    expect((await firstHolding(owner, s.strip)).on_hand).toBe('100');
  });

  it('gives what it finds to the visit that lacked it', async () => {
    const { id } = await shelve(owner, s, s.bib);
    await count([id, '0']);
    const visit = await s.book.done<Visit>('POST', '/visits', visitBody(s));
    expect(visit.usage.find((l) => l.consumable.id === s.bib.id)?.shortfall).toBe('1');
    await count([id, '3']);
    const settled = await s.book.done<Visit>('GET', `/visits/${visit.id}`);
    expect(settled.usage.find((l) => l.consumable.id === s.bib.id)?.shortfall).toBe('0');
    expect((await firstHolding(owner, s.bib)).on_hand).toBe('2');
  });
});

describe('a movement reversed', () => {
  const waste = async (quantity: string) => {
    const { id } = await firstHolding(owner, s.strip);
    const body = { holdingId: id, quantity, reason: 'damaged' };
    return (await booked('/stock/write-offs', body)).movementIds[0];
  };

  it('comes back once, with its value', async () => {
    await shelve(owner, s, s.strip, { price: '3.33' });
    const movement = await waste('7');
    expect((await undo(movement)).status).toBe(201);
    expect(refusalOf(await undo(movement))).toBe('409 already_reversed');
    expect(await layersOf(owner, s.strip)).toEqual([
      { received: '100', out: '0', landed: '3.33', cost: '0' },
    ]);
  });

  it('is won by one of two that ask at the same moment', async () => {
    await shelve(owner, s, s.strip);
    const movement = await waste('7');
    const answers = await Promise.all([undo(movement), undo(movement), undo(movement)]);
    expect(answers.map(refusalOf).sort()).toEqual([
      '201 ',
      '409 already_reversed',
      '409 already_reversed',
    ]);
  });

  it('is no reversal, and no part of a visit or a delivery', async () => {
    await shelve(owner, s, s.bib);
    await s.book.done('POST', '/visits', visitBody(s));
    const { rows } = await owner.query<{ id: string }>(
      `SELECT m.id FROM movements m JOIN layers l ON l.id = m.layer_id WHERE l.consumable_id = $1`,
      [s.bib.id],
    );
    expect(rows).toHaveLength(2);
    await shelve(owner, s, s.strip);
    const back = (await undo(await waste('1'))).body.movementIds as string[];
    for (const id of [...rows.map((row) => row.id), back[0]]) {
      expect(refusalOf(await undo(id))).toBe('422 cannot_reverse id');
    }
  });
});
