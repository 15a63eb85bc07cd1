import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type pg from 'pg';
import { asOwner } from '../harness/database.js';
import { TestBook, TestService } from './book.js';
import { describeOrderingLists } from './exchange-ordering-cases.js';
import { bring, check, refusesFile, sendFile } from './exchange-steps.js';
import { sheetXml, workbook, zip } from './exchange-xlsx.js';

let service: TestService;
let owner: pg.Client;
let book: TestBook;

beforeAll(async () => {
  service = await TestService.start();
  owner = await asOwner(service.databaseUrl);
  book = await TestBook.open(service, 'bad');
  await book.supplier('Fernmoor');
  const store = await book.location('Store', 'store');
  await book.location('Room 1', 'room', store);
  const paste = await book.consumable('Paste', 'composite', 'g', { shade: 'Body 2' });
  await book.presentation(paste, 'multi-use', 1, '4', { listPrice: '72' });
  await book.consumable('Gel', 'etchant', 'mL');
  await book.consumable('Strip', 'matrix', 'piece');
});

afterAll(async () => {
  await owner.end();
  await service.stop();
});

const expectRefused = (kind: string, file: string | Buffer, sentence: RegExp | string) =>
  refusesFile({ book, owner }, { kind, file }, sentence);

describeOrderingLists(() => ({ book, owner }));

const HEAD = ['Supplier', 'E-mail'];

describe('a workbook that is not a plain list', () => {
  it('is refused at the cell that holds a formula', async () => {
    const formula = '<c r="B3"><f>A1+1</f><v>2</v></c>';
    const file = workbook(sheetXml([HEAD, ['Good', 'a@b.example'], ['Next', formula]]));
    await expectRefused(
      'suppliers',
      file,
      /Sheet "Sheet1", row 3, column B \(E-mail\): this cell holds a formula/,
    );
  });

  it('is refused at its merged cells', async () => {
    const merged = '<mergeCells count="1"><mergeCell ref="A2:A3"/></mergeCells>';
    const file = workbook(sheetXml([HEAD, ['One', ''], ['', '']], merged));
    await expectRefused('suppliers', file, /Sheet "Sheet1" has the merged cells A2:A3/);
  });

  it('is refused at an error value, a broken date, and a date that lost its lot', async () => {
    const broken = '<c r="B2" t="e"><v>#REF!</v></c>';
    await expectRefused(
      'suppliers',
      workbook(sheetXml([HEAD, ['One', broken]])),
      /row 2, column B .*holds the error #REF!/,
    );
    const head = ['Consumable', 'Shade', 'Lot', 'Expires on', 'Location', 'Packs'];
    const row = ['Paste', 'Body 2', '<c r="C2" t="d"><v>2026-03-12</v></c>', '2030-01-31', 'Store'];
    await expectRefused(
      'opening-stock',
      workbook(sheetXml([head, [...row, '<c><v>3</v></c>']])),
      /row 2, column C \(Lot\): this cell is a date \(2026-03-12\); format the column as text/,
    );
  });

  it('is refused when it has a hundred thousand columns', async () => {
    const wide = Array.from({ length: 100_000 }, (_, i) => `h${i}`);
    await expectRefused(
      'suppliers',
      workbook(sheetXml([wide, ['One']])),
      /Sheet "Sheet1", row 1, has more than 100 columns/,
    );
    await expectRefused(
      'suppliers',
      `${wide.join(';')}\nOne\n`,
      /row 1, has more than 100 columns/,
    );
  });

  it('is refused before memory is spent when it unpacks to far too much', async () => {
    const blanks = Buffer.concat([Buffer.from('<worksheet>'), Buffer.alloc(60 * 1_048_576, ' ')]);
    const honest = workbook(blanks);
    const lying = workbook(blanks, 1000);
    expect(honest.length).toBeLessThan(1_048_576);
    const before = process.memoryUsage().rss;
    await expectRefused('suppliers', honest, /unpacks to far more than its size/);
    await expectRefused('suppliers', lying, /unpacks to far more than its size/);
    expect((process.memoryUsage().rss - before) / 1_048_576).toBeLessThan(150);
  });

  it('is refused when it is cut off, no workbook, an old one, or empty', async () => {
    const whole = workbook(sheetXml([HEAD, ['One', '']]));
    await expectRefused('suppliers', whole.subarray(0, 200), /damaged or incomplete/);
    await expectRefused('suppliers', zip([{ name: 'a.txt', content: 'a' }]), /not a workbook/);
    await expectRefused('suppliers', Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 1]), /old form \(.xls\)/);
    await expectRefused('suppliers', '', /The file is empty/);
    await expectRefused('suppliers', workbook(sheetXml([HEAD])), /no rows below its headings/);
    await expectRefused('book', whole, /none of the sheets of a book/);
  });

  it('expands no entity: a billion laughs stay one', async () => {
    const laughs = `<!DOCTYPE x [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;">]>${sheetXml([HEAD, ['&b;', '']])}`;
    await expectRefused('suppliers', workbook(laughs), /is damaged/);
  });
});

