import { describe, expect, it } from '@jest/globals';
import { holdingWith } from './holding.fixture.js';
import { nextAction, possibleActions } from './possible.js';

const everything = () => true;
const assistant = (permission: string) => permission === 'stock.handle';

describe('what can be done with a holding', () => {
  it('is what the person may do', () => {
    const sealed = holdingWith();
    expect(possibleActions(sealed, everything)).toEqual([
      ...['open', 'move', 'write-off', 'return', 'count', 'hold'],
    ]);
    expect(possibleActions(sealed, assistant)).toEqual(['open', 'move', 'write-off', 'count']);
    expect(possibleActions(sealed, () => false)).toEqual([]);
  });

  it('leaves out opening what is open, expired or not opened at all', () => {
    for (const change of [
      { openedOn: '2026-03-01' },
      { status: 'expired' as const },
      { dispensing: 'by-piece' as const },
    ]) {
      expect(possibleActions(holdingWith(change), everything)).not.toContain('open');
    }
  });

  it('begins with what its state asks for', () => {
    const next = (change: object, may: (permission: string) => boolean) => {
      const holding = holdingWith(change);
      return nextAction(holding, possibleActions(holding, may));
    };
    expect(next({}, everything)).toBe('open');
    expect(next({ openedOn: '2026-03-01' }, everything)).toBe('move');
    expect(next({ status: 'expired' }, everything)).toBe('write-off');
    expect(next({ status: 'recalled' }, everything)).toBe('return');
    expect(next({ status: 'recalled' }, assistant)).toBe('write-off');
    expect(next({ status: 'quarantined' }, assistant)).toBeUndefined();
  });
});
