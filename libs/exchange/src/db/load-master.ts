import type { Tx } from '#lib/platform';
import type { Thing, Values } from '../domain/plan/merge.js';

type Row = { readonly id: string } & Record<string, string | null>;

async function things(tx: Tx, sql: string): Promise<Thing[]> {
  const rows = await tx.query<Row>(sql);
  return rows.map(({ id, ...values }) => ({ id, values: values as Values }));
}

const YES_NO = (column: string) => `CASE WHEN ${column} THEN 'yes' ELSE 'no' END`;

/** What the book has of each kind of master data, by the keys of the columns of its lists. */
export function loadSuppliers(tx: Tx): Promise<Thing[]> {
  return things(
    tx,
    `SELECT id, name, email, language, customer_number AS "customerNumber",
            ${YES_NO('active')} AS active
     FROM suppliers ORDER BY lower(name)`,
  );
}

export function loadLocations(tx: Tx): Promise<Thing[]> {
  return things(
    tx,
    `SELECT l.id, l.name, l.kind, p.name AS parent, ${YES_NO('l.active')} AS active
     FROM locations l LEFT JOIN locations p ON p.id = l.parent_id ORDER BY lower(l.name)`,
  );
}

export function loadConsumables(tx: Tx): Promise<Thing[]> {
  return things(
    tx,
    `SELECT id, name AS consumable, shade, size, grit, category, stock_unit AS "stockUnit", opacity,
            viscosity, life_after_opening::text AS "lifeAfterOpening",
            life_after_opening_unit AS "lifeUnit", trim_scale(reorder_at)::text AS "reorderAt",
            trim_scale(reorder_up_to)::text AS "reorderUpTo",
            trim_scale(density_g_per_cm3)::text AS density, ${YES_NO('active')} AS "consumableActive"
     FROM consumables ORDER BY lower(name), lower(shade), lower(size), lower(grit), id`,
  );
}

export function loadPresentations(tx: Tx): Promise<Thing[]> {
  return things(
    tx,
    `SELECT p.id, p.consumable_id AS "consumableId", p.name AS presentation, s.name AS supplier,
            p.dispensing, p.containers_per_pack::text AS "containersPerPack",
            trim_scale(p.content_per_container)::text AS "contentPerContainer",
            p.device_identifier AS "deviceIdentifier", p.article_code AS "articleCode",
            trim_scale(p.list_price)::text AS "listPrice", ${YES_NO('p.active')} AS "presentationActive"
     FROM presentations p LEFT JOIN suppliers s ON s.id = p.supplier_id
     ORDER BY lower(p.name), p.id`,
  );
}

export async function placesWithStock(tx: Tx): Promise<Set<string>> {
  return ids(tx, 'SELECT DISTINCT location_id AS id FROM holdings WHERE on_hand > 0');
}

export async function receivedConsumables(tx: Tx): Promise<Set<string>> {
  return ids(
    tx,
    'SELECT id FROM consumables c WHERE EXISTS (SELECT FROM layers l WHERE l.consumable_id = c.id)',
  );
}

export async function receivedPresentations(tx: Tx): Promise<Set<string>> {
  return ids(tx, 'SELECT DISTINCT presentation_id AS id FROM layers');
}

async function ids(tx: Tx, sql: string): Promise<Set<string>> {
  const rows = await tx.query<{ id: string }>(sql);
  return new Set(rows.map((row) => row.id));
}
