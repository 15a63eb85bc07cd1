import { describe, expect, it } from '@jest/globals';
import { kindOfMovement, type SideFacts, sideInWords } from './movement-words.js';

const side: SideFacts = {
  account: 'location',
  locationName: 'Room 2',
  opened: false,
  supplierName: 'Northgate Supplies',
  visitedOn: '2026-05-04',
  wasteReason: 'expired',
};

describe('where goods came from or went, in words', () => {
  it.each([
    [{ ...side }, 'Room 2'],
    [{ ...side, opened: true }, 'Room 2, opened container'],
    [{ ...side, account: 'supplier' }, 'Northgate Supplies'],
    [{ ...side, account: 'return' }, 'returned to Northgate Supplies'],
    [{ ...side, account: 'visit' }, 'visit of 2026-05-04'],
    [{ ...side, account: 'waste' }, 'waste: expired'],
    [{ ...side, account: 'waste', wasteReason: null }, 'waste'],
    [{ ...side, account: 'count' }, 'count difference'],
  ])('%#', (facts, words) => {
    expect(sideInWords(facts)).toBe(words);
  });

  it('knows no other account', () => {
    expect(() => sideInWords({ ...side, account: 'moon' })).toThrow('moon');
  });
});

describe('what happened, in a word', () => {
  const plain = { fromOpened: false, toOpened: false, reverses: false };
  it.each([
    ['supplier', 'location', {}, 'receipt'],
    ['location', 'visit', {}, 'use'],
    ['location', 'waste', {}, 'write-off'],
    ['location', 'return', {}, 'return'],
    ['location', 'count', {}, 'missing at count'],
    ['count', 'location', {}, 'found at count'],
    ['location', 'location', {}, 'move'],
    ['location', 'location', { toOpened: true }, 'opening'],
    ['location', 'location', { fromOpened: true, toOpened: true }, 'move'],
    ['visit', 'location', { reverses: true }, 'reversal'],
  ])('%s to %s %j is a %s', (from, to, more, kind) => {
    expect(kindOfMovement({ ...plain, from, to, ...more })).toBe(kind);
  });
});
