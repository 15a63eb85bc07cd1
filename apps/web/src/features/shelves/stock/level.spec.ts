import { describe, expect, it } from '@jest/globals';
import { levelOf } from './level.js';

const row = (usable: string, openShortfall: string, reorderAt: string | null) => ({
  ...{ usable, openShortfall, reorderAt },
});

describe('the level of a consumable', () => {
  it('is low at the order point, and only below or at it', () => {
    expect(levelOf(row('2', '0', '2'))).toEqual({ low: true, owes: false });
    expect(levelOf(row('2.000001', '0', '2'))).toEqual({ low: false, owes: false });
  });

  it('counts what was used and is not in the book', () => {
    expect(levelOf(row('2.5', '0.6', '2'))).toEqual({ low: true, owes: true });
  });

  it('is not told without an order point', () => {
    expect(levelOf(row('0', '0', null))).toEqual({ low: null, owes: false });
  });
});
