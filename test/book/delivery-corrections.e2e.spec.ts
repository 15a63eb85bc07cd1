import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { asOwner } from '../harness/database.js';
import {
  type Delivery,
  deliveryLine,
  type Item,
  lineOf,
  openSmallBook,
  postVisit,
  type SmallBook,
  TestService,
  withFreshCatalogue,
} from './book.js';
import { expectRulesHold } from './invariants.js';
import { firstHolding, holdingsOf, refusalOf } from './stock-steps.js';

let service: TestService;
let owner: pg.Client;
let shared: SmallBook;
let s: SmallBook;
let books = 0;

beforeAll(async () => {
  service = await TestService.start();
  owner = await asOwner(service.databaseUrl);
  shared = await openSmallBook(service, 'corrections');
});

afterAll(async () => {
  await owner.end();
  await service.stop();
});

beforeEach(async () => {
  books += 1;
  s = await withFreshCatalogue(shared, String(books));
});

afterEach(() => expectRulesHold(owner));

const note = 'Read the label again.';
const bibs = (lotNumber: string, expiresOn = '2027-01-31') => ({ lotNumber, expiresOn });

const deliver = (lines: object[], more: object = {}) =>
  s.book.deliver(s.supplier, '2026-02-01', lines, more);

function correct(delivery: Delivery, line: number, of: Item, right: object) {
  const whole = { presentationId: of.presentation, packs: 1, packPrice: '5', note };
  const body = { ...whole, locationId: s.store, ...right };
  return s.book.ask('POST', `/deliveries/${delivery.id}/lines/${line}/correction`, body);
}

const invoice = (delivery: Delivery, sent: object) =>
  s.book.ask('POST', `/deliveries/${delivery.id}/invoice`, { lines: [], ...sent });

const reverse = (path: string) => s.book.ask('POST', `${path}/reversal`, { note });

const count = (holdingId: string | undefined, counted: string) =>
  s.book.ask('POST', '/counts', { lines: [{ holdingId, counted }] });

/** Each line of a delivery as it stands, in short. */
async function linesOf(delivery: Delivery): Promise<string[]> {
  const { rows } = await owner.query<{ line: string }>(
    `SELECT concat_ws(' ', t.lot_number, l.expires_on, trim_scale(l.received - l.out_quantity),
       'of', trim_scale(l.received)) AS line
     FROM layers l JOIN lots t ON t.id = l.lot_id WHERE l.delivery_id = $1 ORDER BY l.line_number`,
    [delivery.id],
  );
  return rows.map((row) => row.line);
}

describe('goods whose lot was corrected', () => {
  it('cannot be found a second time under the wrong lot; what was used can, and goes on', async () => {
    const delivery = await deliver([deliveryLine(s.bib, s.store, 1, '5', bibs('A'))]);
    await postVisit(s);
    await correct(delivery, 1, s.bib, bibs('B'));
    const [wrong, right] = await holdingsOf(owner, s.bib);
    const tooMuch = '422 more_than_received lines[0].counted';
    expect(refusalOf(await count(wrong?.id, '499'))).toBe(tooMuch);
    expect(refusalOf(await count(wrong?.id, '2'))).toBe(tooMuch);
    expect(refusalOf(await count(right?.id, '500'))).toBe(tooMuch);
    expect((await count(wrong?.id, '1')).status).toBe(201);
    expect(await linesOf(delivery)).toEqual([
      ...['A 2027-01-31 0 of 500', 'B 2027-01-31 499 of 499', 'B 2027-01-31 1 of 1'],
    ]);
  });

  it('come back under the right expiry, and are not issued when that is over', async () => {
    const delivery = await deliver([deliveryLine(s.bib, s.store, 1, '5', bibs('A'))]);
    const visit = await postVisit(s);
    await correct(delivery, 1, s.bib, bibs('A', '2026-01-31'));
    const lacking = await postVisit(s);
    await s.book.done('POST', `/visits/${visit.id}/reversal`, { note });
    expect(await linesOf(delivery)).toEqual([
      ...['A 2027-01-31 0 of 500', 'A 2026-01-31 499 of 499', 'A 2026-01-31 1 of 1'],
    ]);
    const after = await s.book.done<typeof visit>('GET', `/visits/${lacking.id}`);
    expect(lineOf(after, s.bib.id)).toMatchObject({ shortfall: '1', taken: [] });
  });

  it('so do those of another delivery, all of which was used when the lot was put right', async () => {
    const used = await deliver([deliveryLine(s.paste, s.room, 1, '72', bibs('P'))]);
    const visit = await postVisit(s, { usage: [{ consumableId: s.paste.id, dispensed: '3.94' }] });
    const later = await deliver([deliveryLine(s.paste, s.store, 1, '72', bibs('P'))]);
    const right = { packPrice: '72', ...bibs('P', '2028-06-30') };
    expect((await correct(later, 1, s.paste, right)).status).toBe(201);
    expect(await linesOf(used)).toEqual(['P 2027-01-31 0 of 4']);
    await s.book.done('POST', `/visits/${visit.id}/reversal`, { note });
    expect(await linesOf(used)).toEqual(['P 2027-01-31 0 of 4', 'P 2028-06-30 4 of 4']);
    for (const one of [used, later]) {
      expect((await reverse(`/deliveries/${one.id}`)).status).toBe(201);
    }
  });

  it('can be corrected again and again, and what comes back follows to the last', async () => {
    const line = deliveryLine(s.bib, s.store, 1, '5', bibs('A'));
    const delivery = await deliver([line], { freight: '0.02' });
    const { id: holdingId } = await firstHolding(owner, s.bib);
    const away: string[] = [];
    for (const quantity of ['7', '11']) {
      const body = { holdingId, quantity, reason: 'damaged' };
      const { movementIds } = await s.book.done<{ movementIds: string[] }>(
        ...(['POST', '/stock/write-offs', body] as const),
      );
      away.push(...movementIds);
    }
    expect((await correct(delivery, 1, s.bib, bibs('B'))).body).toMatchObject({ newLine: 2 });
    expect((await correct(delivery, 2, s.bib, bibs('A'))).body).toMatchObject({ newLine: 3 });
    expect((await reverse(`/movements/${away[0]}`)).status).toBe(201);
    expect((await correct(delivery, 3, s.bib, bibs('C'))).body).toMatchObject({ newLine: 5 });
    await invoice(delivery, { freight: '3.33' });
    expect((await reverse(`/movements/${away[1]}`)).status).toBe(201);
    expect(await linesOf(delivery)).toEqual([
      ...['A 2027-01-31 0 of 500', 'B 2027-01-31 0 of 482', 'A 2027-01-31 0 of 482'],
      ...['A 2027-01-31 7 of 7', 'C 2027-01-31 482 of 482', 'C 2027-01-31 11 of 11'],
    ]);
    expect((await reverse(`/deliveries/${delivery.id}`)).status).toBe(201);
  });
});

