import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { KINDS } from '../../libs/exchange/src/domain/kinds.js';
import { asOwner } from '../harness/database.js';
import { openSmallBook, postVisit, TestBook, TestService } from './book.js';
import { all, awkwardBook, emptyBook, type Json, randomLists, told } from './exchange-books.js';
import { bring, check, fetchFile, sentences } from './exchange-steps.js';
import { expectRulesHold } from './invariants.js';

let service: TestService;
let owner: pg.Client;

beforeAll(async () => {
  service = await TestService.start();
  owner = await asOwner(service.databaseUrl);
});

afterAll(async () => {
  await owner.end();
  await service.stop();
});

describe('a book that goes out as files', () => {
  it('comes in as the same book, from a workbook and from single lists in either language', async () => {
    const s = await awkwardBook(service, 'rt');
    const random = randomLists(20_261_127);
    await bring(s.book, 'consumables', random.consumables);
    await bring(s.book, 'opening-stock', random.stock);
    for (const [kind, list] of Object.entries(random.ordering)) await bring(s.book, kind, list);
    const before = await told(s.book);
    expect((before.stock as string[]).length).toBeGreaterThan(60);
    expect((before.booked as string[]).length).toBe(3);
    expect((before.pairs as string[]).length).toBe(61);

    const workbook = await fetchFile(s.book, '/exports/book.xlsx?language=de');
    const again = await check(s.book, 'book', workbook);
    expect(sentences(again)).toEqual([]);
    expect(again.sheets.map((each) => [each.kind, each.newRows, each.changedRows])).toEqual(
      again.sheets.map((each) => [each.kind, 0, 0]),
    );

    const byWorkbook = await emptyBook({ service, owner }, 'rtbook', s.book);
    await bring(byWorkbook, 'book', workbook);
    expect(await told(byWorkbook)).toEqual(before);

    const byLists = await emptyBook({ service, owner }, 'rtlists', s.book);
    for (const kind of KINDS) {
      await bring(byLists, kind, await fetchFile(s.book, `/exports/${kind}.csv`));
    }
    expect(await told(byLists)).toEqual(before);

    const twice = await bring(byLists, 'book', workbook);
    expect([twice.newRows, twice.changedRows]).toEqual([0, 0]);
    expect(await told(byLists)).toEqual(before);
    await expectRulesHold(owner);
  });
});

describe('lists that people make', () => {
  it('are read by their headings in German or English, with a decimal comma, from UTF-16 too', async () => {
    const book = await TestBook.open(service, 'people');
    await bring(book, 'suppliers', 'Firma;Mail\nNordlicht;a@nord.example\n');
    const list =
      'Artikel;Farbe;Warengruppe;Einheit;Gebinde;H\u00e4ndler;Entnahme;Packungsgr\u00f6\u00dfe;Inhalt;Preis (EUR)\n' +
      'Paste;Body 2;Komposit;Gramm;Spritze;nordlicht;Mehrfach;1;0,125;1.234,50\n';
    await bring(book, 'consumables', Buffer.from(`\uFEFF${list}`, 'utf16le'));
    const [pack] = await all<Json>(book, '/presentations');
    expect(pack).toMatchObject({
      contentPerContainer: '0.125',
      listPrice: '1234.50',
      name: 'Spritze',
    });

    const changed = list.replace('1.234,50', '99,00').replace('Komposit', '');
    const checked = await check(book, 'consumables', changed);
    expect(checked.sheets[0]).toMatchObject({ newRows: 0, changedRows: 1, sameRows: 0 });
    expect(checked.sheets[0]?.rows[0]?.changes).toEqual([
      { column: 'listPrice', heading: 'Price per pack', from: '1234.5', to: '99' },
    ]);
    expect((await all<Json>(book, '/presentations'))[0]).toMatchObject({ listPrice: '1234.50' });
    await bring(book, 'consumables', changed);
    const trail = await book.done<{ items: Json[] }>('GET', '/audit-entries?limit=20');
    expect(trail.items.map((each) => each.action)).toEqual(
      expect.arrayContaining(['presentation.changed', 'presentation.created', 'file.imported']),
    );
  });

  it('have columns that are named or left out by hand', async () => {
    const book = await TestBook.open(service, 'hand');
    const list = 'Who,Where,Since\nFernmoor,a@b.example,1999\n';
    const first = await check(book, 'suppliers', list);
    expect(first.ready).toBe(false);
    expect(first.sheets[0]?.missing).toEqual(['name']);
    const query = '&columns=A:name,B:email,C:-';
    expect((await check(book, 'suppliers', list, query)).ready).toBe(true);
    expect((await check(book, 'suppliers', list, '&columns=A:name&ignoreUnknown=true')).ready).toBe(
      true,
    );
    await bring(book, 'suppliers', list, query);
    expect((await all<Json>(book, '/suppliers'))[0]).toMatchObject({ email: 'a@b.example' });
  });

  it('begin as empty lists, whose example is not read', async () => {
    const book = await TestBook.open(service, 'empty');
    for (const kind of KINDS) {
      for (const file of [`${kind}.csv?language=de`, `${kind}.xlsx`]) {
        const checked = await check(book, kind, await fetchFile(book, `/exports/empty/${file}`));
        expect([file, sentences(checked)]).toEqual([
          file,
          [expect.stringContaining('has no rows below its headings')],
        ]);
      }
    }
  });
});

