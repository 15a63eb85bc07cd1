import type { Tx } from '#lib/platform';
import type { Place } from '../domain/location-tree.js';

/**
 * The places of the practice, for someone about to change how they hang together. Held until the
 * transaction ends, so that two moves at once cannot together make a circle.
 */
export async function placesToArrange(tx: Tx): Promise<Place[]> {
  await tx.query('SELECT pg_advisory_xact_lock(hashtextextended($1, 0))', [
    `places ${tx.practiceId}`,
  ]);
  return tx.query<Place>('SELECT id, parent_id AS "parentId" FROM locations');
}
