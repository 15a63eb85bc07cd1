import { describe, expect, it } from '@jest/globals';
import { microOf, moneyText, quantityText } from './wire.js';

describe('numbers of the database on the wire', () => {
  it.each([
    ['0.060000', '0.06'],
    ['4.000000', '4'],
    ['4', '4'],
    ['-1.500000', '-1.5'],
    ['0', '0'],
    ['1999999999998.000001', '1999999999998.000001'],
  ])('writes the quantity %s as %s', (numeric, text) => {
    expect(quantityText(numeric)).toBe(text);
  });

  it.each([
    ['72.000000', '72.00'],
    ['0.123456', '0.123456'],
    ['-0.100000', '-0.10'],
    ['3.140000000000', '3.14'],
  ])('writes the amount %s as %s', (numeric, text) => {
    expect(moneyText(numeric)).toBe(text);
  });

  it.each(['NaN', '', '1e3', 'Infinity'])('refuses %p', (numeric) => {
    expect(() => microOf(numeric)).toThrow('is not a number of the book');
  });

  it('never drops a digit silently', () => {
    expect(() => microOf('0.1234567')).toThrow('finer');
  });
});
