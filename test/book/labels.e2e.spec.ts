import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { writeOwnSymbol } from '../../libs/labels/src/index.js';
import { TestService } from '../http/service.js';
import { deliveryLine, openSmallBook, type SmallBook, TestBook } from './book.js';

const GTIN = '09521234543213'; // of the prefix that GS1 keeps for examples

let service: TestService;
let s: SmallBook;
let lotId: string;
let holdingId: string;

beforeAll(async () => {
  service = await TestService.start();
  s = await openSmallBook(service, 'label');
  const { lines } = await s.book.deliver(s.supplier, '2026-02-02', [
    deliveryLine(s.paste, s.room, 1, '72', { lotNumber: 'P-7', expiresOn: '2099-06-30' }),
  ]);
  lotId = lines[0]?.lot.id ?? '';
  const path = `/stock?lotId=${lotId}`;
  const { items } = await s.book.done<{ items: { id: string }[] }>('GET', path);
  holdingId = items[0]?.id ?? '';
  await s.book.done('PATCH', `/presentations/${s.paste.presentation}`, { deviceIdentifier: GTIN });
});

afterAll(() => service.stop());

interface Reading {
  readonly own: Readonly<Record<string, unknown>> | null;
  readonly matches: readonly { readonly lotId: string | null }[];
}

const read = (text: string, book = s.book) => book.done<Reading>('POST', '/labels/read', { text });

describe('labels that the practice printed', () => {
  it('stand for the place, the lot and the opened container', async () => {
    const place = await read(writeOwnSymbol({ kind: 'location', id: s.room }).elementString);
    expect(place.own).toMatchObject({ kind: 'location', locationId: s.room, lotId: null });
    const lot = { kind: 'lot', id: lotId, gtin14: GTIN, lot: 'P-7', expiry: '2099-06-30' } as const;
    const shelf = await read(`]d2${writeOwnSymbol(lot).elementString}`);
    expect(shelf.own).toMatchObject({ kind: 'lot', lotId, lotNumber: 'P-7', holdingId: null });
    expect(shelf.matches.map((match) => match.lotId)).toEqual([lotId]);
    await s.book.done('POST', '/stock/openings', { holdingId, openedOn: '2026-05-04' });
    const path = `/stock?lotId=${lotId}&opened=true`;
    const { items } = await s.book.done<{ items: { id: string }[] }>('GET', path);
    const id = items[0]?.id ?? '';
    const container = await read(writeOwnSymbol({ kind: 'container', id }).bracketed);
    expect(container.own).toMatchObject({ kind: 'container', holdingId: id, lotId });
    expect(container.own).toMatchObject({ openedOn: '2026-05-04', expiresOn: '2099-06-30' });
  });

  it('say nothing to another practice, nor of what does not exist', async () => {
    const { elementString } = writeOwnSymbol({ kind: 'lot', id: lotId });
    const other = await TestBook.open(service, 'labelother');
    expect((await read(elementString, other)).own).toBeNull();
    const nothing = writeOwnSymbol({ kind: 'lot', id: s.room }).elementString;
    expect((await read(nothing)).own).toBeNull();
  });

  it('are printed as a PDF', async () => {
    const body = { locationIds: [s.room], holdingIds: [holdingId], start: 24, copies: 2 };
    const answer = await s.book.ask('POST', '/labels/sheet.pdf?language=de', body);
    expect(answer.status).toBe(200);
    expect(answer.text.slice(0, 5)).toBe('%PDF-');
  });

  it.each([
    ['locationIds', {}],
    ['start', { locationIds: ['00000000-0000-4000-8000-000000000000'], start: 25 }],
    ['locationIds[0]', { locationIds: ['00000000-0000-4000-8000-000000000000'] }],
    ['holdingIds', { holdingIds: ['x'] }],
    ['copies', { copies: 51 }],
  ])('refuse what cannot be printed and name %s', async (field, body) => {
    const answer = await s.book.ask('POST', '/labels/sheet.pdf', body);
    expect(answer.status).toBeGreaterThanOrEqual(400);
    const { errors } = answer.body as { errors: { field: string }[] };
    expect(errors.map((error) => error.field)).toContain(field);
  });

  it('refuse more labels than twenty sheets', async () => {
    const ids = [s.room, s.store, s.otherRoom];
    const full = await s.book.ask('POST', '/labels/sheet.pdf', { locationIds: ids, copies: 50 });
    expect(full.status).toBe(200);
    const many = Array.from({ length: 10 }, (_, n) => `00000000-0000-4000-8000-00000000000${n}`);
    const answer = await s.book.ask('POST', '/labels/sheet.pdf', { locationIds: many, copies: 50 });
    const { errors } = answer.body as { errors: { field: string }[] };
    expect(errors.map((error) => error.field)).toEqual(['copies']);
  });
});
