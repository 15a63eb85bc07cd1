import { Injectable, type OnModuleInit } from '@nestjs/common';
import { type Actor, Clock, type Tx } from '#lib/platform';
import {
  DeliveryChecks,
  type DeliveryHandler,
  type DeliveryNote,
  type DeliveryToCheck,
  type OrderedLine,
} from '#lib/stock';
import { type HeldLine, type HeldOrder, holdOrder } from '../../db/orders/orders.js';
import { outstandingOf, settled } from '../../domain/orders/order-life.js';
import { refusePurchasing } from '../../purchasing.refusals.js';
import { write } from './order-steps.js';

/** Says of deliveries which orders they answer, and follows the orders that they answered. */
@Injectable()
export class OrderDeliveries implements DeliveryHandler, OnModuleInit {
  constructor(
    private readonly checks: DeliveryChecks,
    private readonly clock: Clock,
  ) {}

  onModuleInit(): void {
    this.checks.register(this);
  }

  /** Each line must name a line of an order that was sent to this supplier, for the same goods. */
  async check(tx: Tx, _actor: Actor, delivery: DeliveryToCheck): Promise<DeliveryNote[]> {
    const orders = await this.ordersOf(
      tx,
      delivery.lines.map((line) => line.orderLineId),
    );
    const lines = new Map(
      orders.flatMap((order) => order.lines.map((line) => [line.id, { order, line }] as const)),
    );
    const left = new Map<string, number>();
    return delivery.lines.flatMap((each) => {
      const found = lines.get(each.orderLineId);
      if (!found) throw misfit(each, 'names no line of an order of this practice');
      const problem = problemOf(found.order, found.line, { each, delivery });
      if (problem !== undefined) throw misfit(each, problem);
      const wanted = left.get(each.orderLineId) ?? outstandingOf(found.line);
      left.set(each.orderLineId, Math.max(0, wanted - each.packs));
      return each.packs > wanted ? [surplus(each, wanted, found.order)] : [];
    });
  }

  /** An order whose lines are all answered closes by itself, and opens again when one no longer is. */
  async changed(tx: Tx, actor: Actor, orderLineIds: readonly string[]): Promise<void> {
    for (const order of await this.ordersOf(tx, orderLineIds)) {
      const { order: after, events } = settled(order);
      if (events.length === 0) continue;
      await write(tx, order.id, {
        changes: { state: after.state },
        events: events.map((kind) => ({ kind })),
        by: { personId: actor.personId, at: this.clock.now() },
      });
    }
  }

  /** Held in the order of their ids, so that two deliveries never wait for each other. */
  private async ordersOf(tx: Tx, orderLineIds: readonly string[]): Promise<HeldOrder[]> {
    const rows = await tx.query<{ id: string }>(
      `SELECT DISTINCT order_id AS id FROM order_lines
       WHERE practice_id = $1 AND id = ANY ($2::uuid[]) ORDER BY order_id`,
      [tx.practiceId, orderLineIds],
    );
    const orders: HeldOrder[] = [];
    for (const { id } of rows) orders.push(await holdOrder(tx, id));
    return orders;
  }
}

function problemOf(
  order: HeldOrder,
  line: HeldLine,
  { each, delivery }: { readonly each: OrderedLine; readonly delivery: DeliveryToCheck },
): string | undefined {
  if (order.supplierId !== delivery.supplierId) return 'names an order to another supplier';
  if (order.state !== 'sent') return `names an order that is ${order.state}, not one that was sent`;
  if (line.consumableId !== each.consumableId) return 'names a line for another consumable';
  if (order.orderedOn !== null && delivery.receivedOn < order.orderedOn) {
    return `names an order that was sent later, on ${order.orderedOn}`;
  }
  return outstandingOf(line) > 0 ? undefined : 'names a line of which nothing is outstanding';
}

function misfit({ index }: OrderedLine, message: string) {
  return refusePurchasing('order_does_not_fit', 'A line of the delivery answers no order.', [
    { field: `lines[${index}].orderLineId`, message },
  ]);
}

function surplus({ index, packs }: OrderedLine, wanted: number, order: HeldOrder): DeliveryNote {
  const sentence = `Order ${order.number} still wanted ${wanted} of these packs; ${packs} came.`;
  return { index, kind: 'more than ordered', sentence };
}