describe('opening stock', () => {
  const head = 'Consumable;Shade;Lot;Expires on;Supplier;Location;Packs;Quantity;Price;Opened on\n';
  const rows =
    'Paste;Body 2;N1;2030-01-31;Northgate Supply;Store;3;;70;\n' +
    'Adhesive;;N2;2030-01-31;Northgate Supply;Room 1;;1.25;110;2026-03-01\n';

  it('is on the shelf like a delivery, once, with its worth and its use-by date', async () => {
    const s = await openSmallBook(service, 'opening');
    // Two people who send the same list at the same moment book it once.
    const both = await Promise.all([1, 2].map(() => bring(s.book, 'opening-stock', head + rows)));
    expect(both.map((each) => each.newRows).sort()).toEqual([0, 2]);
    const again = await bring(s.book, 'opening-stock', head + rows);
    expect([again.newRows, again.sameRows]).toEqual([0, 2]);
    const stock = await all<Json>(s.book, '/stock');
    expect(stock).toHaveLength(2);
    expect(stock).toEqual(
      expect.arrayContaining([
        expect.objectContaining({ onHand: '12', value: '210.00', openedOn: null }),
        // 1.25 of 5 mL of a bottle at 110; six months after it was opened.
        expect.objectContaining({ onHand: '1.25', value: '27.50', effectiveExpiry: '2026-09-01' }),
      ]),
    );
    const more = head + rows.replace(';3;;', ';4;;');
    expect(sentences(await check(s.book, 'opening-stock', more))).toEqual([
      expect.stringContaining('said something else then; correct it by a count'),
    ]);
    const deliveries = await all<Json>(s.book, '/deliveries');
    expect(deliveries.map((each) => each.reference)).toEqual(['Opening stock', 'Opening stock']);
    await expectRulesHold(owner);

    // Undone, it may come in once more, and corrected.
    for (const each of deliveries) {
      const path = `/deliveries/${each.id}/reversal`;
      if (each.receivedOn !== '2026-03-01') await s.book.done('POST', path, { note: 'Miscounted' });
    }
    const corrected = await bring(s.book, 'opening-stock', more);
    expect([corrected.newRows, corrected.sameRows]).toEqual([1, 1]);
    await expectRulesHold(owner);
  });

  it('settles what visits used before the book knew of it', async () => {
    const s = await openSmallBook(service, 'settles');
    const visit = await postVisit(s);
    expect(visit.estimated).toBe(true);
    const list = `${head}Etchant gel;;E;2030-01-31;Northgate Supply;Store;1;;20;\n`;
    await bring(
      s.book,
      'opening-stock',
      list.replace('Price', 'Price;Received on').replace(';20;', ';20;2026-01-01;'),
    );
    const { rows: open } = await owner.query(
      'SELECT 1 FROM shortfalls WHERE consumable_id = $1 AND settled < quantity',
      [s.etchant.id],
    );
    expect(open).toEqual([]);
    await expectRulesHold(owner);
  });
});

describe('ten thousand rows', () => {
  it('are checked and brought in, with progress that can be asked for', async () => {
    const book = await TestBook.open(service, 'many');
    await bring(book, 'suppliers', 'Supplier\nFernmoor\n');
    await bring(book, 'locations', 'Location,Kind\nStore,store\n');
    const numbers = Array.from({ length: 10_000 }, (_, i) => i);
    const packs = numbers.map((i) => `Item ${i},misc,g,Pack,Fernmoor,multi-use,1,4,${i % 90}.5`);
    const head = 'Consumable,Category,Stock unit,Pack,Supplier,Use,Containers,Content,Price\n';
    const list = `${head}${packs.join('\n')}\n`;
    expect((await check(book, 'consumables', list)).ready).toBe(true);
    await bring(book, 'consumables', list);
    const stock = numbers.map((i) => `Item ${i},L${i},2030-01-31,Store,2`);
    const lots = `Consumable,Lot,Expires on,Location,Packs\n${stock.join('\n')}\n`;
    const id = '0199c0de-0000-7000-8000-00000000abcd';
    const seen: number[] = [];
    const bringing = bring(book, 'opening-stock', lots, `&id=${id}`);
    let running = true;
    void bringing.finally(() => {
      running = false;
    });
    while (running) {
      const run = await book.ask('GET', `/imports/${id}`, undefined, 'manager');
      if (run.status === 200) seen.push(Number(run.body.rowsDone));
    }
    expect((await bringing).newRows).toBe(10_000);
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
    expect(seen.some((rows) => rows > 0 && rows < 10_000)).toBe(true);
    const again = await bring(book, 'opening-stock', lots);
    expect([again.newRows, again.sameRows]).toEqual([0, 10_000]);
    await expectRulesHold(owner);
  });
});
