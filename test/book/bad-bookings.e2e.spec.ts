import { randomUUID } from 'node:crypto';
import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { asOwner } from '../harness/database.js';
import {
  type BusyBook,
  goodRequests,
  type Operation,
  openBusyBook,
  type Request,
  send,
  sumOfBook,
  withField,
} from './bad-requests.js';
import { TestService } from './book.js';
import { refusalOf } from './stock-steps.js';

// Requests that are well formed, name what is there, and are still not possible or not allowed: every
// one is refused by its field, and leaves no trace in either practice.

let service: TestService;
let owner: pg.Client;
let b: BusyBook;
let other: BusyBook;
let good: Readonly<Record<Operation, Request>>;
let before: object;

const sums = async () => [await sumOfBook(owner, b), await sumOfBook(owner, other)];

beforeAll(async () => {
  service = await TestService.start();
  owner = await asOwner(service.databaseUrl);
  b = await openBusyBook(service, owner, 'here');
  other = await openBusyBook(service, owner, 'there');
  good = goodRequests(b);
  before = await sums();
});

afterEach(async () => expect(await sums()).toEqual(before));

afterAll(async () => {
  await owner.end();
  await service.stop();
});

describe('a scanned lot', () => {
  it.each<[keyof BusyBook['lots'], string, string]>([
    ['expired', '2026-03-01', 'expired'],
    ['recalled', '2026-03-01', 'recalled'],
    ['quarantined', '2026-03-01', 'quarantined'],
    ['later', '2026-05-31', 'not yet received'],
  ])('that is %s on %s is refused, whatever else is there', async (lot, visitedOn, why) => {
    for (const operation of ['visits', 'visits/preview'] as const) {
      const scanned = [{ lotId: b.lots.good }, { lotId: b.lots[lot] }];
      const body = { ...good[operation].body, visitedOn, scanned };
      const answer = await send(b, good[operation], body);
      expect(refusalOf(answer)).toBe('422 lot_not_usable scanned[1].lotId');
      expect(answer.body.detail).toContain(why);
    }
  });

  it('of something that the visit does not use is refused', async () => {
    const holdingId = b.capsuleHolding;
    const { rows } = await owner.query<{ id: string }>(
      'SELECT l.lot_id AS id FROM layers l JOIN holdings h ON h.layer_id = l.id WHERE h.id = $1',
      [holdingId],
    );
    const scanned = [{ lotId: rows[0]?.id }];
    const answer = await send(b, good.visits, { ...good.visits.body, scanned });
    expect(refusalOf(answer)).toBe('422 lot_not_needed scanned[0].lotId');
  });

  it('is no container of another lot', async () => {
    const scanned = [{ lotId: b.lots.good, holdingId: b.stripHolding }];
    const answer = await send(b, good.visits, { ...good.visits.body, scanned });
    expect(refusalOf(answer)).toBe('422 unknown_reference scanned[0].holdingId');
  });
});

describe('stock', () => {
  const EARLY = '2026-01-04';
  it.each<[Operation, object, string]>([
    ['stock/moves', { occurredOn: EARLY }, '422 received_later holdingId'],
    ['stock/write-offs', { occurredOn: EARLY }, '422 received_later holdingId'],
    ['stock/returns', { occurredOn: EARLY }, '422 received_later holdingId'],
    ['stock/openings', { openedOn: EARLY }, '422 received_later holdingId'],
    ['counts', { countedOn: EARLY }, '422 received_later lines[0].holdingId'],
    ['stock/moves', { quantity: '100' }, '422 not_enough_stock quantity'],
    ['stock/write-offs', { quantity: '100' }, '422 not_enough_stock quantity'],
    ['stock/returns', { quantity: '1000000000' }, '422 not_enough_stock quantity'],
    ['stock/moves', { quantity: '0.5' }, '422 not_whole quantity'],
    ['stock/write-offs', { quantity: '1.000001' }, '422 not_whole quantity'],
    ['stock/returns', { quantity: '0.5' }, '422 not_whole quantity'],
    ['deliveries', { discount: '10.01' }, '422 discount_too_large discount'],
  ])('of %s with %o is refused', async (operation, changes, expected) => {
    const body = { ...good[operation].body, ...changes };
    expect(refusalOf(await send(b, good[operation], body))).toBe(expected);
  });

  it('is not undone where it went on', async () => {
    const { method, path, body } = good['delivery reversal'];
    expect(refusalOf(await b.s.book.ask(method, path, body))).toBe('409 stock_moved_on');
  });

  it('of more than the book can hold names the line', async () => {
    const { book, etchant, store } = b.s;
    const presentationId = await book.presentation(etchant.id, 'multi-use', 100_000, '1000', {
      name: 'Tanker',
    });
    before = await sums();
    const lines = [{ presentationId, locationId: store, packs: 100_000, packPrice: '1000000' }];
    const answer = await send(b, good.deliveries, { ...good.deliveries.body, lines });
    expect(refusalOf(answer)).toBe('422 too_large lines[0].packs');
  });
});

describe('a dentist', () => {
  it('is one', async () => {
    for (const role of ['assistant', 'manager', 'auditor'] as const) {
      const body = withField(good.visits.body, 'dentistId', b.s.book.practice.people[role].id);
      expect(refusalOf(await send(b, good.visits, body))).toBe('422 not_a_dentist dentistId');
    }
  });
});

describe('one key for two bodies', () => {
  it('is refused for every booking once it was used, and nothing more is booked', async () => {
    const headers = { 'idempotency-key': randomUUID() };
    const { path, body } = good['stock/moves'];
    const first = await b.s.book.ask('POST', path, body, 'owner', { headers });
    expect(first.status).toBe(201);
    before = await sums();
    const again = await b.s.book.ask('POST', path, body, 'owner', { headers });
    expect(again.text).toBe(first.text);
    const bodies = Object.values(good).filter(({ method, path: to }) => {
      return method === 'POST' && to !== '/visits/preview' && to !== path;
    });
    const changed = { method: 'POST', path, body: { ...body, quantity: '2' } };
    for (const request of [...bodies, changed]) {
      const answer = await b.s.book.ask('POST', request.path, request.body, 'owner', { headers });
      expect(refusalOf(answer)).toBe('409 idempotency_key_reused Idempotency-Key');
    }
  });

  it('says nothing of the key to another practice, where it is free', async () => {
    const headers = { 'idempotency-key': 'shared-by-chance' };
    const book = (o: BusyBook) => {
      const { path, body } = goodRequests(o)['stock/write-offs'];
      return o.s.book.ask('POST', path, body, 'owner', { headers });
    };
    expect([(await book(b)).status, (await book(other)).status]).toEqual([201, 201]);
    before = await sums();
  });
});
