import { Injectable } from '@nestjs/common';
import {
  type Actor,
  addDays,
  Clock,
  decodeCursor,
  invalidFields,
  pageLimit,
  toPage,
  UnitOfWork,
} from '#lib/platform';
import { loadOrderRules } from '../../db/orders/order-rules.js';
import type { OrderPageDto } from '../../http/orders/order-answers.dto.js';
import type { OrderQueryDto } from '../../http/orders/orders.dto.js';
import { ORDER_COLUMNS, ORDER_SOURCES, type OrderSummaryRow, toSummary } from './order-summary.js';

const LIST = `
SELECT ${ORDER_COLUMNS} FROM ${ORDER_SOURCES}
WHERE o.practice_id = $1 AND o.state = ANY ($2)
  AND ($3::uuid IS NULL OR o.supplier_id = $3)
  AND ($4::date IS NULL OR (o.state = 'sent' AND o.expected_on < $4))
  AND ($5::integer IS NULL OR o.number < $5)
ORDER BY o.number DESC LIMIT $6`;

const OPEN = ['draft', 'approved', 'sent'];

/** Orders, the latest number first. */
@Injectable()
export class ListOrders {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, query: OrderQueryDto): Promise<OrderPageDto> {
    const { practiceId, currency } = actor;
    const today = this.clock.today(actor.timeZone);
    const limit = pageLimit(query);
    const after = query.cursor === undefined ? null : numberOf(query.cursor);
    return this.uow.read(practiceId, async (tx) => {
      const { lateAfterDays } = await loadOrderRules(tx);
      const rows = await tx.query<OrderSummaryRow>(LIST, [
        practiceId,
        statesOf(query.state),
        query.supplierId ?? null,
        query.overdue === 'true' ? addDays(today, -lateAfterDays) : null,
        after,
        limit + 1,
      ]);
      const terms = { currency, today, lateAfterDays };
      return toPage(
        rows,
        limit,
        (row) => toSummary(row, terms),
        (row) => [row.number],
      );
    });
  }
}

function statesOf(state: string | undefined): string[] {
  if (state === undefined) return [...OPEN, 'closed', 'cancelled'];
  return state === 'open' ? OPEN : [state];
}

function numberOf(cursor: string): number {
  const [number] = decodeCursor(cursor, 1);
  if (typeof number === 'number' && Number.isInteger(number) && Math.abs(number) < 2 ** 31) {
    return number;
  }
  throw invalidFields([{ field: 'cursor', message: 'is not a cursor of this list' }]);
}
