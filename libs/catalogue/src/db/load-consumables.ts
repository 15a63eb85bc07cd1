import type { StockUnit } from '#lib/measure';
import type { Tx } from '#lib/platform';

/** What other contexts need to know of a consumable they refer to. */
export interface ConsumableFacts {
  readonly id: string;
  readonly name: string;
  readonly category: string;
  readonly shade: string | null;
  readonly stockUnit: StockUnit;
  readonly active: boolean;
}

const LOAD = `
  SELECT id, name, category, shade, stock_unit AS "stockUnit", active
  FROM consumables WHERE id = ANY($1::uuid[])`;

/** The named consumables by id, in one query; what does not exist is missing. */
export async function loadConsumables(
  tx: Tx,
  ids: readonly string[],
): Promise<ReadonlyMap<string, ConsumableFacts>> {
  if (ids.length === 0) return new Map();
  const wanted = [[...new Set(ids)]];
  const rows = await tx.named<ConsumableFacts>('catalogue.load-consumables', LOAD, wanted);
  return new Map(rows.map((row) => [row.id, row]));
}
