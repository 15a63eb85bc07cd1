import type { Tx } from '#lib/platform';

/** So many new rows make the database plan anew; it would notice by itself only later. */
const MANY = 1000;

/**
 * Has the database look at what an import wrote so far, where that is much: it still plans as if the
 * practice had a handful of rows, and would go through all of them for each one.
 */
export async function lookAtNewRows(tx: Tx, rows: number): Promise<void> {
  if (rows >= MANY) await tx.query('SELECT look_at_what_came_in()');
}
