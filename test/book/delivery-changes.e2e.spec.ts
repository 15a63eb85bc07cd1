import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import {
  type Delivery,
  deliveryLine,
  lineOf,
  openSmallBook,
  postVisit,
  type SmallBook,
  TestService,
  withFreshCatalogue,
} from './book.js';
import { expectRulesHold } from './invariants.js';
import { firstHolding, holdingsOf, layersOf, refusalOf } from './stock-steps.js';

let service: TestService;
let owner: pg.Client;
let shared: SmallBook;
let s: SmallBook;
let books = 0;

beforeAll(async () => {
  service = await TestService.start();
  owner = new pg.Client({ connectionString: service.databaseUrl });
  await owner.connect();
  shared = await openSmallBook(service, 'changes');
});

afterAll(async () => {
  await owner.end();
  await service.stop();
});

beforeEach(async () => {
  books += 1;
  s = await withFreshCatalogue(shared, String(books));
});

afterEach(async () => {
  await expectRulesHold(owner);
});

const note = 'Read the label again.';

/** One delivery of 5 g of paste for 100.00, 2 g of which a visit then used. */
async function usedPaste() {
  const presentation = await s.book.presentation(s.paste.id, 'multi-use', 1, '5', { name: 'Five' });
  const line = { ...s.paste, presentation };
  const lot = { lotNumber: 'P-8', expiresOn: '2028-01-31' };
  const delivery = await s.book.deliver(s.supplier, '2026-02-01', [
    deliveryLine(s.bib, s.store, 1, '5'),
    deliveryLine(line, s.store, 1, '100', lot),
  ]);
  const visit = await postVisit(s, { usage: [{ consumableId: s.paste.id, dispensed: '1.94' }] });
  const right = { presentationId: presentation, packs: 1, packPrice: '100', locationId: s.store };
  return { delivery, visit, right: { ...right, ...lot, note } };
}

const correct = (delivery: Delivery, lineNumber: number, right: object) =>
  s.book.ask('POST', `/deliveries/${delivery.id}/lines/${lineNumber}/correction`, right);

const invoice = (delivery: Delivery, sent: object) =>
  s.book.ask('POST', `/deliveries/${delivery.id}/invoice`, { lines: [], ...sent });

const variances = () =>
  s.book.done<{ rows: { consumable: { id: string }; amount: string; toStock: string }[] }>(
    'GET',
    `/reports/price-variances?consumableId=${s.paste.id}`,
  );

describe('an invoice that comes later', () => {
  it('revalues what is left, and books the rest as price variance; visits keep their cost', async () => {
    const { delivery, visit } = await usedPaste();
    expect(lineOf(visit, s.paste.id).cost).not.toBe('0.00');
    const sent = { lines: [{ lineNumber: 2, packPrice: '130' }], reference: 'INV-1' };
    const answer = await invoice(delivery, sent);
    // Worked by hand: 30.00 more for 5 g is 6.00 a gram; 2 g are gone, 3 g are left.
    expect(answer.body).toMatchObject({
      ...{ toStock: '18.00', priceVariance: '12.00', landedTotal: '135.00', goodsTotal: '135.00' },
      lines: [{ remainingValue: '4.99' }, { packPrice: '130.00', remainingValue: '78.00' }],
      invoices: [{ reference: 'INV-1', landedBefore: '105.00', priceVariance: '12.00' }],
    });
    const after = await s.book.done<typeof visit>('GET', `/visits/${visit.id}`);
    expect(after.materialCost).toBe(visit.materialCost);
    expect((await variances()).rows).toMatchObject([{ amount: '12.00', toStock: '18.00' }]);
    const next = await postVisit(s, { usage: [{ consumableId: s.paste.id, dispensed: '0.94' }] });
    const paste = next.usage.filter((line) => line.consumable.id === s.paste.id);
    expect(paste.reduce((sum, line) => sum + Number(line.cost), 0)).toBeCloseTo(26, 6);
    // The visit never was: it gets its 40.00 back, and its variance is none any more.
    await s.book.done('POST', `/visits/${visit.id}/reversal`, { note });
    expect((await variances()).rows).toMatchObject([{ amount: '0.00', toStock: '30.00' }]);
    expect(await layersOf(owner, s.paste)).toEqual([
      { received: '5', out: '1', landed: '130', cost: '26' },
    ]);
  });

  it('spreads another freight, and refuses what changes nothing or names no line', async () => {
    const { delivery } = await usedPaste();
    expect(refusalOf(await invoice(delivery, {}))).toBe('422 nothing_to_do lines');
    const of = (lineNumber: number, packPrice = '1') => ({ lines: [{ lineNumber, packPrice }] });
    expect(refusalOf(await invoice(delivery, of(7)))).toBe(
      '400 invalid_request lines[0].lineNumber',
    );
    const twice = [...of(1).lines, ...of(1).lines];
    expect(refusalOf(await invoice(delivery, { lines: twice }))).toBe(
      '400 invalid_request lines[1].lineNumber',
    );
    expect(refusalOf(await invoice(delivery, { discount: '105.01' }))).toBe(
      '422 discount_too_large discount',
    );
    const answer = await invoice(delivery, { freight: '10.50', discount: '21' });
    // 0.50 less for 500 bibs, one of them gone, and 10.00 less for 5 g of paste, 2 g of them gone.
    expect(answer.body).toMatchObject({ toStock: '-6.499', priceVariance: '-4.001' });
    expect(answer.body).toMatchObject({
      freight: '10.50',
      discount: '21.00',
      landedTotal: '94.50',
    });
  });

  it('and a reversal of the whole delivery leave nothing', async () => {
    const delivery = await s.book.deliver(s.supplier, '2026-02-01', [
      deliveryLine(s.paste, s.store, 1, '72'),
    ]);
    await invoice(delivery, { lines: [{ lineNumber: 1, packPrice: '80' }] });
    await s.book.done('POST', `/deliveries/${delivery.id}/reversal`, { note });
    expect(await layersOf(owner, s.paste)).toEqual([
      { received: '4', out: '4', landed: '80', cost: '80' },
    ]);
    const late = await invoice(delivery, { lines: [{ lineNumber: 1, packPrice: '90' }] });
    expect(refusalOf(late)).toBe('409 already_reversed');
  });
});

