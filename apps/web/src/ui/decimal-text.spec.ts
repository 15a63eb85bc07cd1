import { expect, it } from '@jest/globals';
import { asDecimal } from './decimal-text.js';

it.each([
  ['0,06', '0.06'],
  ['0.06', '0.06'],
  [' 4 ', '4'],
  [',5', '0.5'],
  ['12.', '12'],
  ['-1,5', '-1.5'],
  ['1.000,50', undefined],
  ['1,000.50', undefined],
  ['', undefined],
  ['two', undefined],
  ['1e3', undefined],
  ['0.0000001', undefined],
])('%j is read as %j', (typed, read) => {
  expect(asDecimal(typed)).toBe(read);
});
