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

// Requests that are not well formed: every one is refused by its field, and leaves no trace.

let service: TestService;
let owner: pg.Client;
let b: BusyBook;
let good: Readonly<Record<Operation, Request>>;
let before: Record<string, string>;

beforeAll(async () => {
  service = await TestService.start();
  owner = await asOwner(service.databaseUrl);
  b = await openBusyBook(service, owner, 'bad');
  good = goodRequests(b);
  before = await sumOfBook(owner, b);
});

afterEach(async () => expect(await sumOfBook(owner, b)).toEqual(before));

afterAll(async () => {
  await owner.end();
  await service.stop();
});

const OPERATIONS: readonly Operation[] = [
  'visits',
  'visits/preview',
  'deliveries',
  'stock/moves',
  'stock/openings',
  'stock/write-offs',
  'stock/returns',
  'counts',
  'visit reversal',
  'delivery reversal',
  'movement reversal',
  'lot status',
];
const BOOKINGS = OPERATIONS.filter((name) => name !== 'visits/preview' && name !== 'lot status');

const NOT_DECIMALS = [
  '-1',
  '-0.01',
  '0.1234567',
  '1e3',
  '1E-2',
  '10000000000',
  '99999999999999999999999',
  '1,5',
  '+1',
  ' 1',
  '1 ',
  '.5',
  '1.',
  '0x10',
  'NaN',
  'Infinity',
  '١',
  '',
  1,
  0.5,
  true,
  [],
  {},
  ['1'],
];
const NOT_DAYS = [
  '2026-02-30',
  '2026-13-01',
  '2026-00-10',
  '2025-02-29',
  '04.05.2026',
  '2026-5-4',
  '2026-05-04T00:00:00Z',
  '1899-12-31',
  '+02026-05-04',
  '',
  20260504,
  true,
  [],
  {},
];
const NOT_TEXTS = ['', '   ', 'line\nbreak', 'tab\there', '\u007f', 7, true, [], {}, ['x']];
const NOT_IDS = [
  '',
  'nope',
  '0199C0DE-0000-7000-8000-000000000001',
  "' OR 1=1 --",
  7,
  true,
  [],
  {},
];
const NOT_WHOLE = ['1', '', 1.5, -1, 1e9, true, [], {}];
const NOT_CHOICES = ['', 'none of them', 'Decay', 1, true, [], {}];
const NOT_LISTS = ['', 'x', 3, true, {}, { 0: {} }];

