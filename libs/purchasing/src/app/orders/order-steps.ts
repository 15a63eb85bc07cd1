import type { Tx } from '#lib/platform';
import {
  addEvents,
  type HeldOrder,
  holdOrder,
  type NewOrderEvent,
  type OrderChanges,
  saveOrder,
} from '../../db/orders/orders.js';
import { type OrderStep, type Taken, take } from '../../domain/orders/order-life.js';
import { refusePurchasing } from '../../purchasing.refusals.js';

/** Holds an order that is still as its reader saw it. */
export async function holdAsSeen(tx: Tx, id: string, version: number): Promise<HeldOrder> {
  const order = await holdOrder(tx, id);
  if (order.version === version) return order;
  throw refusePurchasing(
    'order_changed_meanwhile',
    'Somebody changed this order after you opened it. Look at it again, then decide.',
    [{ field: 'version', message: `is not the present one, ${order.version}` }],
  );
}

/** What a step makes of an order; refuses it where the order is not so far. */
export function taken(order: HeldOrder, step: OrderStep): Extract<Taken, { ok: true }> {
  const result = take(order, step);
  if (result.ok) return result;
  const { why, field } = result;
  if (field === null) throw refusePurchasing('order_not_so_far', why);
  throw refusePurchasing('order_does_not_fit', why, [{ field, message: 'does not fit the order' }]);
}

export interface Happened {
  readonly changes: OrderChanges;
  readonly events: readonly NewOrderEvent[];
  readonly by: { readonly personId: string; readonly at: Date };
}

/** Writes what happened with an order. */
export async function write(tx: Tx, id: string, { changes, events, by }: Happened): Promise<void> {
  await saveOrder(tx, id, changes);
  await addEvents(tx, id, events, by);
}

/** A number or a word of an event, as it is shown with it. */
export function figure(name: string, value: string, unit = '') {
  return { name, value, unit };
}

export function noteOf(command: { readonly note?: string | null }): string | null {
  return command.note?.trim() ?? null;
}
