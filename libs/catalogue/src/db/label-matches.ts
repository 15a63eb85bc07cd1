import type { Tx } from '#lib/platform';

export interface LabelMatch {
  readonly presentationId: string;
  readonly presentationName: string;
  readonly active: boolean;
  readonly consumableId: string;
  readonly consumableName: string;
  readonly stockUnit: string;
  readonly lotId: string | null;
  readonly lotStatus: string | null;
  readonly lotExpiresOn: string | null;
}

const MOST = 50;

/**
 * Presentations that carry one of these identifiers, those in use first, each with the lot of that
 * number if one was ever received.
 */
export async function labelMatches(
  tx: Tx,
  identifiers: readonly string[],
  lot: string | null,
): Promise<LabelMatch[]> {
  return tx.query<LabelMatch>(
    `SELECT p.id AS "presentationId", p.name AS "presentationName", p.active,
       c.id AS "consumableId", c.name AS "consumableName", c.stock_unit AS "stockUnit",
       l.id AS "lotId", l.status AS "lotStatus", l.expires_on AS "lotExpiresOn"
     FROM presentations p
     JOIN consumables c ON c.practice_id = p.practice_id AND c.id = p.consumable_id
     LEFT JOIN lots l ON l.practice_id = p.practice_id AND l.consumable_id = p.consumable_id
       AND l.lot_number = $2
     WHERE p.device_identifier = ANY($1)
     ORDER BY p.active DESC, lower(p.name), p.id
     LIMIT ${MOST}`,
    [identifiers, lot],
  );
}
