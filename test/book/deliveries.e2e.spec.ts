import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { asOwner } from '../harness/database.js';
import {
  consumablesOf,
  type Delivery,
  deliveryLine,
  openSmallBook,
  type SmallBook,
  TestService,
  type Visit,
  visitBody,
  withFreshCatalogue,
} from './book.js';
import { expectRulesHold } from './invariants.js';
import { firstHolding, holdingsOf, layersOf, refusalOf } from './stock-steps.js';

let service: TestService;
let owner: pg.Client;
let shared: SmallBook;
let s: SmallBook;
let catalogues = 0;

beforeAll(async () => {
  service = await TestService.start();
  owner = await asOwner(service.databaseUrl);
  shared = await openSmallBook(service, 'deliveries');
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

interface Landed extends Delivery {
  readonly goodsTotal: string;
  readonly landedTotal: string;
  readonly lines: readonly {
    readonly layerId: string;
    readonly quantity: string;
    readonly landedCost: string;
    readonly remaining: string;
    readonly remainingValue: string;
    readonly lot: { readonly id: string; readonly lotNumber: string | null; status: string };
  }[];
}

const deliver = (lines: object[], more: object = {}) =>
  s.book.deliver(s.supplier, '2026-01-05', lines, more) as Promise<Landed>;

const reverse = (id: string) =>
  s.book.ask('POST', `/deliveries/${id}/reversal`, { note: 'Entered wrongly.' });

describe('a delivery', () => {
  // Goods 144.00 + 7.00 + 67.50 = 218.50; worked out by hand, in cents, by largest remainder.
  const mixed = () => [
    deliveryLine(s.paste, s.store, 2, '72'),
    deliveryLine(s.strip, s.store, 1, '7'),
    deliveryLine(s.bib, s.store, 3, '22.50'),
  ];

  it.each([
    // freight 4.55, 0.22, 2.13; discount 6.59, 0.32, 3.09
    ['value', ['141.96', '6.90', '66.54']],
    // 8 g, 100 and 1500 pieces: freight 0.03, 0.43, 6.44; the discount follows the goods
    ['quantity', ['137.44', '7.11', '70.85']],
  ])('spreads freight by %s, to the cent', async (spreadKey, costs) => {
    const delivery = await deliver(mixed(), { freight: '6.90', discount: '10', spreadKey });
    expect(delivery.lines.map((line) => line.landedCost)).toEqual(costs);
    expect([delivery.goodsTotal, delivery.landedTotal]).toEqual(['218.50', '215.40']);
    expect(delivery.lines.map((line) => line.quantity)).toEqual(['8', '100', '1500']);
  });

  it('may be free, and its freight is then shared alike', async () => {
    const free = [deliveryLine(s.strip, s.store, 1, '0'), deliveryLine(s.bib, s.store, 1, '0')];
    expect((await deliver(free)).lines.map((line) => line.landedCost)).toEqual(['0.00', '0.00']);
    const carried = await deliver(free, { freight: '5.01' });
    expect(carried.lines.map((line) => line.landedCost)).toEqual(['2.51', '2.50']);
    const visit = await s.book.done<Visit>('POST', '/visits', visitBody(s));
    expect(visit.usage.find((line) => line.consumable.id === s.bib.id)?.cost).toBe('0.00');
  });

  it('may have come in the past, and serves visits from that day on', async () => {
    await s.book.deliver(s.supplier, '2026-04-30', [deliveryLine(s.bib, s.store, 1, '5')]);
    const used = async (visitedOn: string) => {
      const body = visitBody(s, { visitedOn, chartReference: `C-${visitedOn}` });
      const visit = await s.book.done<Visit>('POST', '/visits/preview', {
        ...body,
        chartReference: undefined,
        dentistId: undefined,
      });
      return visit.usage.find((line) => line.consumable.id === s.bib.id)?.shortfall;
    };
    expect([await used('2026-04-29'), await used('2026-04-30')]).toEqual(['1', '0']);
  });

  it('keeps each lot apart: stated or not, and by product', async () => {
    const line = (of: SmallBook['bib'], lotNumber?: string) =>
      deliveryLine(of, s.store, 1, '5', lotNumber === undefined ? {} : { lotNumber });
    const { lines } = await deliver([
      line(s.bib, 'L-1'),
      line(s.strip, 'L-1'),
      line(s.bib, ' L-1 '),
      line(s.bib),
      line(s.bib),
    ]);
    const [first, other, again, unknown, another] = lines.map((l) => l.lot);
    expect(first?.id).toBe(again?.id);
    expect(new Set([first, other, unknown, another].map((lot) => lot?.id)).size).toBe(4);
    expect([unknown?.lotNumber, another?.lotNumber]).toEqual([null, null]);
  });
});

describe('an expiry that differs from the recorded one', () => {
  const lot = (expiresOn: string | null) =>
    deliveryLine(s.paste, s.store, 1, '72', { lotNumber: 'P-7', expiresOn });
  const book = (lines: object[]) =>
    s.book.ask('POST', '/deliveries', {
      supplierId: s.supplier,
      receivedOn: '2026-02-01',
      lines,
    });

  it('is refused, naming the line', async () => {
    await deliver([lot('2027-01-31')]);
    const strip = deliveryLine(s.strip, s.store, 1, '7');
    const answer = await book([strip, lot('2027-10-31')]);
    expect(refusalOf(answer)).toBe('409 wrong_expiry lines[1].expiresOn');
    expect(answer.body.detail).toContain('2027-01-31');
    expect(refusalOf(await book([lot(null)]))).toBe('409 wrong_expiry lines[0].expiresOn');
    expect(await holdingsOf(owner, s.strip)).toEqual([]);
  });

  it('is refused within one delivery too', async () => {
    const answer = await book([lot('2027-01-31'), lot('2027-01-30')]);
    expect(refusalOf(answer)).toBe('409 wrong_expiry lines[1].expiresOn');
  });

  it('can be put right once the delivery it came with was reversed', async () => {
    const wrong = await deliver([lot('2027-01-31')]);
    expect((await reverse(wrong.id)).status).toBe(201);
    const right = await deliver([lot('2027-10-31')]);
    expect(right.lines[0]?.lot).toMatchObject({
      id: wrong.lines[0]?.lot.id,
      labelExpiry: '2027-10-31',
    });
    // and only then: goods are on the shelf under the new date
    expect(refusalOf(await book([lot('2027-01-31')]))).toBe('409 wrong_expiry lines[0].expiresOn');
  });
});

describe('a delivery reversed', () => {
  it('is gone with all its value while all of it is there', async () => {
    const delivery = await deliver(
      [deliveryLine(s.paste, s.store, 3, '70.01'), deliveryLine(s.bib, s.room, 1, '9.99')],
      { freight: '0.01' },
    );
    const answer = await reverse(delivery.id);
    expect(answer.body).toMatchObject({ reversed: true, reversalNote: 'Entered wrongly.' });
    const lines = answer.body.lines as Landed['lines'];
    expect(lines.map((l) => [l.remaining, l.remainingValue])).toEqual([
      ['0', '0.00'],
      ['0', '0.00'],
    ]);
    expect(refusalOf(await reverse(delivery.id))).toBe('409 already_reversed');
    expect((await holdingsOf(owner, s.paste)).map((h) => h.on_hand)).toEqual(['0']);
  });

  it.each<[string, (holdingId: string) => Promise<unknown>]>([
    ['used', () => s.book.done('POST', '/visits', visitBody(s))],
    [
      'moved',
      (holdingId) =>
        s.book.done('POST', '/stock/moves', { holdingId, toLocationId: s.room, quantity: '1' }),
    ],
    [
      'thrown away',
      (holdingId) =>
        s.book.done('POST', '/stock/write-offs', { holdingId, quantity: '1', reason: 'damaged' }),
    ],
    [
      'counted away',
      (holdingId) => s.book.done('POST', '/counts', { lines: [{ holdingId, counted: '499' }] }),
    ],
  ])('is refused once something of it was %s, and changes nothing', async (_, spoil) => {
    const delivery = await deliver([
      deliveryLine(s.strip, s.store, 1, '7'),
      deliveryLine(s.bib, s.store, 1, '5'),
    ]);
    await spoil((await firstHolding(owner, s.bib)).id);
    const before = [await holdingsOf(owner, s.strip), await holdingsOf(owner, s.bib)];
    expect(refusalOf(await reverse(delivery.id))).toBe('409 stock_moved_on');
    expect([await holdingsOf(owner, s.strip), await holdingsOf(owner, s.bib)]).toEqual(before);
  });

  it('is refused when a count made up for what a visit had used', async () => {
    const delivery = await deliver([deliveryLine(s.bib, s.store, 1, '5')]);
    const visit = await s.book.done<Visit>('POST', '/visits', visitBody(s));
    const { id: holdingId } = await firstHolding(owner, s.bib);
    const count = await s.book.done<{ movementIds: string[] }>('POST', '/counts', {
      lines: [{ holdingId, counted: '500' }],
    });
    expect(refusalOf(await reverse(delivery.id))).toBe('409 stock_moved_on');
    const note = { note: 'Entered wrongly.' };
    const early = await s.book.ask('POST', `/visits/${visit.id}/reversal`, note);
    expect(refusalOf(early)).toBe('409 stock_moved_on');
    expect(early.body.detail).toContain('Reverse that count first');
    await s.book.done('POST', `/movements/${count.movementIds[0]}/reversal`, note);
    await s.book.done('POST', `/visits/${visit.id}/reversal`, note);
    expect((await reverse(delivery.id)).status).toBe(201);
  });

  it('leaves nothing that could be found again', async () => {
    const delivery = await deliver([deliveryLine(s.bib, s.store, 1, '5')]);
    const { id: holdingId } = await firstHolding(owner, s.bib);
    const count = (counted: string) =>
      s.book.ask('POST', '/counts', { lines: [{ holdingId, counted }] });
    const lost = (await count('490')).body.movementIds as string[];
    await count('500');
    expect((await reverse(delivery.id)).status).toBe(201);
    expect(refusalOf(await count('1'))).toBe('422 more_than_received lines[0].counted');
    const back = await s.book.ask('POST', `/movements/${lost[0]}/reversal`, { note: 'Found.' });
    expect(refusalOf(back)).toBe('409 stock_moved_on');
    expect(await layersOf(owner, s.bib)).toEqual([
      { received: '500', out: '500', landed: '5', cost: '5' },
    ]);
  });

  it('is done once when it is asked for twice at the same moment', async () => {
    const delivery = await deliver([deliveryLine(s.bib, s.store, 1, '5')]);
    const answers = await Promise.all([reverse(delivery.id), reverse(delivery.id)]);
    expect(answers.map(refusalOf).sort()).toEqual(['201 ', '409 already_reversed']);
  });
});
