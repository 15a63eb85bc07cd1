import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { csvLine, guarded } from '#lib/platform';
import { readCsv } from './csv.js';
import { decodeText } from './decode-text.js';
import { columnIndex, columnLetters, type RawSheet } from './sheet.js';

function texts(sheet: RawSheet): (string | undefined)[][] {
  return sheet.rows.map((row) =>
    Array.from(row.cells, (cell) => (cell?.kind === 'text' ? cell.text : undefined)),
  );
}

describe('readCsv', () => {
  it('reads the examples of RFC 4180, section 2', () => {
    expect(texts(readCsv('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n', 'x'))).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(texts(readCsv('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx', 'x'))).toEqual([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(texts(readCsv('"aaa","b""bb","ccc"', 'x'))).toEqual([['aaa', 'b"bb', 'ccc']]);
  });

  it('finds out the separator, and counts lines as an editor does', () => {
    expect(texts(readCsv('a;b;c,d\n1;2\n', 'x'))).toEqual([
      ['a', 'b', 'c,d'],
      ['1', '2'],
    ]);
    expect(texts(readCsv('one\nHarbour, Hill; Co\n', 'x'))[1]).toEqual(['Harbour, Hill; Co']);
    expect(texts(readCsv('sep=;\na;b\n', 'x'))).toEqual([['a', 'b']]);
    expect(texts(readCsv('a\tb\n"x;y"\tz', 'x'))[1]).toEqual(['x;y', 'z']);
    const rows = readCsv('a;b\n\n"1\n2";x\n3;y\n', 'x').rows.map((row) => row.number);
    expect(rows).toEqual([1, 3, 5]);
  });

  it('reads back what was written, whatever it is, and no cell begins like a formula', () => {
    const awkward = fc.oneof(
      fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }),
      fc.constantFrom('=1+1', "'=1", '@a', '-x', '+49 1', 'a"b', 'a;b', 'a,b', 'a\nb', "''-"),
    );
    const cell = awkward.map((text) => text.trim()).filter((text) => text !== '');
    const rows = fc.array(fc.array(cell, { minLength: 2, maxLength: 2 }), { minLength: 1 });
    fc.assert(
      fc.property(rows, fc.constantFrom(',' as const, ';' as const, '\t' as const), (all, mark) => {
        const head = ['one', 'two'];
        const file = [head, ...all].map((row) => csvLine(row.map(guarded), mark)).join('');
        expect(texts(readCsv(file, 'x'))).toEqual([head, ...all]);
        for (const row of all)
          for (const each of row) expect(guarded(each)).not.toMatch(/^[=+\-@]/);
      }),
      { numRuns: 300 },
    );
  });
});

describe('decodeText', () => {
  it('takes UTF-8 with and without its mark, and UTF-16 by its mark', () => {
    const text = 'Größe 12 mm, 歯 🦷';
    const encoded = Buffer.from(text);
    expect(decodeText(encoded)).toBe(text);
    expect(decodeText(Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), encoded]))).toBe(text);
    const little = Buffer.from(`\uFEFF${text}`, 'utf16le');
    expect(decodeText(little)).toBe(text);
    expect(decodeText(Buffer.from(little).swap16())).toBe(text);
  });

  it('names the first bytes that are not UTF-8 (RFC 3629, section 4)', () => {
    const at = (bytes: number[]) => () => decodeText(Buffer.from([0x61, 0x0a, ...bytes]));
    expect(at([0xc0, 0x80])).toThrow('Line 2 holds bytes that are not UTF-8: C0 80 (byte 3');
    expect(at([0xed, 0xa0, 0x80])).toThrow('ED A0 80 (byte 3'); // half of a surrogate pair
    expect(at([0xf5, 0x80])).toThrow('F5 80 (byte 3');
    expect(at([0xe2, 0x82, 0xac, 0xe2, 0x82])).toThrow('E2 82 (byte 6');
  });
});

describe('column letters', () => {
  it('are those of spreadsheets, there and back', () => {
    expect([0, 25, 26, 51, 701, 702, 16_383].map(columnLetters)).toEqual([
      ...['A', 'Z', 'AA', 'AZ', 'ZZ', 'AAA', 'XFD'],
    ]);
    fc.assert(fc.property(fc.nat(100_000), (n) => expect(columnIndex(columnLetters(n))).toBe(n)));
  });
});
