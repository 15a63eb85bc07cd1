import { describe, expect, it } from '@jest/globals';
import { type Mass, totalMass } from './total-mass.js';

const layer: Mass = {
  received: '12',
  onHand: '4.5',
  used: '6',
  wasted: '1',
  returned: '0.75',
  countDifference: '-0.25',
  balanced: true,
};

describe('the balance of a lot', () => {
  it('adds the layers up', () => {
    expect(totalMass([layer, { ...layer, received: '8', onHand: '0.5' }])).toEqual({
      received: '20',
      onHand: '5',
      used: '12',
      wasted: '2',
      returned: '1.5',
      countDifference: '-0.5',
      balanced: true,
    });
  });

  it('is not balanced by two layers that are wrong in opposite ways', () => {
    const more = { ...layer, onHand: '5', balanced: false };
    const less = { ...layer, onHand: '4', balanced: false };
    expect(totalMass([more, less]).balanced).toBe(false);
  });

  it('does not believe a layer that says it balances', () => {
    expect(totalMass([{ ...layer, onHand: '4' }]).balanced).toBe(false);
  });

  it('of nothing is nothing', () => {
    expect(totalMass([])).toMatchObject({ received: '0', onHand: '0', balanced: true });
  });
});
