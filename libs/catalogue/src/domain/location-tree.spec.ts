import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { MAX_LEVELS, type Place, placementProblem } from './location-tree.js';

/** store > floor > room > cabinet > drawer, and a fridge of its own */
const tree: Place[] = [
  { id: 'store', parentId: null },
  { id: 'floor', parentId: 'store' },
  { id: 'room', parentId: 'floor' },
  { id: 'cabinet', parentId: 'room' },
  { id: 'drawer', parentId: 'cabinet' },
  { id: 'fridge', parentId: null },
];

describe('where a place may hang', () => {
  it('may stand on its own', () => {
    expect(placementProblem(tree, 'room', null)).toBeUndefined();
    expect(placementProblem(tree, 'new', null)).toBeUndefined();
  });

  it('may hang below another branch', () => {
    expect(placementProblem(tree, 'drawer', 'fridge')).toBeUndefined();
  });

  it('may not hang below itself or below what it holds', () => {
    expect(placementProblem(tree, 'room', 'room')).toBe('inside itself');
    expect(placementProblem(tree, 'store', 'drawer')).toBe('inside itself');
    expect(placementProblem(tree, 'room', 'cabinet')).toBe('inside itself');
  });

  it('may not hang below a place that does not exist', () => {
    expect(placementProblem(tree, 'new', 'nowhere')).toBe('unknown parent');
  });

  it('may be the sixth level but not the seventh', () => {
    expect(placementProblem(tree, 'new', 'drawer')).toBeUndefined();
    const six = [...tree, { id: 'box', parentId: 'drawer' }];
    expect(placementProblem(six, 'new', 'box')).toBe('too deep');
  });

  it('counts what hangs below a place that moves', () => {
    expect(placementProblem(tree, 'store', 'fridge')).toBeUndefined();
    const six = [...tree, { id: 'box', parentId: 'drawer' }];
    expect(placementProblem(six, 'store', 'fridge')).toBe('too deep');
  });

  it('never lets a series of moves make a circle or a seventh level', () => {
    const move = fc.tuple(fc.nat(11), fc.option(fc.nat(11)));
    fc.assert(
      fc.property(fc.array(move, { maxLength: 60 }), (moves) => {
        const parents = new Map<string, string | null>();
        for (let n = 0; n < 12; n += 1) parents.set(`p${n}`, null);
        for (const [n, under] of moves) {
          const places = [...parents].map(([id, parentId]) => ({ id, parentId }));
          const parentId = under === null ? null : `p${under}`;
          if (placementProblem(places, `p${n}`, parentId)) continue;
          parents.set(`p${n}`, parentId);
        }
        for (const id of parents.keys()) {
          let levels = 0;
          for (let here: string | null = id; here; here = parents.get(here) ?? null) {
            levels += 1;
            expect(levels).toBeLessThanOrEqual(MAX_LEVELS);
          }
        }
      }),
    );
  });
});
