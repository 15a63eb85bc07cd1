import { describe, expect, it } from '@jest/globals';
import { affectedBy, usedFor } from './affected.js';

const restorations = [
  { id: 'a', tooth: 11 },
  { id: 'b', tooth: 11 },
  { id: 'c', tooth: 36 },
];

describe('whom a usage line may have reached', () => {
  it.each([
    ['restoration', { restorationId: 'b', tooth: null }, ['b']],
    ['tooth', { restorationId: null, tooth: 11 }, ['a', 'b']],
    ['visit', { restorationId: null, tooth: null }, ['a', 'b', 'c']],
    ['tooth', { restorationId: null, tooth: 48 }, []],
  ])('a line of a %s: %j', (what, line, ids) => {
    expect(usedFor(line)).toBe(what);
    expect(affectedBy(line, restorations).map((r) => r.id)).toEqual(ids);
  });
});
