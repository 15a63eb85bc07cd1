import type { Tx } from '#lib/platform';

/** Whether any of this consumable was ever received. */
export async function consumableWasReceived(tx: Tx, consumableId: string): Promise<boolean> {
  const rows = await tx.query('SELECT 1 FROM layers WHERE consumable_id = $1 LIMIT 1', [
    consumableId,
  ]);
  return rows.length > 0;
}

/** Whether this presentation was ever received. */
export async function presentationWasReceived(tx: Tx, presentationId: string): Promise<boolean> {
  const rows = await tx.query(
    `SELECT 1 FROM presentations p JOIN layers l
       ON l.practice_id = p.practice_id AND l.consumable_id = p.consumable_id
          AND l.presentation_id = p.id
     WHERE p.id = $1 LIMIT 1`,
    [presentationId],
  );
  return rows.length > 0;
}

export async function locationHoldsStock(tx: Tx, locationId: string): Promise<boolean> {
  const rows = await tx.query('SELECT 1 FROM holdings WHERE location_id = $1 AND live LIMIT 1', [
    locationId,
  ]);
  return rows.length > 0;
}
