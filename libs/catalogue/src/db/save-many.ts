import type { Tx } from '#lib/platform';

/** The columns of each table of master data that people fill in. */
const COLUMNS = {
  suppliers: ['name', 'email', 'language', 'customer_number', 'active'],
  locations: ['name', 'kind', 'parent_id', 'active'],
  consumables: [
    ...['name', 'category', 'stock_unit', 'shade', 'opacity', 'viscosity', 'size', 'grit'],
    ...['life_after_opening', 'life_after_opening_unit', 'reorder_at', 'reorder_up_to'],
    ...['density_g_per_cm3', 'active'],
  ],
  presentations: [
    ...['consumable_id', 'supplier_id', 'name', 'dispensing', 'containers_per_pack'],
    ...['content_per_container', 'device_identifier', 'article_code', 'list_price', 'active'],
  ],
} as const;

type Table = keyof typeof COLUMNS;

/** A whole row, new or changed; the same columns whichever it is. */
export type MasterRow<T extends Table> = { readonly id: string } & {
  readonly [C in (typeof COLUMNS)[T][number]]: string | number | boolean | null;
};

/**
 * Writes many rows of master data in one statement: new ones, and new values of known ones. Whoever
 * calls it has checked the rules, as the use cases for single rows do; the table's own still hold.
 */
export async function saveMany<T extends Table>(
  tx: Tx,
  table: T,
  rows: readonly MasterRow<T>[],
): Promise<void> {
  if (rows.length === 0) return;
  const columns: readonly string[] = COLUMNS[table];
  const given = columns.map((column) => `r.${column}`).join(', ');
  const set = columns.map((column) => `${column} = excluded.${column}`).join(', ');
  await tx.query(
    `INSERT INTO ${table} (id, practice_id, ${columns.join(', ')})
     SELECT r.id, current_practice(), ${given}
     FROM json_populate_recordset(NULL::${table}, $1::json) AS r
     ON CONFLICT (id) DO UPDATE SET ${set}`,
    [JSON.stringify(rows)],
  );
}
