import { formatQuantity, quantity, type StockUnit } from '#lib/measure';
import type { Tx } from '#lib/platform';
import type { PartInput } from '../domain/part-rules.js';
import type { Dispensing } from '../domain/presentation-rules.js';

export interface StoredPart extends PartInput {
  readonly consumableName: string;
  readonly stockUnit: StockUnit;
}

interface PartRow {
  readonly presentation_id: string;
  readonly consumable_id: string;
  readonly name: string;
  readonly stock_unit: StockUnit;
  readonly dispensing: Dispensing;
  readonly containers_per_pack: number;
  readonly content_per_container: string;
  readonly percent: string;
}

const PARTS = `
SELECT q.presentation_id, q.consumable_id, concat_ws(', ', c.name, c.shade, c.size) AS name,
       c.stock_unit, q.dispensing, q.containers_per_pack, q.content_per_container,
       (q.cost_share * 100)::text AS percent
FROM presentation_parts q JOIN consumables c ON c.id = q.consumable_id
WHERE q.practice_id = $1 AND ($2::uuid[] IS NULL OR q.presentation_id = ANY ($2))
ORDER BY q.presentation_id, q.position`;

/** The parts of packs, by the id of the presentation, in their order; of all packs, or of some. */
export async function loadPresentationParts(
  tx: Tx,
  ids: readonly string[] | null = null,
): Promise<Map<string, StoredPart[]>> {
  const found = new Map<string, StoredPart[]>();
  for (const row of await tx.query<PartRow>(PARTS, [tx.practiceId, ids])) {
    const part = {
      consumableId: row.consumable_id,
      consumableName: row.name,
      stockUnit: row.stock_unit,
      dispensing: row.dispensing,
      containersPerPack: row.containers_per_pack,
      contentPerContainer: formatQuantity(quantity(row.content_per_container)),
      sharePercent: formatQuantity(quantity(percentText(row.percent))),
    };
    const parts = found.get(row.presentation_id);
    if (parts) parts.push(part);
    else found.set(row.presentation_id, [part]);
  }
  return found;
}

/** A share of six digits times a hundred has eight of them, the last two nothing. */
const percentText = (percent: string) => percent.replace(/(\.\d{6})0+$/, '$1');

export interface KitParts {
  readonly presentationId: string;
  readonly parts: readonly PartInput[];
}

/** Replaces all parts of each pack. */
export async function replacePresentationParts(tx: Tx, kits: readonly KitParts[]): Promise<void> {
  await tx.query('DELETE FROM presentation_parts WHERE presentation_id = ANY ($1::uuid[])', [
    kits.map((kit) => kit.presentationId),
  ]);
  const rows = kits.flatMap(({ presentationId, parts }) =>
    parts.map((part, i) => ({ ...part, presentationId, position: i + 1 })),
  );
  await tx.query(
    `INSERT INTO presentation_parts (presentation_id, practice_id, position, consumable_id,
       dispensing, containers_per_pack, content_per_container, cost_share)
     SELECT r."presentationId", current_practice(), r.position, r."consumableId", r.dispensing,
       r."containersPerPack", r."contentPerContainer", r."sharePercent" / 100
     FROM json_to_recordset($1::json) AS r("presentationId" uuid, position int,
       "consumableId" uuid, dispensing text, "containersPerPack" int,
       "contentPerContainer" numeric, "sharePercent" numeric)`,
    [JSON.stringify(rows)],
  );
}
