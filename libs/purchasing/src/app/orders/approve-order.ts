import { Injectable } from '@nestjs/common';
import { isAllowed } from '#lib/access';
import { add, formatMoney, type Money, money } from '#lib/measure';
import { type Actor, type Claimed, Clock, type Tx, UnitOfWork } from '#lib/platform';
import { loadOrderRules } from '../../db/orders/order-rules.js';
import { holdOrders, NOT_APPROVED } from '../../db/orders/orders.js';
import { type ApprovalLimits, approvalLimits } from '../../domain/orders/approval-limits.js';
import type { OrderDto } from '../../http/orders/order-answers.dto.js';
import type { OrderActDto } from '../../http/orders/orders.dto.js';
import { refusePurchasing } from '../../purchasing.refusals.js';
import { budgetLeft } from '../../queries/orders/budget-left.js';
import { OrderReader } from '../../queries/orders/order-reader.js';
import { goodsOf } from './draft-lines.js';
import { figure, holdAsSeen, noteOf, taken, write } from './order-steps.js';

/** Approves an order within what the practice allows, or takes the approval back. */
@Injectable()
export class ApproveOrder {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly reader: OrderReader,
  ) {}

  async approve(
    actor: Actor,
    key: string,
    id: string,
    command: OrderActDto,
  ): Promise<Claimed<OrderDto>> {
    const operation = `POST /api/orders/${id}/approval`;
    return this.uow.runOnce({ actor, key, operation, body: command }, async (tx) => {
      // Two approvals at once must not both take what is left of the budget.
      await holdOrders(tx);
      const order = await holdAsSeen(tx, id, command.version);
      taken(order, { do: 'approve' });
      const total = add(goodsOf(order.lines), money(order.freight));
      const limits = await this.limits(tx, actor, total);
      if (limits.inTheWay !== null && !isAllowed(actor.role, 'orders.exceed')) {
        throw refusePurchasing('above_limits', limits.inTheWay);
      }
      const at = this.clock.now();
      const { personId } = actor;
      await write(tx, id, {
        changes: {
          ...{ state: 'approved', approved_by: personId, approved_at: at },
          approved_total: formatMoney(total),
        },
        events: [
          {
            ...{ kind: 'approved', note: noteOf(command) },
            details: { figures: approvedFigures(total, limits, actor.currency) },
          },
        ],
        by: { personId, at },
      });
      return this.reader.get(tx, actor, id);
    });
  }

  async withdraw(
    actor: Actor,
    key: string,
    id: string,
    command: OrderActDto,
  ): Promise<Claimed<OrderDto>> {
    const operation = `POST /api/orders/${id}/approval-withdrawal`;
    return this.uow.runOnce({ actor, key, operation, body: command }, async (tx) => {
      const order = await holdAsSeen(tx, id, command.version);
      const { events } = taken(order, { do: 'withdraw approval' });
      await write(tx, id, {
        changes: { state: 'draft', ...NOT_APPROVED },
        events: events.map((kind) => ({ kind, note: noteOf(command) })),
        by: { personId: actor.personId, at: this.clock.now() },
      });
      return this.reader.get(tx, actor, id);
    });
  }

  private async limits(tx: Tx, actor: Actor, total: Money): Promise<ApprovalLimits> {
    const { approveUpTo } = await loadOrderRules(tx);
    const { currency } = actor;
    return approvalLimits({
      ...{ total, currency, approveUpTo: approveUpTo === null ? null : money(approveUpTo) },
      budgetLeft: await budgetLeft(tx, this.clock.today(actor.timeZone)),
    });
  }
}

/** Whoever went over a limit is seen to have done so, and by how much. */
function approvedFigures(total: Money, limits: ApprovalLimits, currency: string) {
  const { overLimit, overBudget } = limits;
  return [
    figure('total', formatMoney(total), currency),
    ...(overLimit === null ? [] : [figure('above the limit', formatMoney(overLimit), currency)]),
    ...(overBudget === null ? [] : [figure('above the budget', formatMoney(overBudget), currency)]),
  ];
}
