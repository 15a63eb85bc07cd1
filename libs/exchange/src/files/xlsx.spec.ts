import { describe, expect, it } from '@jest/globals';
import Excel from 'exceljs';
import fc from 'fast-check';
import { fault } from '../domain/problems.js';
import { dateCell, numberCell } from '../domain/spreadsheet-values.js';
import { readFile } from './read-file.js';
import { isDateFormat } from './xlsx-parts.js';
import { readXlsx } from './xlsx-read.js';
import { writeXlsx } from './xlsx-write.js';

const KINDS = ['text', 'decimal', 'whole', 'date'] as const;

describe('workbooks that we write', () => {
  it('come back as they were, text as text, numbers as numbers, days as days', async () => {
    const text = fc
      .oneof(
        fc.string({ unit: 'grapheme', maxLength: 12 }),
        fc.constantFrom('=1+1', '007', '1e5', '<&">'),
      )
      // XML 1.0 holds no control characters; the book holds none either.
      .map((each) => each.replace(/\p{Cc}|\p{Surrogate}|[\uFFFE\uFFFF]/gu, '').trim() || 'x');
    const decimal = fc
      .tuple(fc.nat(999_999), fc.nat(999_999))
      .map(([a, b]) => String(Number(`${a}.${String(b).padStart(6, '0')}`)));
    const day = fc
      .integer({ min: -25_000, max: 73_000 })
      .map((n) => new Date(Date.UTC(2000, 0, 1) + n * 86_400_000).toISOString().slice(0, 10));
    const row = fc.tuple(text, decimal, fc.nat(99_999).map(String), day);
    await fc.assert(
      fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 5 }), async (rows) => {
        const sheet = { name: 'A & "B"', kinds: KINDS, widths: [9, 9, 9, 9], heading: true };
        const head = ['Text', 'Decimal', 'Whole', 'Day'];
        const [read] = await readXlsx(await writeXlsx([{ ...sheet, rows: [head, ...rows] }]));
        expect(read?.name).toBe('A & "B"');
        const cells = read?.rows.slice(1).map((each) => [...each.cells]);
        expect(cells).toEqual(
          rows.map(([a, b, c, d]) => [
            { kind: 'text', text: a },
            { kind: 'number', text: b },
            { kind: 'number', text: c },
            { kind: 'date', text: d },
          ]),
        );
      }),
      { numRuns: 60 },
    );
  });

  it('are read by another library as they were meant', async () => {
    const rows = [
      ['Name', 'Price', 'Packs', 'Expires'],
      ['=SUM(A1)', '0.333333', '3', '2027-06-30'],
    ];
    const file = await writeXlsx([
      { name: 'List', kinds: KINDS, widths: [9, 9, 9, 9], heading: true, rows },
    ]);
    const book = new Excel.Workbook();
    await book.xlsx.load(file as unknown as ArrayBuffer);
    const sheet = book.getWorksheet('List');
    const values = [1, 2, 3, 4].map((column) => sheet?.getRow(2).getCell(column).value);
    expect(values.slice(0, 3)).toEqual(['=SUM(A1)', 0.333333, 3]);
    expect((values[3] as Date).toISOString()).toBe('2027-06-30T00:00:00.000Z');
    expect(sheet?.getRow(2).getCell(1).type).toBe(Excel.ValueType.String);
  });
});

describe('workbooks that another library writes', () => {
  it('are read: shared and rich text, numbers, days, errors, formulas, merged cells', async () => {
    const book = new Excel.Workbook();
    const sheet = book.addWorksheet('Eins');
    sheet.addRow(['a', { richText: [{ text: 'rich ' }, { text: 'text' }] }, 0.1 + 0.2, true]);
    sheet.addRow([
      new Date('2027-06-30T00:00:00Z'),
      new Date('2027-06-30T12:00:00Z'),
      4012345678901,
    ]);
    sheet.addRow([{ formula: 'A1', result: 'a' }, { error: '#N/A' }]);
    sheet.mergeCells('A4:B5');
    book.addWorksheet('Hidden', { state: 'hidden' }).addRow(['x']);
    const file = Buffer.from(await book.xlsx.writeBuffer());
    const read = await readFile(file, 'any.csv');
    expect(read.format).toBe('xlsx');
    expect(read.sheets.map((each) => each.name)).toEqual(['Eins']);
    const [first] = read.sheets;
    expect(first?.merged).toEqual(['A4:B5']);
    expect(first?.rows.map((row) => [...row.cells])).toEqual([
      [
        { kind: 'text', text: 'a' },
        { kind: 'text', text: 'rich text' },
        { kind: 'number', text: '0.3' },
        { kind: 'flag', value: true },
      ],
      [
        { kind: 'date', text: '2027-06-30' },
        { kind: 'wrong', fault: fault('time-of-day') },
        { kind: 'number', text: '4012345678901' },
      ],
      [
        { kind: 'wrong', fault: fault('formula-cell') },
        { kind: 'wrong', fault: fault('error-cell', '#N/A') },
      ],
    ]);
  });
});

describe('values of spreadsheets', () => {
  it('count days as ECMA-376 part 1, 18.17.4.1 says', () => {
    // 2 January 2008 is 39449 in the calendar of 1900 and 37987 in that of 1904 (1462 days later).
    expect(dateCell('39449', false)).toEqual({ kind: 'date', text: '2008-01-02' });
    expect(dateCell('37987', true)).toEqual({ kind: 'date', text: '2008-01-02' });
    expect(dateCell('60', false)).toMatchObject({ kind: 'wrong' }); // 29 February 1900 never was
  });

  it('keep the fifteen digits that people see', () => {
    expect(numberCell('0.10000000000000001')).toEqual({ kind: 'number', text: '0.1' });
    expect(numberCell('1E-6')).toEqual({ kind: 'number', text: '0.000001' });
    expect(numberCell('1234567890123456')).toMatchObject({ kind: 'wrong' });
  });

  it('know a date by its format', () => {
    for (const code of ['yyyy\\-mm\\-dd', 'd. mmm', '[$-407]d/m/yy;@']) {
      expect([code, isDateFormat(code)]).toEqual([code, true]);
    }
    for (const code of ['0.00', '#,##0.00 "day"', '[Red]0', 'General', '0.00E+00']) {
      expect([code, isDateFormat(code)]).toEqual([code, false]);
    }
  });
});
