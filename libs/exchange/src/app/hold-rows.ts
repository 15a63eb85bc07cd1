import type { Tx } from '#lib/platform';

type Held = 'suppliers' | 'locations' | 'presentations' | 'consumable_planning';

/**
 * Plans; holds what would be changed, so that nobody else's change is lost, and nothing that would not,
 * so that nobody waits for a file; and plans once more on what was held.
 */
export async function settled<P>(
  plan: () => Promise<P>,
  hold: (first: P) => Promise<boolean>,
): Promise<P> {
  const first = await plan();
  return (await hold(first)) ? plan() : first;
}

/** Holds rows of a table; answers whether there was anything to hold. */
export async function holdRows(tx: Tx, table: Held, ids: readonly string[]): Promise<boolean> {
  if (ids.length === 0) return false;
  const id = table === 'consumable_planning' ? 'consumable_id' : 'id';
  const sql = `SELECT FROM ${table} WHERE ${id} = ANY($1::uuid[]) ORDER BY ${id} FOR NO KEY UPDATE`;
  await tx.query(sql, [[...new Set(ids)]]);
  return true;
}
