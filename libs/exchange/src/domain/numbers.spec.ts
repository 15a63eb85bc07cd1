import { describe, expect, it } from '@jest/globals';
import { decimalHabit, readNumber } from './numbers.js';

const NONE = { comma: false, point: false };
const COMMA = decimalHabit(['12,5']);
const POINT = decimalHabit(['12.5']);

function read(text: string, habit = NONE): string {
  const number = readNumber(text, habit);
  return number.ok ? number.text : number.fault.message;
}

describe('readNumber', () => {
  it.each([
    ['12', '12'],
    ['12,5', '12.5'],
    ['0,125', '0.125'],
    ['0.125', '0.125'],
    ['1.234,50', '1234.50'],
    ['1,234.50', '1234.50'],
    ['1234,567', '1234.567'],
    ['1,2345', '1.2345'],
    ['1.234', '1.234'],
  ])('reads %s as %s where nothing else is known', (typed, wanted) => {
    expect(read(typed)).toBe(wanted);
  });

  it('takes one mark with three digits only as other cells prove it', () => {
    expect(read('1,234')).toContain('could be 1.234 or 1234');
    expect(read('1,234', COMMA)).toBe('1.234');
    expect(read('1.234', COMMA)).toContain('could be 1.234 or 1234');
    expect(read('1.234', POINT)).toBe('1.234');
    expect(read('1,234', { comma: true, point: true })).toContain('could be');
  });

  it('refuses what is no plain number', () => {
    for (const text of ['1.234.567', '1,234,567'])
      expect(read(text)).toContain('groups its digits');
    for (const text of ['', '-1', '12 €', '1e3', '1..2', 'zwei', '1 234']) {
      expect(read(text)).toContain('is not a number');
    }
  });
});