describe('a wrong lot', () => {
  it('is put right for what is left, opened or not; what was used says what it was booked as', async () => {
    const { delivery, visit, right } = await usedPaste();
    const answer = await correct(delivery, 2, { ...right, lotNumber: 'P-B' });
    expect(answer.body).toMatchObject({
      ...{ newLine: 3, leftBefore: '2', landedTotal: '105.00' },
      lines: [
        {},
        { lot: { lotNumber: 'P-8' }, remaining: '0' },
        { lot: { lotNumber: 'P-B' }, continuesLine: 2, quantity: '3', landedCost: '60.00' },
      ],
    });
    const [, opened] = await holdingsOf(owner, s.paste);
    expect(opened).toMatchObject({ on_hand: '0', opened_on: '2026-05-04' });
    expect((await holdingsOf(owner, s.paste))[2]).toMatchObject({
      ...{ on_hand: '3', opened_on: '2026-05-04', use_by: '2028-01-31' },
    });
    const trace = await s.book.done<object>('GET', `/visits/${visit.id}/trace`);
    expect(JSON.stringify(trace)).toContain('"P-8"');
    const lots = answer.body.lines as Delivery['lines'];
    expect(await s.book.done('GET', `/lots/${lots[2]?.lot.id}`)).toMatchObject({
      corrections: [{ way: 'was booked as', lotNumber: 'P-8', leftUnderWrongLot: '2' }],
    });
    expect(await s.book.done('GET', `/lots/${lots[1]?.lot.id}`)).toMatchObject({
      corrections: [{ way: 'goes on as', lotNumber: 'P-B', leftUnderWrongLot: '2' }],
    });
    // The visit is reversed: what comes back goes on under the right lot, too.
    await s.book.done('POST', `/visits/${visit.id}/reversal`, { note });
    const held = await s.book.done<{ onHand: string; corrections: object[] }>(
      'GET',
      `/lots/${lots[2]?.lot.id}`,
    );
    const corrections = [{ way: 'was booked as', lotNumber: 'P-8', leftUnderWrongLot: '0' }];
    expect(held).toMatchObject({ onHand: '5', received: '5', corrections });
    expect(held.corrections).toHaveLength(1);
    expect(refusalOf(await correct(delivery, 2, { ...right, lotNumber: 'P-B' }))).toBe(
      '409 stock_moved_on',
    );
    // An invoice of the line falls on its goods, under whichever lot they are.
    const priced = await invoice(delivery, { lines: [{ lineNumber: 2, packPrice: '130' }] });
    expect(priced.body).toMatchObject({ toStock: '30.00', priceVariance: '0.00' });
    expect(refusalOf(await invoice(delivery, { lines: [{ lineNumber: 3, packPrice: '1' }] }))).toBe(
      '400 invalid_request lines[0].lineNumber',
    );
  });

  it('keeps goods held back that were held back under the wrong one', async () => {
    const { delivery, right } = await usedPaste();
    const lotId = delivery.lines[1]?.lot.id;
    await s.book.done('PUT', `/lots/${lotId}/status`, { status: 'recalled', note });
    const answer = await correct(delivery, 2, { ...right, lotNumber: 'P-B' });
    const lines = answer.body.lines as { lot: { status: string } }[];
    expect(lines[2]?.lot.status).toBe('recalled');
  });

  it('or expiry is put right in every delivery of the lot', async () => {
    const { delivery, right } = await usedPaste();
    const lot = { lotNumber: 'P-8', expiresOn: '2028-01-31' };
    await s.book.deliver(s.supplier, '2026-02-02', [deliveryLine(s.paste, s.room, 1, '72', lot)]);
    await correct(delivery, 2, { ...right, expiresOn: '2027-06-30' });
    const { rows } = await owner.query(
      `SELECT DISTINCT expires_on::text FROM layers
       WHERE consumable_id = $1 AND out_quantity < received`,
      [s.paste.id],
    );
    expect(rows).toEqual([{ expires_on: '2027-06-30' }]);
    const opened = (await holdingsOf(owner, s.paste)).filter((h) => h.on_hand === '3');
    expect(opened).toMatchObject([{ use_by: '2027-06-30' }]);
  });

  it('and price at once: the price as by an invoice', async () => {
    const { delivery, right } = await usedPaste();
    const answer = await correct(delivery, 2, { ...right, packPrice: '130', lotNumber: 'P-B' });
    expect(answer.body).toMatchObject({ landedTotal: '135.00', newLine: 3 });
    expect((await variances()).rows).toMatchObject([{ amount: '12.00', toStock: '18.00' }]);
  });
});

