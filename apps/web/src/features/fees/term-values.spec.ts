import { describe, expect, it } from '@jest/globals';
import { shareOfPercent } from './term-values.js';

describe('a percentage as it is typed', () => {
  it.each([
    ['80', '0.8'],
    ['62,5', '0.625'],
    ['33.3333', '0.333333'],
    ['100', '1'],
    ['0', '0'],
  ])('of %s is the share %s, exactly', (typed, share) => {
    expect(shareOfPercent(typed)).toBe(share);
  });

  it.each(['', '-1', '100.0001', '101', 'all', '33.33333'])('is refused: %s', (typed) => {
    expect(shareOfPercent(typed)).toBeUndefined();
  });
});
