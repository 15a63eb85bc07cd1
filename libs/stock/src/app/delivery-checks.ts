import { Injectable } from '@nestjs/common';
import type { Actor, IsoDate, Tx } from '#lib/platform';
import type { PlannedLine } from '../domain/plan-lines.js';

/** A line of a delivery that says which line of an order it answers. */
export interface OrderedLine {
  /** Of the request, from 0: the field to name is `lines[index].orderLineId`. */
  readonly index: number;
  readonly orderLineId: string;
  readonly presentationId: string;
  readonly consumableId: string;
  /** Packs that go into stock; damaged and missing ones are not counted. */
  readonly packs: number;
}

export interface DeliveryToCheck {
  readonly supplierId: string;
  readonly receivedOn: IsoDate;
  /** Only lines that name a line of an order; never empty. */
  readonly lines: readonly OrderedLine[];
}

/** Something the person who books should know, although it is allowed. */
export interface DeliveryNote {
  readonly index: number;
  /** What it is, for screens that have their own words: 'more than ordered'. */
  readonly kind: string;
  readonly sentence: string;
}

export interface DeliveryHandler {
  /** Throws a refusal that names the field when a line answers no order; answers what to tell. */
  check(tx: Tx, actor: Actor, delivery: DeliveryToCheck): Promise<readonly DeliveryNote[]>;
  /**
   * What has arrived of these lines of orders was changed in this transaction: by a delivery, by its
   * reversal, or by the correction of one of its lines.
   */
  changed(tx: Tx, actor: Actor, orderLineIds: readonly string[]): Promise<void>;
}

/**
 * Stock knows nothing of orders, yet a delivery may answer one. Whoever keeps orders registers here
 * once, when the service starts, and works in the same transaction.
 */
@Injectable()
export class DeliveryChecks {
  private readonly handlers: DeliveryHandler[] = [];

  register(handler: DeliveryHandler): void {
    this.handlers.push(handler);
  }

  async check(tx: Tx, actor: Actor, delivery: DeliveryToCheck): Promise<DeliveryNote[]> {
    if (delivery.lines.length === 0) return [];
    const notes: DeliveryNote[] = [];
    for (const handler of this.handlers) notes.push(...(await handler.check(tx, actor, delivery)));
    return notes;
  }

  async changed(tx: Tx, actor: Actor, orderLineIds: readonly string[]): Promise<void> {
    if (orderLineIds.length === 0) return;
    for (const handler of this.handlers) await handler.changed(tx, actor, orderLineIds);
  }
}

/** The lines that answer orders, each once however many lots it came with. */
export function orderedLines(lines: readonly PlannedLine[]): OrderedLine[] {
  const byIndex = new Map<number, OrderedLine>();
  for (const { index, orderLineId, presentationId, consumableId, packs } of lines) {
    if (orderLineId === null) continue;
    const before = byIndex.get(index)?.packs ?? 0;
    const common = { index, orderLineId, presentationId, consumableId };
    byIndex.set(index, { ...common, packs: before + packs });
  }
  return [...byIndex.values()];
}
