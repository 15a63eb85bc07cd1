import { describe, expect, it } from '@jest/globals';
import { isWholeUnit, STOCK_UNITS } from './index.js';

describe('stock units', () => {
  it('are mass, volume, count, length and times of use', () => {
    expect(STOCK_UNITS).toEqual(['g', 'mL', 'piece', 'cm', 'use']);
  });

  it('are whole when they are counted', () => {
    expect(STOCK_UNITS.filter(isWholeUnit)).toEqual(['piece', 'use']);
    expect(isWholeUnit('box')).toBe(false);
  });
});
