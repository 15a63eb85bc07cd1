import { describe, expect, it } from '@jest/globals';
import type { Location } from './api/list-locations.js';
import { type PlaceNode, placeTree, withinPlace } from './place-tree.js';

const place = (id: string, parentId: string | null): Location => ({
  id,
  parentId,
  name: id,
  kind: 'room',
  active: true,
});

const places = [
  place('drawer', 'room'),
  place('fridge', 'store'),
  place('room', 'store'),
  place('store', null),
];

function written(nodes: readonly PlaceNode[]): string {
  return nodes
    .map(({ id, below }) => (below.length === 0 ? id : `${id}(${written(below)})`))
    .join(' ');
}

describe('the tree of places', () => {
  it('hangs each place below the one from which it draws', () => {
    expect(written(placeTree(places))).toBe('store(fridge room(drawer))');
  });

  it('puts on top what draws from a place that is not shown', () => {
    expect(written(placeTree(places.slice(0, 3)))).toBe('fridge room(drawer)');
  });

  it('knows what lies inside a place', () => {
    expect([...withinPlace(places, 'room')].sort()).toEqual(['drawer', 'room']);
    expect([...withinPlace(places, 'store')]).toHaveLength(4);
  });
});
