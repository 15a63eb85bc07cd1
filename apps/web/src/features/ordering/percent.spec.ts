import { describe, expect, it } from '@jest/globals';
import { asPercent, shareTyped } from './percent.js';

describe('a share', () => {
  it('is typed in percent and sent as a share, exactly', () => {
    expect(['0.95', '0.975', '0.2', '0.9999'].map(asPercent)).toEqual([
      '95',
      '97.5',
      '20',
      '99.99',
    ]);
    expect(['95', '97,5', '0.01', '99.99'].map((typed) => shareTyped(typed))).toEqual([
      ...['0.95', '0.975', '0.0001', '0.9999'],
    ]);
    expect(['0', '100', '-5', 'most', '', '99.995'].map((typed) => shareTyped(typed))).toEqual(
      Array.from({ length: 6 }, () => undefined),
    );
    expect(shareTyped('120', '500')).toBe('1.2');
  });
});
