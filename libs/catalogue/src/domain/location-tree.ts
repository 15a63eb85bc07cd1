export const LOCATION_KINDS = ['store', 'fridge', 'room', 'drawer'] as const;
export type LocationKind = (typeof LOCATION_KINDS)[number];

/** A place draws from itself, then from its parent; six levels are enough for any practice. */
export const MAX_LEVELS = 6;

export interface Place {
  readonly id: string;
  readonly parentId: string | null;
}

export type PlacementProblem = 'unknown parent' | 'inside itself' | 'too deep';

/**
 * Whether a place, with everything that hangs below it, may hang below this parent. The tree is
 * what the practice has now; the place itself may be new.
 */
export function placementProblem(
  tree: readonly Place[],
  id: string,
  parentId: string | null,
): PlacementProblem | undefined {
  if (parentId === null) return undefined;
  if (parentId === id) return 'inside itself';
  const parents = new Map(tree.map((place) => [place.id, place.parentId]));
  if (!parents.has(parentId)) return 'unknown parent';
  const above = pathUp(parents, parentId);
  if (above.includes(id)) return 'inside itself';
  return above.length + levelsOf(tree, parents, id) > MAX_LEVELS ? 'too deep' : undefined;
}

/** The place itself and everything above it, from below. */
function pathUp(parents: ReadonlyMap<string, string | null>, from: string): string[] {
  const path: string[] = [];
  let here: string | null | undefined = from;
  while (here) {
    if (path.includes(here)) throw new Error(`The places above ${from} go round in a circle`);
    path.push(here);
    here = parents.get(here);
  }
  return path;
}

/** Levels of the branch that starts at this place; 1 when nothing hangs below it. */
function levelsOf(
  tree: readonly Place[],
  parents: ReadonlyMap<string, string | null>,
  id: string,
): number {
  const depths = tree.map((place) => pathUp(parents, place.id).indexOf(id) + 1);
  return Math.max(1, ...depths);
}
