import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { formatMoney } from '#lib/measure';
import { type Actor, Clock, type Tx, UnitOfWork } from '#lib/platform';
import { loadOrderRules, type OrderRules, saveOrderRules } from '../../db/orders/order-rules.js';
import type { OrderRulesAnswerDto, OrderRulesDto } from '../../http/orders/order-rules.dto.js';
import { budgetLeft } from '../../queries/orders/budget-left.js';

/** What a practice decided about its orders: budget, limits, when one is late, where goods go. */
@Injectable()
export class OrderRulesDesk {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async get(actor: Actor): Promise<OrderRulesAnswerDto> {
    return this.uow.read(actor.practiceId, (tx) => this.answer(tx, actor));
  }

  async set(actor: Actor, command: OrderRulesDto): Promise<OrderRulesAnswerDto> {
    const after: OrderRules = {
      monthlyBudget: command.monthlyBudget ?? null,
      approveUpTo: command.approveUpTo ?? null,
      lateAfterDays: command.lateAfterDays,
      deliverTo: command.deliverTo?.trim() ?? null,
    };
    return this.uow.run(actor.practiceId, async (tx) => {
      const before = await loadOrderRules(tx);
      await saveOrderRules(tx, after);
      await recordAudit(tx, actor, {
        ...{ action: 'order-rules.changed', subjectKind: 'practice', subjectId: actor.practiceId },
        details: { before, after },
      });
      return this.answer(tx, actor);
    });
  }

  private async answer(tx: Tx, actor: Actor): Promise<OrderRulesAnswerDto> {
    const left = await budgetLeft(tx, this.clock.today(actor.timeZone));
    return {
      ...(await loadOrderRules(tx)),
      budgetLeft: left === null ? null : formatMoney(left),
    };
  }
}
