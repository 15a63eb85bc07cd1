import { createHash } from 'node:crypto';
import { loadPresentationParts } from '#lib/catalogue';
import type { Tx } from '#lib/platform';
import { nameKey } from '../domain/plan/merge.js';
import {
  type EarlierRow,
  type LotFacts,
  lotKey,
  type OpeningFacts,
  type OpeningRow,
  type PackFacts,
  type StockedConsumable,
} from '../domain/plan/opening-rows.js';
import { micro } from '../domain/plan/plan-consumables.js';
import { loadConsumables, loadPresentations } from './load-master.js';

/** All that rows of opening stock are checked against. */
export async function loadOpeningFacts(tx: Tx, today: string): Promise<OpeningFacts> {
  const packs = new Map<string, PackFacts[]>();
  const add = (consumableId: string, pack: PackFacts) => {
    const of = packs.get(consumableId);
    if (of) of.push(pack);
    else packs.set(consumableId, [pack]);
  };
  const kits = await loadPresentationParts(tx);
  for (const { id, values } of await loadPresentations(tx)) {
    const pack: PackFacts = {
      id,
      name: values.presentation ?? '',
      active: values.presentationActive !== 'no',
      supplier: values.supplier ?? null,
      dispensing: values.dispensing ?? '',
      content: micro(values.contentPerContainer ?? '0'),
      containers: Number(values.containersPerPack),
      listPrice: values.listPrice == null ? null : micro(values.listPrice),
      inKit: false,
    };
    add(values.consumableId ?? '', pack);
    // What came in a kit lies on the shelf as its parts do; the kit's price says nothing of one of them.
    for (const part of kits.get(id) ?? []) {
      add(part.consumableId, {
        ...pack,
        dispensing: part.dispensing,
        content: micro(part.contentPerContainer),
        containers: part.containersPerPack,
        listPrice: null,
        inKit: true,
      });
    }
  }
  const consumables = new Map<string, StockedConsumable>();
  for (const { id, values } of await loadConsumables(tx)) {
    const key = nameKey(values.consumable, values.shade, values.size, values.grit);
    const unit = values.lifeUnit === 'day' ? ('day' as const) : ('month' as const);
    const life = values.lifeAfterOpening ? { value: Number(values.lifeAfterOpening), unit } : null;
    consumables.set(key, {
      id,
      stockUnit: values.stockUnit ?? '',
      packs: packs.get(id) ?? [],
      life,
    });
  }
  return {
    today,
    consumables,
    locations: await byName(tx, 'locations', (row) => ({ id: row.id, active: row.active })),
    suppliers: await byName(tx, 'suppliers', (row) => row.id),
    lots: await loadLots(tx),
  };
}

interface Named {
  readonly id: string;
  readonly name: string;
  readonly active: boolean;
}

async function byName<T>(
  tx: Tx,
  table: 'locations' | 'suppliers',
  of: (row: Named) => T,
): Promise<Map<string, T>> {
  const rows = await tx.query<Named>(`SELECT id, name, active FROM ${table}`);
  return new Map(rows.map((row) => [nameKey(row.name), of(row)]));
}

interface LotRow {
  readonly consumable_id: string;
  readonly lot_number: string;
  readonly status: string;
  readonly expires_on: string | null;
  readonly free: boolean;
}

async function loadLots(tx: Tx): Promise<Map<string, LotFacts>> {
  const rows = await tx.query<LotRow>(
    `SELECT t.consumable_id, t.lot_number, t.status, t.expires_on::text,
            NOT EXISTS (SELECT FROM layers l JOIN deliveries d ON d.id = l.delivery_id
                        WHERE l.lot_id = t.id AND d.reversed_at IS NULL) AS free
     FROM lots t WHERE t.lot_number IS NOT NULL`,
  );
  return new Map(
    rows.map((row) => [
      lotKey(row.consumable_id, row.lot_number),
      { status: row.status, expiresOn: row.expires_on, free: row.free },
    ]),
  );
}

function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/**
 * The rows that were booked before, by their identity: those of earlier files whose delivery still
 * stands, and those written from holdings of this very book.
 */
export async function loadEarlier(
  tx: Tx,
  rows: readonly OpeningRow[],
): Promise<Map<string, EarlierRow>> {
  const byHash = new Map(rows.map((row) => [sha256(row.identity), row]));
  const earlier = new Map<string, EarlierRow>();
  const booked = await tx.query<{ row_key: string; content_hash: string; imported_on: string }>(
    `SELECT r.row_key, r.content_hash, r.imported_on::text
     FROM imported_rows r JOIN layers l ON l.id = r.layer_id JOIN deliveries d ON d.id = l.delivery_id
     WHERE r.row_key = ANY($1) AND d.reversed_at IS NULL`,
    [[...byHash.keys()]],
  );
  for (const { row_key: key, content_hash: hash, imported_on: day } of booked) {
    const row = byHash.get(key);
    if (!row) continue;
    const same = sha256(row.content) === hash;
    earlier.set(row.identity, { content: same ? row.content : '', day });
  }
  await addOwnHoldings(tx, rows, earlier);
  return earlier;
}

const ID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

async function addOwnHoldings(
  tx: Tx,
  rows: readonly OpeningRow[],
  earlier: Map<string, EarlierRow>,
): Promise<void> {
  const byId = new Map(
    rows.flatMap((row) => (row.rowKey !== null && ID.test(row.rowKey) ? [[row.rowKey, row]] : [])),
  );
  const own = await tx.query<{ id: string; on_hand: string; received_on: string }>(
    `SELECT h.id, h.on_hand, l.received_on::text FROM holdings h JOIN layers l ON l.id = h.layer_id
     WHERE h.id = ANY($1::uuid[])`,
    [[...byId.keys()]],
  );
  for (const { id, on_hand: onHand, received_on: day } of own) {
    const row = byId.get(id);
    if (!row) continue;
    const content = micro(onHand) === row.quantity ? row.content : '';
    earlier.set(row.identity, { content, day });
  }
}

/** Remembers which rows became which layers. */
export async function rememberRows(
  tx: Tx,
  rows: readonly OpeningRow[],
  layerIds: readonly string[],
  today: string,
): Promise<void> {
  const written = rows.map((row, i) => ({
    key: sha256(row.identity),
    hash: sha256(row.content),
    layer: layerIds[i],
  }));
  await tx.query(
    `INSERT INTO imported_rows (practice_id, row_key, content_hash, layer_id, imported_on)
     SELECT current_practice(), r.key, r.hash, r.layer, $2
     FROM json_to_recordset($1::json) AS r(key text, hash text, layer uuid)
     ON CONFLICT (practice_id, row_key) DO UPDATE SET content_hash = excluded.content_hash,
       layer_id = excluded.layer_id, imported_on = excluded.imported_on`,
    [JSON.stringify(written), today],
  );
}
