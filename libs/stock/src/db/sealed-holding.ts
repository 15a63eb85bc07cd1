import { quantity } from '#lib/measure';
import { newId, type Tx } from '#lib/platform';

export interface SealedHolding {
  readonly id: string;
  readonly onHand: bigint;
  readonly isNew: boolean;
}

/** The sealed part of a layer at a location, or an id for the one to be made. The layer is locked. */
export async function sealedHolding(
  tx: Tx,
  layerId: string,
  locationId: string,
): Promise<SealedHolding> {
  const [row] = await tx.query<{ id: string; on_hand: string }>(
    `SELECT id, on_hand FROM holdings
     WHERE layer_id = $1 AND location_id = $2 AND opened_on IS NULL`,
    [layerId, locationId],
  );
  if (!row) return { id: newId(), onHand: 0n, isNew: true };
  return { id: row.id, onHand: quantity(row.on_hand), isNew: false };
}
