import { type Tx, unknownReference } from '#lib/platform';
import { refuseCatalogue } from '../catalogue.refusals.js';
import { placesToArrange } from '../db/place-tree.js';
import { MAX_LEVELS, placementProblem } from '../domain/location-tree.js';

/** Refuses to hang a place where it cannot hang. */
export async function checkPlacement(tx: Tx, id: string, parentId: string | null): Promise<void> {
  if (parentId === null) return;
  const problem = placementProblem(await placesToArrange(tx), id, parentId);
  if (problem === 'unknown parent') throw unknownReference('parentId', 'location');
  if (problem === 'inside itself') {
    throw refuseCatalogue(
      'location_inside_itself',
      'This location would draw from itself. Choose a parent that does not lie inside it.',
      [{ field: 'parentId', message: 'lies inside this location' }],
    );
  }
  if (problem === 'too deep') {
    throw refuseCatalogue(
      'location_too_deep',
      `Locations may be nested ${MAX_LEVELS} levels deep. Choose a parent further up.`,
      [{ field: 'parentId', message: `would make more than ${MAX_LEVELS} levels` }],
    );
  }
}
