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
import { deliveryLine, restoration, TestService, visitBody } from './book.js';
import { refusalOf } from './stock-steps.js';

// Requests that are well formed and still wrong: they name what is not there, not theirs or not
// possible. Every one is refused by its field, and leaves no trace in either practice.

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

const NOBODY = '0199c0de-0000-7000-8000-00000000dead';

/** Ids in a body, and what of the other practice each could name. */
const IDS: readonly [Operation, string, (o: BusyBook) => string][] = [
  ...(['visits', 'visits/preview'] as const).flatMap(
    (of): [Operation, string, (o: BusyBook) => string][] => [
      [of, 'locationId', (o) => o.s.room],
      [of, 'restorations[0].templateId', (o) => o.s.template],
      [of, 'restorations[0].shades[0]', (o) => o.s.paste.id],
      [of, 'usage[0].consumableId', (o) => o.s.paste.id],
      [of, 'scanned[0].lotId', (o) => o.lots.good],
      [of, 'scanned[0].holdingId', (o) => o.pasteHolding],
    ],
  ),
  ['visits', 'dentistId', (o) => o.s.book.practice.people.dentist.id],
  ['deliveries', 'supplierId', (o) => o.s.supplier],
  ['deliveries', 'lines[0].presentationId', (o) => o.s.bib.presentation],
  ['deliveries', 'lines[0].locationId', (o) => o.s.store],
  ['stock/moves', 'holdingId', (o) => o.stripHolding],
  ['stock/moves', 'toLocationId', (o) => o.s.room],
  ['stock/openings', 'holdingId', (o) => o.pasteHolding],
  ['stock/write-offs', 'holdingId', (o) => o.stripHolding],
  ['stock/returns', 'holdingId', (o) => o.stripHolding],
  ['counts', 'lines[0].holdingId', (o) => o.stripHolding],
];

describe('an id', () => {
  it.each(IDS)('in %s, %s, that names nothing here is refused', async (operation, field, idOf) => {
    for (const id of [NOBODY, idOf(other)]) {
      const body = withField(good[operation].body, field, id);
      expect(refusalOf(await send(b, good[operation], body))).toBe(
        `422 unknown_reference ${field}`,
      );
    }
  });

  it.each<[Operation, (o: BusyBook) => string]>([
    ['visit reversal', (o) => `/visits/${o.visit}/reversal`],
    ['delivery reversal', (o) => `/deliveries/${o.delivery}/reversal`],
    ['movement reversal', (o) => `/movements/${o.movement}/reversal`],
    ['lot status', (o) => `/lots/${o.lots.good}/status`],
  ])('in the path of a %s that names nothing here is not found', async (operation, pathOf) => {
    const mine = pathOf(b);
    const unknown = mine.replace(/[0-9a-f-]{36}/, NOBODY);
    for (const path of [unknown, pathOf(other)]) {
      const { method, body } = good[operation];
      expect(refusalOf(await b.s.book.ask(method, path, body))).toBe('404 not_found');
    }
    const { method, body } = good[operation];
    const broken = mine.replace(/[0-9a-f-]{36}/, '7');
    expect(refusalOf(await b.s.book.ask(method, broken, body))).toBe('400 invalid_request id');
  });

  it('that a visit of this book has already is not given again', async () => {
    const { rows } = await owner.query<{ id: string }>(
      'SELECT id FROM restorations WHERE visit_id = $1',
      [b.visit],
    );
    const post = async (changes: object) =>
      refusalOf(await b.s.book.ask('POST', '/visits', visitBody(b.s, changes)));
    const made = (id: string | undefined, tooth: string) => restoration(b.s, { id, tooth });
    expect(await post({ id: b.visit })).toBe('409 already_exists id');
    const known = [made(rows[0]?.id, '21')];
    expect(await post({ restorations: known })).toBe('409 already_exists restorations');
    const twice = [made(NOBODY, '21'), made(NOBODY, '11')];
    expect(await post({ restorations: twice })).toBe('409 already_exists restorations[1].id');
  });
});

