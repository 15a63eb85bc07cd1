import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { refusingTaken } from '#lib/catalogue';
import { type Actor, Clock, type IsoDate, newId, UnitOfWork } from '#lib/platform';
import { FeePlanEntity } from '../db/fee-plan.entity.js';
import type { FeeCeiling } from '../domain/plan-share.js';
import { refuseFractions } from './coins.js';
import { type PlanView, planSummary } from './plan-view.js';
import { refuseLater } from './refuse-later.js';
import { PLAN_NAMES } from './taken-names.js';

export interface NewPlan {
  readonly name: string;
  readonly inNetwork: boolean;
  readonly deductible: string;
  readonly yearlyMaximum?: string | null;
  readonly feeCeiling: FeeCeiling;
  readonly ceilingSource: string;
  readonly ceilingCheckedOn: IsoDate;
  readonly downgradeBilled: boolean;
}

@Injectable()
export class CreatePlan {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, key: string, command: NewPlan): Promise<PlanView> {
    const booking = { actor, key, operation: 'POST /api/fee-plans', body: command };
    const done = await this.uow.runOnce(booking, async (tx) => {
      const { deductible, yearlyMaximum = null, ceilingCheckedOn } = command;
      refuseFractions(actor, { deductible, yearlyMaximum });
      refuseLater('ceilingCheckedOn', ceilingCheckedOn, this.clock.today(actor.timeZone));
      const row: FeePlanEntity = {
        id: newId(),
        practiceId: actor.practiceId,
        name: command.name.trim(),
        inNetwork: command.inNetwork,
        deductible,
        yearlyMaximum,
        feeCeiling: command.feeCeiling,
        ceilingSource: command.ceilingSource.trim(),
        ceilingCheckedOn,
        downgradeBilled: command.downgradeBilled,
        active: true,
      };
      await refusingTaken(PLAN_NAMES, () => tx.manager.insert(FeePlanEntity, row));
      const { id, ...details } = planSummary(row);
      const subject = { subjectKind: 'fee-plan', subjectId: id, details };
      await recordAudit(tx, actor, { action: 'fee-plan.created', ...subject });
      return { id, ...details, terms: [] };
    });
    return done.body;
  }
}
