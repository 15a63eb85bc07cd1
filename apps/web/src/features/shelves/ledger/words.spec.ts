import { describe, expect, it } from '@jest/globals';
import { de } from '../../../text/de.js';
import { en } from '../../../text/en.js';
import { makeFormat } from '../../../text/format.js';
import type { Movement } from '../api/list-movements.js';
import type { Place } from '../api/list-places.js';
import { holdingWith } from '../holding/holding.fixture.js';
import { canReverse, kindWords, sentenceOf, sideWords } from './words.js';

const room: Place = { id: 'p1', name: 'Room 1', kind: 'room', parentId: null, active: true };
const places = [room];

const side = (account: Movement['from']['account'], words: string): Movement['from'] => ({
  ...{ account, words, holdingId: null },
  locationId: account === 'location' ? 'p1' : null,
});

function movement(change: Partial<Movement> = {}): Movement {
  const { consumable, lot, layerId } = holdingWith();
  return {
    ...{ id: 'm1', kind: 'write-off', occurredOn: '2026-05-04', layerId, consumable, lot },
    ...{ from: side('location', 'Room 1'), to: side('waste', 'waste: residue') },
    ...{ quantity: '0.5', cost: '9.00', sureness: null, outOfOrder: false, wasteReason: 'residue' },
    ...{ note: null, visitId: null, usageLineId: null, shortfallId: null },
    ...{ reversesId: null, reversedById: null, recordedBy: { id: 'x', name: 'X' } },
    recordedAt: '2026-05-04T10:00:00Z',
    ...change,
  };
}

describe('a movement in words', () => {
  it('says where from and where to', () => {
    const words = (one: Movement['from'], t = en) => sideWords(one, movement(), places, t);
    expect(words(side('location', 'Room 1'))).toBe('Room 1');
    expect(words(side('location', 'Room 1, opened container'))).toBe('Room 1, open container');
    expect(words(side('location', 'Room 1, opened container'), de)).toBe(
      'Room 1, offener Behälter',
    );
    expect(words(side('supplier', 'Northgate Supply'), de)).toBe('Northgate Supply');
    expect(words(side('visit', 'visit of 2026-05-04'), de)).toBe('Besuch');
    expect(words(side('waste', 'waste: residue'), de)).toBe('Abfall: Rest im Behälter');
    expect(words(side('count', 'count difference'))).toBe('count difference');
    expect(words({ ...side('location', 'Old room'), locationId: 'gone' })).toBe('Old room');
  });

  it('says what happened, and leaves a word it does not know', () => {
    expect(kindWords({ kind: 'found at count' }, en)).toBe('Found at a count');
    expect(kindWords({ kind: 'something new' }, en)).toBe('something new');
  });

  it('asks in a sentence', () => {
    const options = { locale: 'en-GB', currency: 'EUR', timeZone: 'UTC', units: en.units };
    expect(sentenceOf(movement(), places, makeFormat(options), en)).toBe(
      'Written off: 0.5\u00a0g of Paste, Body 2 (lot P-7), Room 1 → waste: Residue left in the container.',
    );
  });
});

describe('what may be reversed on its own', () => {
  it('is neither a reversal nor reversed, of no visit and no delivery', () => {
    expect(canReverse(movement())).toBe(true);
    expect(canReverse(movement({ reversesId: 'm0' }))).toBe(false);
    expect(canReverse(movement({ reversedById: 'm2' }))).toBe(false);
    expect(canReverse(movement({ visitId: 'v1' }))).toBe(false);
    expect(canReverse(movement({ from: side('supplier', 'Northgate Supply') }))).toBe(false);
  });
});
