import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import {
  deliveryLine,
  openSmallBook,
  postVisit,
  type SmallBook,
  TestService,
  withFreshCatalogue,
} from './book.js';
import { expectRulesHold } from './invariants.js';
import { holdingsOf, refusalOf } from './stock-steps.js';

let service: TestService;
let owner: pg.Client;
let shared: SmallBook;
let s: SmallBook;
let books = 0;

interface Line {
  readonly layerId: string;
  readonly lineNumber: number;
  readonly consumable: { readonly id: string };
  readonly lot: { readonly id: string; readonly lotNumber: string | null };
  readonly packs: number;
  readonly quantity: string;
  readonly landedCost: string;
}

interface Checked {
  readonly landedTotal: string;
  readonly lines: readonly {
    readonly landedCost: string;
    readonly flags: readonly { kind: string; daysLeft: number; limitDays: number }[];
    readonly price: Record<string, string | boolean | null> | null;
  }[];
}

interface Received {
  readonly id: string;
  readonly lines: readonly Line[];
  readonly faults: readonly object[];
  readonly check: Checked;
}

beforeAll(async () => {
  service = await TestService.start();
  owner = new pg.Client({ connectionString: service.databaseUrl });
  await owner.connect();
  shared = await openSmallBook(service, 'lines');
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

const body = (lines: object[], more: object = {}) => ({
  ...{ supplierId: s.supplier, receivedOn: '2026-05-04', lines },
  ...more,
});
const receive = (lines: object[], more: object = {}) =>
  s.book.done<Received>('POST', '/deliveries', body(lines, more));
const ask = (lines: object[], more: object = {}) =>
  s.book.ask('POST', '/deliveries', body(lines, more));
const check = (lines: object[], more: object = {}) =>
  s.book.done<Checked>('POST', '/deliveries/check', body(lines, more));
const costs = (of: { readonly lines: readonly { landedCost: string }[] }) =>
  of.lines.map((line) => line.landedCost);

describe('what a delivery costs to get here', () => {
  it('goes by weight, with duty, to the cent; the dry run says the same and books nothing', async () => {
    const line = (of: SmallBook['bib'], price: string, weightGrams?: string) =>
      deliveryLine(of, s.store, 1, price, { weightGrams });
    const lines = [line(s.bib, '10', '900'), line(s.strip, '90', '100')];
    const extras = { freight: '1', duty: '2', spreadKey: 'weight' };
    // Worked by hand: 0.90 and 1.80 on the heavy line, 0.10 and 0.20 on the light one.
    const checked = await check(lines, extras);
    expect(costs(checked)).toEqual(['12.70', '90.30']);
    expect(await holdingsOf(owner, s.bib)).toEqual([]);
    const delivery = await receive(lines, extras);
    expect(costs(delivery)).toEqual(['12.70', '90.30']);
    expect(delivery).toMatchObject({ duty: '2.00', landedTotal: '103.00', check: checked });
    const unweighed = await ask([line(s.bib, '10', '900'), line(s.strip, '90')], extras);
    expect(refusalOf(unweighed)).toBe('400 invalid_request lines[1].weightGrams');
  });

  it('is nothing for samples, which set no price', async () => {
    await receive([deliveryLine(s.paste, s.store, 1, '72', { lotNumber: 'P-1' })]);
    const sample = deliveryLine(s.paste, s.store, 1, '0', { lotNumber: 'P-2', sample: true });
    const delivery = await receive([sample, deliveryLine(s.bib, s.store, 1, '5')], {
      freight: '2',
    });
    expect(costs(delivery)).toEqual(['0.00', '7.00']);
    expect(delivery.lines[0]).toMatchObject({ sample: true, lot: { lotNumber: 'P-2' } });
    const [next] = (await check([deliveryLine(s.paste, s.store, 1, '72')])).lines;
    expect(next?.price).toMatchObject({ lastPackPrice: '72.00', packChange: '0' });
    const priced = { ...sample, packPrice: '1' };
    expect(refusalOf(await ask([priced]))).toBe('400 invalid_request lines[0].packPrice');
    const alone = await ask([sample], { freight: '2' });
    expect(refusalOf(alone)).toBe('422 nothing_to_bear freight');
  });
});

describe('goods that arrive', () => {
  it('are flagged when they are over, near their end, or more than will be used in time', async () => {
    await receive([deliveryLine(s.bib, s.store, 1, '5')], { receivedOn: '2026-03-01' });
    // With the one of its template 51 pieces in the last 90 days: 500 take 883 days.
    await postVisit(s, {
      visitedOn: '2026-04-20',
      usage: [{ consumableId: s.bib.id, dispensed: '50' }],
    });
    const line = (expiresOn: string, lotNumber: string) =>
      deliveryLine(s.bib, s.store, 1, '5', { lotNumber, expiresOn });
    const { lines } = await check([
      line('2026-05-03', 'A'),
      line('2026-05-24', 'B'),
      line('2028-01-31', 'C'),
    ]);
    const flags = lines.map((one) =>
      one.flags.map((flag) => `${flag.kind} ${flag.daysLeft} of ${flag.limitDays}`),
    );
    expect(flags).toEqual([
      ['expired -1 of 0'],
      ['short-dated 20 of 60', 'not used in time 20 of 883'],
      ['not used in time 637 of 1765'],
    ]);
  });

  it('may have expired: they are booked in, and never issued', async () => {
    await receive([
      deliveryLine(s.etchant, s.store, 1, '5', { lotNumber: 'E', expiresOn: '2026-05-03' }),
    ]);
    const visit = await postVisit(s);
    expect(visit.usage.every((line) => line.shortfall !== '0')).toBe(true);
    expect((await holdingsOf(owner, s.etchant)).map((h) => h.on_hand)).toEqual(['4.8']);
  });

  it('show a smaller pack by its price per unit', async () => {
    await receive([deliveryLine(s.capsule, s.store, 1, '110')]);
    const presentation = await s.book.presentation(s.capsule.id, 'single-dose', 15, '0.25', {
      name: 'Smaller pack',
    });
    const [line] = (
      await check([deliveryLine({ ...s.capsule, presentation }, s.store, 1, '92.40')])
    ).lines;
    expect(line?.price).toMatchObject({
      ...{ lastPackContent: '5', packContent: '3.75', contentChanged: true },
      ...{ packChange: '-0.16', unitChange: '0.12', lastUnitPrice: '22.00', unitPrice: '24.64' },
    });
  });

  it('damaged or missing are on the delivery, and nowhere in stock', async () => {
    const fault = { presentationId: s.paste.presentation, packs: 2 };
    const delivery = await receive([deliveryLine(s.bib, s.store, 1, '5')], {
      faults: [
        { ...fault, kind: 'damaged', lotNumber: 'P-9', note: 'Seal broken.' },
        { ...fault, kind: 'missing' },
      ],
    });
    expect(delivery.faults).toMatchObject([
      { kind: 'damaged', packs: 2, lotNumber: 'P-9', note: 'Seal broken.', orderLineId: null },
      { kind: 'missing', packs: 2, lotNumber: null },
    ]);
    expect(await holdingsOf(owner, s.paste)).toEqual([]);
    const found = await s.book.done('GET', '/lots?number=p-9');
    expect(found).toMatchObject({ items: [], damaged: [{ deliveryId: delivery.id, packs: 2 }] });
    expect((await receive([], { faults: [{ ...fault, kind: 'missing' }] })).lines).toEqual([]);
    expect(refusalOf(await ask([]))).toBe('400 invalid_request lines');
  });
});

describe('a line of several lots', () => {
  it('becomes a layer for each, at its part of the cost', async () => {
    const lots = [
      { packs: 3, lotNumber: 'A', expiresOn: '2028-01-31' },
      { packs: 2, lotNumber: 'B', expiresOn: '2028-03-31' },
    ];
    const delivery = await receive([deliveryLine(s.paste, s.store, 5, '72', { lots })], {
      freight: '10',
    });
    expect(delivery.lines.map((l) => [l.lineNumber, l.lot.lotNumber, l.packs, l.quantity])).toEqual(
      [
        [1, 'A', 3, '12'],
        [2, 'B', 2, '8'],
      ],
    );
    expect(costs(delivery)).toEqual(['222.00', '148.00']);
    const wrong = deliveryLine(s.paste, s.store, 4, '72', { lots });
    expect(refusalOf(await ask([wrong]))).toBe('400 invalid_request lines[0].lots');
    const other = [{ ...lots[0], expiresOn: '2028-02-01' }];
    const clash = deliveryLine(s.paste, s.store, 3, '72', { lots: other });
    expect(refusalOf(await ask([clash]))).toBe('409 wrong_expiry lines[0].lots[0].expiresOn');
    const dry = await s.book.ask('POST', '/deliveries/check', body([clash]));
    expect(refusalOf(dry)).toBe('409 wrong_expiry lines[0].lots[0].expiresOn');
  });
});

describe('a kit', () => {
  const part = (consumableId: string, sharePercent: string) => ({
    ...{ consumableId, dispensing: 'multi-use', containersPerPack: 1, contentPerContainer: '0.45' },
    sharePercent,
  });
  const makeKit = () =>
    s.book.done('PUT', `/presentations/${s.paste.presentation}/parts`, {
      parts: [part(s.etchant.id, '25'), part(s.adhesive.id, '24.99')],
    });

  it('becomes a layer for each part, with its share of the cost and its lot, or the one of the kit', async () => {
    expect(await makeKit()).toMatchObject({ ownSharePercent: '50.01' });
    const parts = [{ consumableId: s.adhesive.id, lotNumber: 'AD-3' }];
    const kit = deliveryLine(s.paste, s.store, 2, '100.01', {
      ...{ lotNumber: 'KIT-7', expiresOn: '2028-01-31', parts },
    });
    const delivery = await receive([deliveryLine(s.bib, s.store, 1, '5'), kit], { freight: '2' });
    // Worked by hand: a kit of 100.01 is 50.02, 25.00 and 24.99; freight over 5.00, 100.04, 50.00
    // and 49.98 is 0.05, 0.97, 0.49 and 0.49.
    expect(
      delivery.lines.map((l) => [l.consumable.id, l.quantity, l.lot.lotNumber, l.landedCost]),
    ).toEqual([
      [s.bib.id, '500', null, '5.05'],
      [s.paste.id, '8', 'KIT-7', '101.01'],
      [s.etchant.id, '0.9', 'KIT-7', '50.49'],
      [s.adhesive.id, '0.9', 'AD-3', '50.47'],
    ]);
    expect(delivery.lines[3]).toMatchObject({
      kit: { lotNumber: 'KIT-7', firstLine: 2, packPrice: '100.01' },
    });
  });

  it('is found and held back by its number, with the lots of all its parts', async () => {
    await makeKit();
    const number = `KIT-${books}`;
    const parts = [{ consumableId: s.adhesive.id, lotNumber: `AD-${books}` }];
    const kit = deliveryLine(s.paste, s.store, 1, '100', { lotNumber: number, parts });
    const { lines } = await receive([kit]);
    const found = await s.book.done<{ items: { id: string }[] }>('GET', `/lots?number=${number}`);
    expect(found.items.map((lot) => lot.id).sort()).toEqual(lines.map((l) => l.lot.id).sort());
    const part = lines.find((line) => line.consumable.id === s.adhesive.id)?.lot.id;
    const { kits } = await s.book.done<{
      kits: { kitLotId: string; lotNumber: string; parts: { lotNumber: string }[] }[];
    }>('GET', `/lots/${part}`);
    expect(kits).toMatchObject([{ lotNumber: number, status: 'released' }]);
    expect(kits[0]?.parts.map((one) => one.lotNumber).sort()).toEqual([
      ...[`AD-${books}`, number, number],
    ]);
    const hold = { status: 'recalled', note: 'Notice of the maker.' };
    await s.book.done('PUT', `/kit-lots/${kits[0]?.kitLotId}/status`, hold);
    const visit = await postVisit(s);
    expect(visit.usage.find((one) => one.consumable.id === s.adhesive.id)?.taken).toEqual([]);
    // More of the same kit is held back as it arrives, also parts with a number of their own.
    const more = await receive([{ ...kit, parts: [{ ...parts[0], lotNumber: `AE-${books}` }] }]);
    expect(more.lines.map((line) => (line.lot as { status?: string }).status)).toEqual([
      ...['recalled', 'recalled', 'recalled'],
    ]);
  });

  it('is refused with parts that it has not, or shares of more than the whole', async () => {
    await makeKit();
    const parts = [{ consumableId: s.bib.id, lotNumber: 'X' }];
    const line = deliveryLine(s.paste, s.store, 1, '100', { parts });
    expect(refusalOf(await ask([line]))).toBe('400 invalid_request lines[0].parts[0].consumableId');
    const path = `/presentations/${s.paste.presentation}/parts`;
    const set = (all: object[]) => s.book.ask('PUT', path, { parts: all });
    const two = [part(s.etchant.id, '60'), part(s.adhesive.id, '40.01')];
    expect(refusalOf(await set(two))).toBe('422 figures_do_not_fit parts');
    const own = [part(s.paste.id, '1')];
    expect(refusalOf(await set(own))).toBe('422 figures_do_not_fit parts[0].consumableId');
    const strip = [{ ...part(s.strip.id, '1'), contentPerContainer: '0.5' }];
    expect(refusalOf(await set(strip))).toBe('422 figures_do_not_fit parts[0].contentPerContainer');
  });
});
