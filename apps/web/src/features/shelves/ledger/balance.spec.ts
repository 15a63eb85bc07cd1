import { describe, expect, it } from '@jest/globals';
import { barOf, partsOf } from './balance.js';

const mass = (change: object) => ({
  ...{ received: '100', onHand: '0', used: '0', wasted: '0', returned: '0' },
  ...{ countDifference: '0', balanced: true, ...change },
});

describe('the balance of a delivery line', () => {
  it('is a bar of what became of it', () => {
    expect(barOf(mass({ onHand: '40', used: '50', countDifference: '10' }))).toEqual([
      { part: 'onHand', share: 40 },
      { part: 'used', share: 50 },
      { part: 'countDifference', share: 10 },
    ]);
    expect(barOf(mass({ onHand: '102', countDifference: '-2' }))).toEqual([
      { part: 'onHand', share: 100 },
    ]);
    expect(barOf(mass({ received: '0' }))).toEqual([]);
  });

  it('names what there is, and what was found at a count', () => {
    expect(partsOf(mass({ onHand: '100' }))).toEqual(['onHand', 'used']);
    expect(partsOf(mass({ countDifference: '-2', wasted: '1' }))).toEqual([
      ...['onHand', 'used', 'wasted', 'countDifference'],
    ]);
  });
});