describe('what a delivery costs', () => {
  it('is never more than the book can hold, by delivery, dry run, correction or invoice', async () => {
    const many = (price: string) =>
      Array.from({ length: 10 }, () => deliveryLine(s.bib, s.store, 100_000, price));
    const body = { supplierId: s.supplier, receivedOn: '2026-02-01', lines: many('1000000') };
    for (const path of ['/deliveries', '/deliveries/check']) {
      expect(refusalOf(await s.book.ask('POST', path, body))).toBe('422 too_large lines');
    }
    const delivery = await deliver(many('999999'));
    const freight = { freight: '1000000' };
    expect(refusalOf(await invoice(delivery, freight))).toBe('422 too_large lines');
    const packs = { packs: 100_000, packPrice: '1000000' };
    expect((await correct(delivery, 1, s.bib, packs)).status).toBe(201);
    const left = Array.from({ length: 10 }, (_, i) => ({
      ...{ lineNumber: i + 1, packPrice: '1000000' },
    }));
    expect(refusalOf(await invoice(delivery, { lines: left }))).toBe('422 too_large lines');
  });

  it('cannot fall below its discount by a line that takes the place of a dearer one', async () => {
    const delivery = await deliver(
      [deliveryLine(s.bib, s.store, 1, '100'), deliveryLine(s.strip, s.store, 1, '1')],
      { freight: '100', discount: '50' },
    );
    // The line itself would stay above nothing, because it bears freight.
    const cheap = { packs: 2, packPrice: '0.50' };
    const answer = await correct(delivery, 1, s.bib, cheap);
    expect(refusalOf(answer)).toBe('422 discount_too_large packPrice');
    expect(answer.body.detail).toContain('would cost 2.00, its discount is 50.00');
    expect(await linesOf(delivery)).toEqual(['500 of 500', '100 of 100']);
    const dear = { packs: 2, packPrice: '25' };
    expect((await correct(delivery, 1, s.bib, dear)).status).toBe(201);
    expect((await invoice(delivery, { freight: '90' })).status).toBe(201);
  });
});

describe('a line of the wrong product', () => {
  it('never was: no price is compared with it', async () => {
    await deliver([deliveryLine(s.bib, s.store, 1, '5')]);
    const wrong = await deliver([deliveryLine(s.bib, s.store, 1, '70')]);
    expect((await correct(wrong, 1, s.strip, { packPrice: '7' })).status).toBe(201);
    const next = { supplierId: s.supplier, receivedOn: '2026-02-03' };
    const check = await s.book.done<{ lines: { price: { lastPackPrice: string } }[] }>(
      ...(['POST', '/deliveries/check'] as const),
      { ...next, lines: [deliveryLine(s.bib, s.store, 1, '5')] },
    );
    expect(check.lines[0]?.price).toMatchObject({ lastPackPrice: '5.00' });
  });
});

describe('everything at once', () => {
  it('is done one after the other: each is booked, or says why not', async () => {
    const lines = [
      deliveryLine(s.bib, s.store, 2, '5', bibs('A')),
      deliveryLine(s.strip, s.store, 1, '7'),
    ];
    const delivery = await deliver(lines, { freight: '0.07' });
    const two = { packs: 2 };
    const answers = await Promise.all([
      correct(delivery, 1, s.bib, { ...two, ...bibs('B') }),
      correct(delivery, 1, s.bib, { ...two, ...bibs('A', '2028-01-31') }),
      correct(delivery, 1, s.strip, {}),
      correct(delivery, 2, s.paste, {}),
      invoice(delivery, { freight: '3' }),
      invoice(delivery, { lines: [{ lineNumber: 1, packPrice: '6' }] }),
      postVisit(s).then(() => null),
      postVisit(s).then(() => null),
      reverse(`/deliveries/${delivery.id}`),
    ]);
    for (const answer of answers) {
      if (answer) expect([201, 400, 409, 422]).toContain(answer.status);
    }
  });
});
