import { describe, expect, it } from '@jest/globals';
import { unitCost } from './unit-cost.js';

describe('the landed cost of one unit', () => {
  it('is exact to the hundredth of a cent', () => {
    expect(unitCost('72', '4')).toBe('18.0000');
    expect(unitCost('10', '3')).toBe('3.3333');
    expect(unitCost('8.55', '100')).toBe('0.0855');
    expect(unitCost('0.01', '0.000001')).toBe('10000.0000');
  });

  it('is not told of nothing', () => {
    expect(unitCost('5', '0')).toBeUndefined();
  });
});
