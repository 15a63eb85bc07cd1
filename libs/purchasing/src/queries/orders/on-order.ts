import type { IsoDate, Tx } from '#lib/platform';
import { microOf } from '#lib/stock';
import { OUTSTANDING } from '../../db/orders/arrived.js';

/** Goods on their way: what a line of a sent order still has to bring. */
export interface OnOrder {
  readonly consumableId: string;
  readonly orderId: string;
  readonly supplierId: string;
  /** In millionths of the stock unit. */
  readonly quantity: bigint;
  /** The supplier's word or else reckoned when it was sent; it may have passed. */
  readonly expectedOn: IsoDate;
}

const ON_ORDER = `
SELECT consumable_id, order_id, supplier_id, expected_on::text AS expected_on,
       sum(packs * pack_content) AS quantity
FROM (${OUTSTANDING}) waiting
GROUP BY consumable_id, order_id, supplier_id, expected_on ORDER BY expected_on, order_id`;

interface OnOrderRow {
  readonly consumable_id: string;
  readonly order_id: string;
  readonly supplier_id: string;
  readonly expected_on: string;
  readonly quantity: string;
}

/** What sent orders still have to bring, the earliest day first. */
export async function onOrder(tx: Tx): Promise<OnOrder[]> {
  const rows = await tx.query<OnOrderRow>(ON_ORDER, [tx.practiceId]);
  return rows.map((row) => ({
    consumableId: row.consumable_id,
    orderId: row.order_id,
    supplierId: row.supplier_id,
    quantity: microOf(row.quantity),
    expectedOn: row.expected_on,
  }));
}
