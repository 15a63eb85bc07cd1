import { Injectable } from '@nestjs/common';
import { type ListQuery, pageByName } from '#lib/catalogue';
import { type Actor, type Page, UnitOfWork } from '#lib/platform';
import { FeePlanEntity } from '../db/fee-plan.entity.js';
import { type PlanSummary, planSummary } from './plan-view.js';

@Injectable()
export class ListPlans {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: ListQuery): Promise<Page<PlanSummary>> {
    return this.uow.read(actor.practiceId, (tx) =>
      pageByName(tx, { entity: FeePlanEntity, query, toView: planSummary }),
    );
  }
}