describe('a text file that is not a plain list', () => {
  it('is refused at the bytes that are not UTF-8', async () => {
    const latin = Buffer.from('Supplier;E-mail\nGood;\nM\xfcller;\n', 'latin1');
    await expectRefused(
      'suppliers',
      latin,
      /Line 3 holds bytes that are not UTF-8: FC 6C 6C 65 \(byte 24/,
    );
  });

  it('is refused at an open quote, at text after one, and at a formula', async () => {
    await expectRefused(
      'suppliers',
      'Supplier\n"One\nTwo\n',
      /quote that opens in line 2 is never/,
    );
    await expectRefused('suppliers', 'Supplier\n"One"x\n', /Line 2 goes on after a closing quote/);
    await expectRefused('suppliers', 'Supplier\n=1+1\n', /row 2, column A .*begins like a formula/);
  });

  it('is refused at a date in words, a number in two senses, and a word out of its list', async () => {
    const head = 'Consumable;Shade;Lot;Expires on;Location;Quantity';
    const row = (date: string, quantity: string) =>
      `${head}\nPaste;Body 2;L;${date};Store;${quantity}\n`;
    await expectRefused(
      'opening-stock',
      row('31.12.2030', '2'),
      /column D \(Expires on\): this cell is text \(31\.12\.2030\), which can be read in several ways/,
    );
    await expectRefused('opening-stock', row('2030-02-30', '2'), /a day that does not exist/);
    await expectRefused(
      'opening-stock',
      row('2030-12-31', '1,234'),
      /column F \(Quantity\): this cell could be 1\.234 or 1234/,
    );
    await expectRefused(
      'opening-stock',
      row('2030-12-31', '0,1234567'),
      /at most 6 digits after the point/,
    );
    await expectRefused(
      'locations',
      'Location;Kind\nX;cupboard\n',
      /must be one of: store, fridge, room, drawer/,
    );
  });

  it('is refused when headings are missing, unknown or double', async () => {
    await expectRefused(
      'suppliers',
      'Colour;Weight\na;b\n',
      /has no column "Supplier" \("Lieferant"\)/,
    );
    await expectRefused(
      'suppliers',
      'Supplier;Weight\na;b\n',
      /columns that are not known: B \("Weight"\)/,
    );
    await expectRefused(
      'suppliers',
      'Supplier;Lieferant\na;b\n',
      /columns A and B, would both be "Supplier"/,
    );
  });
});

describe('rows that do not go together', () => {
  it('are refused when they contradict each other or say one thing twice', async () => {
    const head = 'Consumable;Shade;Lot;Expires on;Supplier;Location;Packs\n';
    const row = 'Paste;Body 2;L1;2030-01-31;Fernmoor;Store;';
    await expectRefused(
      'opening-stock',
      `${head}${row}2\n${row}2\n`,
      /row 3: this row says the same as row 2/,
    );
    await expectRefused(
      'opening-stock',
      `${head}${row}2\n${row}3\n`,
      /row 3: this row contradicts row 2/,
    );
    const other = 'Paste;Body 2;L1;2031-01-31;Fernmoor;Room 1;1\n';
    await expectRefused(
      'opening-stock',
      `${head}${row}2\n${other}`,
      /contradicts row 2, which has 2030-01-31/,
    );
    await expectRefused(
      'suppliers',
      'Supplier;E-mail\nA;a@x\nA;b@x\n',
      /contradicts row 2, which says a@x/,
    );
  });

  it('are refused when they name what the book does not have or cannot hold', async () => {
    const stock = (cells: string) => `Consumable;Shade;Location;Packs;Price;Supplier\n${cells}\n`;
    await expectRefused(
      'opening-stock',
      stock('Glue;;Store;1;1;Fernmoor'),
      /names no consumable of the book \(Glue\)/,
    );
    await expectRefused(
      'opening-stock',
      stock('Paste;Body 2;Attic;1;1;Fernmoor'),
      /names no location/,
    );
    await expectRefused(
      'opening-stock',
      stock('Paste;Body 2;Store;1;1;'),
      /is blank, and the pack has no supplier/,
    );
    await expectRefused(
      'opening-stock',
      stock('Paste;Body 2;Store;0;1;Fernmoor'),
      /whole number from 1 to 100000/,
    );
    await expectRefused(
      'locations',
      'Location;Kind;Inside\nA;room;B\nB;room;A\n',
      /lie inside itself/,
    );
    await expectRefused(
      'consumables',
      'Consumable\nGlue\n',
      /is needed for what is not in the book yet/,
    );
    const drop =
      'Consumable;Category;Unit;Pack;Use;Containers per pack;Content\nStrip;matrix;piece;Box;by-piece;1;1.5\n';
    await expectRefused(
      'consumables',
      drop,
      /must be a whole number, because stock is kept in whole pieces/,
    );
  });

  it('name every row, and one wrong row keeps ten thousand right ones out', async () => {
    const rows = Array.from({ length: 10_000 }, (_, i) => `Supplier ${i},s${i}@x.example`);
    rows[7_000] = '"",lost@x.example';
    const file = `Supplier,E-mail\n${rows.join('\n')}\n`;
    await expectRefused('suppliers', file, /row 7002.*is blank; every row needs a name/);
    const checked = await check(book, 'suppliers', file);
    expect(checked.sheets[0]).toMatchObject({ newRows: 9_999, errorRows: 1 });
    expect(checked.sheets[0]?.rows).toHaveLength(201);
  });
});

describe('a request that is not a file', () => {
  it('is refused by what it is, and by who sends it', async () => {
    const json = await book.ask('POST', '/imports/check?kind=suppliers', { a: 1 });
    expect([json.status, json.body.code]).toEqual([415, 'not_a_file']);
    expect((await sendFile(book, '/suppliers', 'name\nx\n')).status).toBe(415);
    const assistant = await sendFile(book, '/imports?kind=suppliers', 'Supplier\nx\n', {
      role: 'assistant',
    });
    expect(assistant.status).toBe(403);
    const large = await sendFile(
      book,
      '/imports/check?kind=suppliers',
      Buffer.alloc(10_485_761, 'a'),
    );
    expect(large.status).toBe(413);
    const columns = await sendFile(
      book,
      '/imports/check?kind=suppliers&columns=A:weight',
      'x\ny\n',
    );
    expect([columns.status, columns.text]).toEqual([
      400,
      expect.stringContaining('names no column'),
    ]);
  });

  it('is done once for one key, and refused for the key with another file', async () => {
    const headers = { 'idempotency-key': 'once' };
    const first = await sendFile(book, '/imports?kind=suppliers', 'Supplier\nOnce\n', { headers });
    const again = await sendFile(book, '/imports?kind=suppliers', 'Supplier\nOnce\n', { headers });
    expect([first.status, again.body]).toEqual([201, first.body]);
    const other = await sendFile(book, '/imports?kind=suppliers', 'Supplier\nTwice\n', { headers });
    expect([other.status, other.body.code]).toEqual([409, 'idempotency_key_reused']);
    const log = await book.ask('GET', '/imports', undefined, 'manager');
    expect((log.body.items as { state: string }[])[0]).toMatchObject({ state: 'done', newRows: 1 });
    await bring(book, 'suppliers', 'Supplier\nOnce\n');
  });
});
