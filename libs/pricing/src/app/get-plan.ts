import { Injectable } from '@nestjs/common';
import { findNamed } from '#lib/catalogue';
import { type Actor, UnitOfWork } from '#lib/platform';
import { FeePlanEntity } from '../db/fee-plan.entity.js';
import { loadTerms } from '../db/plan-terms.js';
import { type PlanView, planView } from './plan-view.js';

@Injectable()
export class GetPlan {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, id: string): Promise<PlanView> {
    return this.uow.read(actor.practiceId, async (tx) => {
      const row = await findNamed(tx, FeePlanEntity, id, 'plan');
      return planView(row, await loadTerms(tx, id));
    });
  }
}
