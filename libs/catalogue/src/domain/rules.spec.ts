import { describe, expect, it } from '@jest/globals';
import { quantity, STOCK_UNITS } from '#lib/measure';
import { changesBetween } from './changes.js';
import { reorderProblems } from './consumable-rules.js';
import { DISPENSINGS, packingProblems } from './presentation-rules.js';

describe('reorder figures', () => {
  const fields = (at: string | null, upTo: string | null) =>
    reorderProblems({
      reorderAt: at === null ? null : quantity(at),
      reorderUpTo: upTo === null ? null : quantity(upTo),
    }).map(({ field }) => field);

  it.each<[string | null, string | null, string[]]>([
    [null, null, []],
    ['4', null, []],
    ['4', '4', []],
    ['0', '0.000001', []],
    [null, '4', ['reorderAt']],
    ['4.000001', '4', ['reorderUpTo']],
  ])('at %s up to %s', (at, upTo, expected) => {
    expect(fields(at, upTo)).toEqual(expected);
  });
});

describe('what is in a pack', () => {
  it.each(STOCK_UNITS)('of something kept in %s', (stockUnit) => {
    const whole = stockUnit === 'piece' || stockUnit === 'use';
    for (const dispensing of DISPENSINGS) {
      const fields = (content: string) =>
        packingProblems({ stockUnit, dispensing, contentPerContainer: quantity(content) }).map(
          ({ field }) => field,
        );
      const byPiece = dispensing === 'by-piece' && !whole ? ['dispensing'] : [];
      expect(fields('20')).toEqual(byPiece);
      expect(fields('0.25')).toEqual(whole ? ['contentPerContainer'] : byPiece);
    }
  });
});

describe('what changed', () => {
  it('is every field that differs, objects by what they hold', () => {
    const before = { name: 'a', size: null, life: { value: 6, unit: 'day' } };
    expect(changesBetween(before, { ...before, life: { value: 6, unit: 'day' } })).toBeUndefined();
    const after = { name: 'b', size: null, life: null };
    expect(changesBetween<object>(before, after)).toEqual({
      name: { from: 'a', to: 'b' },
      life: { from: { value: 6, unit: 'day' }, to: null },
    });
  });
});
