import { Injectable } from '@nestjs/common';
import { formatMoney, money } from '#lib/measure';
import { type Actor, Clock, newId, UnitOfWork } from '#lib/platform';
import { type HeldOrder, NOT_APPROVED, replaceLines } from '../../db/orders/orders.js';
import type { OrderDto } from '../../http/orders/order-answers.dto.js';
import type { ChangedLineDto, OrderChangesDto } from '../../http/orders/orders.dto.js';
import { refusePurchasing } from '../../purchasing.refusals.js';
import { freightByTerms } from '../../queries/orders/freight-by-terms.js';
import { OrderReader } from '../../queries/orders/order-reader.js';
import { checkSupplier, draftLines, goodsOf } from './draft-lines.js';
import { holdAsSeen, noteOf, taken, write } from './order-steps.js';

/** Writes a draft anew. An order that was approved has to be approved again. */
@Injectable()
export class ChangeOrder {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly reader: OrderReader,
  ) {}

  async run(actor: Actor, id: string, command: OrderChangesDto): Promise<OrderDto> {
    return this.uow.run(actor.practiceId, async (tx) => {
      const before = await holdAsSeen(tx, id, command.version);
      const { supplierId } = command;
      await checkSupplier(tx, supplierId);
      const lines = await draftLines(tx, linesThatStay(before, command.lines));
      const { events } = taken(before, { do: 'change', lines });
      await replaceLines(tx, id, lines, new Set(before.lines.map((line) => line.id)));
      const freight = command.freight ?? null;
      await write(tx, id, {
        changes: {
          ...{ state: 'draft', supplier_id: supplierId, ...NOT_APPROVED },
          ...{ reference: command.reference?.trim() ?? null, note: noteOf(command) },
          freight: formatMoney(
            freight === null
              ? await freightByTerms(tx, supplierId, goodsOf(lines))
              : money(freight),
          ),
        },
        events: events.map((kind) => ({ kind })),
        by: { personId: actor.personId, at: this.clock.now() },
      });
      return this.reader.get(tx, actor, id);
    });
  }
}

/** A line keeps its id, and with it why it was proposed, as long as it is about the same pack. */
function linesThatStay(before: HeldOrder, lines: readonly ChangedLineDto[]): ChangedLineDto[] {
  const packs = new Map(before.lines.map((line) => [line.id, line.presentationId]));
  const seen = new Set<string>();
  return lines.map((line, i) => {
    const { id } = line;
    if (id == null) return { ...line, id: newId() };
    if (!packs.has(id) || seen.has(id)) {
      throw refusePurchasing('order_does_not_fit', 'The order has no such line.', [
        { field: `lines[${i}].id`, message: 'names no line of this order, or one twice' },
      ]);
    }
    seen.add(id);
    return packs.get(id) === line.presentationId ? line : { ...line, id: newId() };
  });
}