type Row = readonly [operation: Operation, field: string, values: readonly unknown[]];
const visitRows = (of: 'visits' | 'visits/preview'): Row[] => [
  [of, 'visitedOn', [...NOT_DAYS, null]],
  [of, 'locationId', [...NOT_IDS, null]],
  [of, 'staffCount', [...NOT_WHOLE, 0, 11]],
  [of, 'costShareKey', NOT_CHOICES],
  [of, 'toothNotation', NOT_CHOICES],
  [of, 'restorations', [...NOT_LISTS, null, [], Array.from({ length: 33 }, () => ({}))]],
  [of, 'usage', [...NOT_LISTS, Array.from({ length: 301 }, () => ({}))]],
  [of, 'scanned', [...NOT_LISTS, Array.from({ length: 101 }, () => ({}))]],
  [of, 'restorations[0].id', NOT_IDS],
  [of, 'restorations[0].tooth', [...NOT_TEXTS, null, 21, '2100']],
  [of, 'restorations[0].surfaces', [...NOT_TEXTS, null, 'M'.repeat(13)]],
  [of, 'restorations[0].cavityClass', [...NOT_CHOICES, 'VII', 3]],
  [of, 'restorations[0].size', NOT_CHOICES],
  [of, 'restorations[0].reason', [...NOT_CHOICES, null]],
  [of, 'restorations[0].templateId', [...NOT_IDS, null]],
  [of, 'restorations[0].templateVersion', [...NOT_WHOLE, 0]],
  [of, 'restorations[0].shades', [...NOT_LISTS, [null], [7], ['x'], [ID, ID]]],
  [of, 'restorations[0].attempts', [...NOT_WHOLE, 0, 11]],
  [of, 'restorations[0].cycles', [...NOT_WHOLE, 0, 11]],
  [of, 'restorations[0].volumeMm3', [...NOT_DECIMALS, '0', '10000.000001']],
  [of, 'restorations[0].depthMm', [...NOT_DECIMALS, '0', '100.1']],
  [of, 'restorations[0].minutes', [...NOT_WHOLE, 1441]],
  [of, 'usage[0].line', [...NOT_TEXTS, 'x'.repeat(161)]],
  [of, 'usage[0].restoration', [...NOT_WHOLE, 32]],
  [of, 'usage[0].attempt', [...NOT_WHOLE, 0, 11]],
  [of, 'usage[0].consumableId', NOT_IDS],
  [of, 'usage[0].dispensed', [...NOT_DECIMALS, '100000.1']],
  [of, 'usage[0].placed', [...NOT_DECIMALS, '100000.1']],
  [of, 'scanned[0].lotId', [...NOT_IDS, null]],
  [of, 'scanned[0].holdingId', NOT_IDS],
];
const ID = '0199c0de-0000-7000-8000-000000000001';
const takeOutRows = (of: 'stock/moves' | 'stock/write-offs' | 'stock/returns'): Row[] => [
  [of, 'holdingId', [...NOT_IDS, null]],
  [of, 'quantity', [...NOT_DECIMALS, null, '0', '0.000000', '1000000000.1']],
  [of, 'occurredOn', NOT_DAYS],
];
const FIELDS: readonly Row[] = [
  ...visitRows('visits'),
  ...visitRows('visits/preview'),
  ['visits', 'id', NOT_IDS],
  ['visits', 'chartReference', [...NOT_TEXTS, null, 'x'.repeat(61)]],
  ['visits', 'dentistId', [...NOT_IDS, null]],
  ['deliveries', 'supplierId', [...NOT_IDS, null]],
  ['deliveries', 'receivedOn', [...NOT_DAYS, null]],
  ['deliveries', 'reference', [...NOT_TEXTS, 'x'.repeat(81)]],
  ['deliveries', 'freight', [...NOT_DECIMALS, '1000000.01']],
  ['deliveries', 'duty', [...NOT_DECIMALS, '1000000.01']],
  ['deliveries', 'discount', [...NOT_DECIMALS, '1000000.01']],
  ['deliveries', 'spreadKey', [...NOT_CHOICES, 'volume']],
  ['deliveries', 'lines', [...NOT_LISTS, null, [], Array.from({ length: 501 }, () => ({}))]],
  ['deliveries', 'lines[0].presentationId', [...NOT_IDS, null]],
  ['deliveries', 'lines[0].packs', [...NOT_WHOLE, null, 0, 100_001]],
  ['deliveries', 'lines[0].packPrice', [...NOT_DECIMALS, null, '1000000.01']],
  ['deliveries', 'lines[0].locationId', [...NOT_IDS, null]],
  ['deliveries', 'lines[0].lotNumber', [...NOT_TEXTS, 'x'.repeat(61)]],
  ['deliveries', 'lines[0].expiresOn', NOT_DAYS],
  ['deliveries', 'lines[0].weightGrams', [...NOT_DECIMALS, '0']],
  ['deliveries', 'lines[0].orderLineId', NOT_IDS],
  ['deliveries', 'faults', NOT_LISTS],
  ...takeOutRows('stock/moves'),
  ...takeOutRows('stock/write-offs'),
  ...takeOutRows('stock/returns'),
  ['stock/moves', 'toLocationId', [...NOT_IDS, null]],
  ['stock/openings', 'holdingId', [...NOT_IDS, null]],
  ['stock/openings', 'openedOn', NOT_DAYS],
  ['stock/write-offs', 'reason', [...NOT_CHOICES, null, 'lost']],
  ['stock/write-offs', 'note', [...NOT_TEXTS, 'x'.repeat(301)]],
  ['stock/returns', 'note', [...NOT_TEXTS, null, 'x'.repeat(301)]],
  ['counts', 'countedOn', NOT_DAYS],
  ['counts', 'lines', [...NOT_LISTS, null, [], Array.from({ length: 501 }, () => ({}))]],
  ['counts', 'lines[0].holdingId', [...NOT_IDS, null]],
  ['counts', 'lines[0].counted', [...NOT_DECIMALS, null]],
  ['visit reversal', 'note', [...NOT_TEXTS, null, 'x'.repeat(301)]],
  ['delivery reversal', 'note', [...NOT_TEXTS, null]],
  ['movement reversal', 'note', [...NOT_TEXTS, null]],
  ['lot status', 'note', [...NOT_TEXTS, null]],
  ['lot status', 'status', [...NOT_CHOICES, null, 'expired']],
];

