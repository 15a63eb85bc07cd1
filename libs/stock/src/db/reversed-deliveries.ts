import { type Quantity, quantity } from '#lib/measure';
import type { Tx } from '#lib/platform';

/** Which of these layers never were: their delivery was undone, or their line. */
export async function layersOfReversedDeliveries(
  tx: Tx,
  layerIds: readonly string[],
): Promise<ReadonlySet<string>> {
  const rows = await tx.query<{ id: string }>(
    `SELECT l.id FROM layers l JOIN deliveries d ON d.id = l.delivery_id
     WHERE l.id = ANY($1::uuid[]) AND (d.reversed_at IS NOT NULL OR l.undone)`,
    [layerIds],
  );
  return new Set(rows.map((row) => row.id));
}

/** Whether anything of a delivery went another way than from place to place, and is still gone. */
export async function isPartGone(tx: Tx, deliveryId: string): Promise<boolean> {
  const rows = await tx.query(
    `SELECT FROM layers l JOIN layer_balances b ON b.layer_id = l.id
     WHERE l.delivery_id = $1
       AND (b.used <> 0 OR b.wasted <> 0 OR b.returned <> 0 OR b.count_difference <> 0)
     LIMIT 1`,
    [deliveryId],
  );
  return rows.length > 0;
}

/** What of each of these layers went back by corrections: it is under another line now, or never was. */
export async function carriedAway(
  tx: Tx,
  layerIds: readonly string[],
): Promise<ReadonlyMap<string, Quantity>> {
  const rows = await tx.query<{ layer_id: string; quantity: string }>(
    `SELECT layer_id, sum(quantity) AS quantity FROM movements
     WHERE layer_id = ANY($1::uuid[]) AND to_account = 'supplier' GROUP BY layer_id`,
    [layerIds],
  );
  return new Map(rows.map((row) => [row.layer_id, quantity(row.quantity)]));
}
