import type { Location } from './api/list-locations.js';

/** A place with what draws from it. */
export interface PlaceNode extends Location {
  readonly below: readonly PlaceNode[];
}

/** The places as they draw from each other; those whose parent is not among them stand on top. */
export function placeTree(places: readonly Location[]): PlaceNode[] {
  const known = new Set(places.map((place) => place.id));
  const branch = (parentId: string | null): PlaceNode[] =>
    places
      .filter((place) => (known.has(place.parentId ?? '') ? place.parentId : null) === parentId)
      .map((place) => ({ ...place, below: branch(place.id) }));
  return branch(null);
}

/** A place and everything below it: from none of these can the place draw. */
export function withinPlace(places: readonly Location[], id: string): ReadonlySet<string> {
  const inside = new Set([id]);
  let grown = true;
  while (grown) {
    const more = places.filter(
      (place) => !inside.has(place.id) && inside.has(place.parentId ?? ''),
    );
    for (const place of more) inside.add(place.id);
    grown = more.length > 0;
  }
  return inside;
}