describe('a restoration', () => {
  it.each([
    ['a tooth that nobody has', { tooth: '19' }, 'tooth'],
    ['a tooth far out', { tooth: '99' }, 'tooth'],
    ['a negative tooth', { tooth: '-1' }, 'tooth'],
    ['an incisal edge on a molar', { tooth: '36', surfaces: 'I', cavityClass: null }, 'surfaces'],
    ['an occlusal side on an incisor', { surfaces: 'O', cavityClass: null }, 'surfaces'],
    ['a side named twice', { surfaces: 'MM' }, 'surfaces'],
    ['one side by two of its letters', { surfaces: 'LP', cavityClass: 'V' }, 'surfaces'],
    ['no such side', { surfaces: 'X' }, 'surfaces'],
    ['a class of back teeth on an incisor', { cavityClass: 'II' }, 'cavityClass'],
    ['a class that needs another side', { surfaces: 'F' }, 'cavityClass'],
    ['a class without its incisal edge', { cavityClass: 'IV' }, 'cavityClass'],
    ['no shade where the template asks', { shades: [] }, 'shades'],
    ['shades left out where it asks', { shades: null }, 'shades'],
  ])('with %s does not fit', async (_, changes, field) => {
    for (const operation of ['visits', 'visits/preview'] as const) {
      const restorations = [restoration(b.s), restoration(b.s, changes)];
      const body = { ...good[operation].body, restorations };
      expect(refusalOf(await send(b, good[operation], body))).toBe(
        `422 restoration_does_not_fit restorations[1].${field}`,
      );
    }
  });

  it('follows a version of its template that exists', async () => {
    const body = withField(good.visits.body, 'restorations[0].templateVersion', 2);
    expect(refusalOf(await send(b, good.visits, body))).toBe(
      '422 unknown_reference restorations[0].templateVersion',
    );
  });

  it('is one of at most 32, with every mistake named at once', async () => {
    const bad = Array.from({ length: 32 }, () => restoration(b.s, { tooth: '19' }));
    const refusal = refusalOf(
      await send(b, good.visits, { ...good.visits.body, restorations: bad }),
    );
    expect(refusal.split(' ').slice(2)).toEqual(bad.map((_, i) => `restorations[${i}].tooth`));
  });
});

describe('usage', () => {
  const line = () => `visit/visit/${b.s.bib.id}`;
  it.each<[string, () => object[], string]>([
    ['a line twice', () => [{ line: line() }, { line: line() }], 'usage[1].line'],
    ['a line that no template plans', () => [{ line: 'r9/a1/1/x' }], 'usage[0].line'],
    [
      'a restoration for a planned line',
      () => [{ line: line(), restoration: 0 }],
      'usage[0].restoration',
    ],
    ['an attempt for a planned line', () => [{ line: line(), attempt: 1 }], 'usage[0].attempt'],
    ['part of a piece', () => [{ line: line(), dispensed: '0.5' }], 'usage[0].dispensed'],
    [
      'more placed than dispensed',
      () => [{ consumableId: b.s.paste.id, dispensed: '0.1', placed: '0.2' }],
      'usage[0].placed',
    ],
    [
      'more placed than planned to dispense, of another line',
      () => [{ line: `r1/a1/5/${b.s.paste.id}`, dispensed: '0.01', placed: '0.02' }],
      'usage[0].placed',
    ],
    ['nothing of something', () => [{ consumableId: b.s.paste.id }], 'usage[0].dispensed'],
    [
      'none of something',
      () => [{ consumableId: b.s.paste.id, dispensed: '0.000000' }],
      'usage[0].dispensed',
    ],
    ['something of nothing', () => [{ dispensed: '1' }], 'usage[0].consumableId'],
    [
      'a restoration that the visit lacks',
      () => [{ consumableId: b.s.paste.id, dispensed: '1', restoration: 1 }],
      'usage[0].restoration',
    ],
    [
      'an attempt that was not made',
      () => [{ consumableId: b.s.paste.id, dispensed: '1', restoration: 0, attempt: 2 }],
      'usage[0].attempt',
    ],
  ])('that names %s is not possible', async (_, usage, field) => {
    for (const operation of ['visits', 'visits/preview'] as const) {
      const body = { ...good[operation].body, usage: usage() };
      expect(refusalOf(await send(b, good[operation], body))).toBe(
        `422 usage_not_possible ${field}`,
      );
    }
  });

  it('that would open more than a thousand containers is mistyped', async () => {
    const { book, supplier, room, etchant } = b.s;
    await book.deliver(supplier, '2026-01-05', [deliveryLine(etchant, room, 1100, '10')]);
    before = await sums();
    for (const operation of ['visits', 'visits/preview'] as const) {
      const usage = [{ consumableId: etchant.id, dispensed: '5000' }];
      const answer = await send(b, good[operation], { ...good[operation].body, usage });
      expect(refusalOf(answer)).toBe('422 too_large usage');
    }
  });
});