describe('a wrong line', () => {
  it('is replaced while nothing of it was touched, and answers the same order', async () => {
    const delivery = await s.book.deliver(
      s.supplier,
      '2026-02-01',
      [deliveryLine(s.bib, s.store, 1, '5'), deliveryLine(s.paste, s.store, 3, '72')],
      { freight: '10' },
    );
    const right = {
      ...{ presentationId: s.strip.presentation, packs: 2, packPrice: '7', locationId: s.room },
      ...{ lotNumber: 'S-1', note },
    };
    const answer = await correct(delivery, 2, right);
    // Its part of the freight, 9.77 of 10.00, goes along.
    expect(answer.body).toMatchObject({
      ...{ goodsTotal: '19.00', landedTotal: '29.00', newLine: 3 },
      lines: [{}, { undone: true, remaining: '0' }, { replacesLine: 2, landedCost: '23.77' }],
    });
    expect((await holdingsOf(owner, s.strip)).map((h) => h.on_hand)).toEqual(['200']);
    expect(refusalOf(await correct(delivery, 2, right))).toBe('409 already_reversed');
    const count = { lines: [{ holdingId: (await firstHolding(owner, s.paste)).id, counted: '1' }] };
    expect(refusalOf(await s.book.ask('POST', '/counts', count))).toBe(
      '422 more_than_received lines[0].counted',
    );
  });

  it('settles what visits lacked only as the right one', async () => {
    const visit = await postVisit(s, { usage: [{ consumableId: s.bib.id, dispensed: '9' }] });
    expect(visit.estimated).toBe(true);
    const delivery = await s.book.deliver(s.supplier, '2026-02-01', [
      deliveryLine(s.bib, s.store, 2, '50'),
    ]);
    const right = { presentationId: s.bib.presentation, packs: 1, packPrice: '50' };
    const answer = await correct(delivery, 1, { ...right, locationId: s.store, note });
    expect(answer.body).toMatchObject({ newLine: 2, landedTotal: '50.00' });
    const lines = answer.body.lines as { remaining: string }[];
    expect(lines.map((line) => line.remaining)).toEqual(['0', '490']);
  });

  it('stays when part of it was used, and says what can still be done', async () => {
    const { delivery, right } = await usedPaste();
    const answer = await correct(delivery, 2, { ...right, packs: 2 });
    expect(refusalOf(answer)).toBe('409 stock_moved_on');
    expect(answer.body.detail).toContain('Only a lot, an expiry or a price');
    expect(refusalOf(await correct(delivery, 2, right))).toBe('422 nothing_to_do');
    expect((await correct(delivery, 9, right)).status).toBe(404);
    expect(refusalOf(await correct(delivery, 2, { ...right, note: '' }))).toBe(
      '400 invalid_request note',
    );
  });
});
