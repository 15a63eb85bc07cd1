import {
  formatMoney,
  formatQuantity,
  type Money,
  moneyFromMicro,
  type Quantity,
} from '#lib/measure';
import { newId, type Tx } from '#lib/platform';
import type { Day } from '../domain/candidate.js';

/** A layer that costs another amount than it was booked with. */
export interface RevaluedLayer {
  readonly layerId: string;
  readonly difference: bigint;
  /** Of it, on what had left already. */
  readonly variance: bigint;
  readonly packPrice: Money;
  readonly kitPackPrice: Money | null;
}

export interface RevaluedBy {
  readonly personId: string;
  readonly day: Day;
  /** Null for the correction of a line. */
  readonly invoiceId: string | null;
}

/** Changes what layers cost, each with the entry that says why. Their consumables are locked. */
export async function writeRevaluations(
  tx: Tx,
  by: RevaluedBy,
  layers: readonly RevaluedLayer[],
): Promise<void> {
  if (layers.length === 0) return;
  const doc = layers.map((layer) => ({
    id: newId(),
    layer_id: layer.layerId,
    kind: by.invoiceId === null ? 'correction' : 'invoice',
    difference: formatMoney(moneyFromMicro(layer.difference)),
    amount: formatMoney(moneyFromMicro(layer.variance)),
    pack_price: formatMoney(layer.packPrice),
    kit_pack_price: layer.kitPackPrice === null ? null : formatMoney(layer.kitPackPrice),
  }));
  const [row] = await tx.query<{ done: number }>(
    'SELECT revalue_layers($1, $2, $3, $4::json) AS done',
    [by.personId, by.invoiceId, by.day, JSON.stringify(doc)],
  );
  if (row?.done !== layers.length) throw new Error('A layer to be revalued was not there');
}

/** Which of these layers were revalued: what comes back to them takes its variance along. */
export async function revaluedLayers(
  tx: Tx,
  layerIds: readonly string[],
): Promise<ReadonlySet<string>> {
  const rows = await tx.query<{ layer_id: string }>(
    'SELECT DISTINCT layer_id FROM price_variances WHERE layer_id = ANY($1::uuid[])',
    [layerIds],
  );
  return new Set(rows.map((row) => row.layer_id));
}

/** Variance that is none any more, because the goods it was booked on came back. */
export interface VarianceBack {
  readonly layerId: string;
  readonly amount: bigint;
  readonly quantityGone: Quantity;
}

export async function writeVariancesBack(
  tx: Tx,
  by: { readonly personId: string; readonly day: Day },
  back: readonly VarianceBack[],
): Promise<void> {
  const rows = back.filter(({ amount }) => amount !== 0n);
  if (rows.length === 0) return;
  const doc = rows.map(({ layerId, amount, quantityGone }) => ({
    id: newId(),
    layer_id: layerId,
    amount: formatMoney(moneyFromMicro(amount)),
    quantity_gone: formatQuantity(quantityGone),
  }));
  await tx.query(
    `INSERT INTO price_variances (id, practice_id, layer_id, delivery_id, consumable_id, kind,
       booked_on, difference, amount, to_stock, quantity_gone, recorded_by)
     SELECT r.id, current_practice(), l.id, l.delivery_id, l.consumable_id, 'came back', $2, 0,
       r.amount, -r.amount, r.quantity_gone, $3
     FROM json_to_recordset($1::json) AS r(id uuid, layer_id uuid, amount numeric,
       quantity_gone numeric)
     JOIN layers l ON l.id = r.layer_id`,
    [JSON.stringify(doc), by.day, by.personId],
  );
}
