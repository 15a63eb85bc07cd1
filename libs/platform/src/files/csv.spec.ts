import { describe, expect, it } from '@jest/globals';
import { toCsv } from './csv.js';

const one = (value: string | number | null) => toCsv(['a'], [[value]]).slice('a\r\n'.length, -2);

describe('a table as CSV', () => {
  it('has a header row and CRLF after every row, the last included', () => {
    expect(toCsv(['name', 'cost'], [['Paste', '1.20']])).toBe('name,cost\r\nPaste,1.20\r\n');
  });

  it('is a header alone when there is nothing to tell', () => {
    expect(toCsv(['name'], [])).toBe('name\r\n');
  });

  it.each([
    ['a,b', '"a,b"'],
    ['say "ah"', '"say ""ah"""'],
    ['two\nlines', '"two\nlines"'],
    ['plain', 'plain'],
    [null, ''],
    [12, '12'],
  ])('quotes %p only where it must', (value, text) => {
    expect(one(value)).toBe(text);
  });

  it.each([
    ['=1+1', "'=1+1"],
    ['+1 555', "'+1 555"],
    ['-cmd', "'-cmd"],
    ['@sum(A1)', "'@sum(A1)"],
    ['\tx', "'\tx"],
    ['=HYPERLINK("u","t")', '"\'=HYPERLINK(""u"",""t"")"'],
  ])('disarms the formula %p', (value, text) => {
    expect(one(value)).toBe(text);
  });

  it.each(['-1.50', '-3', '0.06'])('leaves the number %s a number', (value) => {
    expect(one(value)).toBe(value);
  });
});