describe('a field', () => {
  it.each(FIELDS)('of %s, %s, is named when it is wrong', async (operation, field, values) => {
    for (const value of values) {
      const body = withField(good[operation].body, field, value);
      const answer = await send(b, good[operation], body);
      const [status, code, ...fields] = refusalOf(answer).split(' ');
      const named = fields.some((name) => name === field || name.startsWith(`${field}[`));
      expect({ value, status, code, named, fields }).toMatchObject({
        status: '400',
        code: 'invalid_request',
        named: true,
      });
    }
  });

  it.each<[Operation, string]>([
    ['visits', 'visitedOn'],
    ['visits/preview', 'visitedOn'],
    ['deliveries', 'receivedOn'],
    ['stock/moves', 'occurredOn'],
    ['stock/write-offs', 'occurredOn'],
    ['stock/returns', 'occurredOn'],
    ['stock/openings', 'openedOn'],
    ['counts', 'countedOn'],
  ])('of %s, %s, is no day to come', async (operation, field) => {
    const body = withField(good[operation].body, field, '2199-12-31');
    const answer = await send(b, good[operation], body);
    expect(refusalOf(answer)).toBe(`422 date_in_future ${field}`);
  });

  it.each<[Operation, string]>([
    ['visits', 'restorations[0]'],
    ['visits', 'usage[0]'],
    ['visits', 'scanned[0]'],
    ['deliveries', 'lines[0]'],
    ['counts', 'lines[0]'],
  ])('of %s, %s, is an object', async (operation, field) => {
    for (const value of [null, 3, 'x', true, []]) {
      const answer = await send(b, good[operation], withField(good[operation].body, field, value));
      expect([value, refusalOf(answer)]).toEqual([
        value,
        expect.stringMatching(/^400 invalid_request [a-z]+(\[0\])?/),
      ]);
    }
  });
});

describe('a body', () => {
  it.each(OPERATIONS)('of %s is one JSON object', async (operation) => {
    for (const body of [
      'null',
      '[]',
      '[{}]',
      '"text"',
      '3',
      'true',
      '{',
      '',
      '{"a":1,}',
      "{'a':1}",
    ]) {
      const answer = await send(b, good[operation], body);
      expect([body, answer.status, answer.body.code]).toEqual([body, 400, 'invalid_request']);
    }
  });

  it.each(OPERATIONS)('of %s holds no field that nobody asked for', async (operation) => {
    for (const field of ['practiceId', 'recordedBy', 'cost', 'Note']) {
      const body = { ...good[operation].body, [field]: 'x' };
      const answer = await send(b, good[operation], body);
      expect(refusalOf(answer)).toBe(`400 invalid_request ${field}`);
    }
  });

  it.each(OPERATIONS)('of %s holds no character that cannot be stored', async (operation) => {
    for (const bad of ['\\u0000', 'a\\u0000b', '\\ud800']) {
      const text = `{"note":"${bad}",${JSON.stringify(good[operation].body).slice(1)}`.replace(
        /,"note":"Entered wrongly\."/,
        '',
      );
      const refusal = refusalOf(await send(b, good[operation], text));
      expect([bad, refusal]).toEqual([bad, expect.stringMatching(/^400 invalid_request note/)]);
    }
  });

  it.each(OPERATIONS)('of %s is no larger than a mebibyte', async (operation) => {
    const answer = await send(b, good[operation], `{"note":"${'a'.repeat(10_000_000)}"}`);
    expect(refusalOf(answer)).toBe('413 body_too_large');
  });
});

describe('an Idempotency-Key', () => {
  it.each(BOOKINGS)('is needed for %s', async (operation) => {
    const { method, path, body } = good[operation];
    const ask = (key: string) =>
      b.s.book.ask(method, path, body, 'owner', { headers: { 'idempotency-key': key } });
    expect(refusalOf(await ask(''))).toBe('400 idempotency_key_missing Idempotency-Key');
    for (const key of ['x'.repeat(201), 'two words', 'schlüssel', '\t']) {
      expect([key, refusalOf(await ask(key))]).toEqual([
        key,
        expect.stringMatching(/^400 (invalid_request|idempotency_key_missing) Idempotency-Key$/),
      ]);
    }
  });
});
