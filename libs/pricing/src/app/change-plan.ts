import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { changesBetween, findToChange, refusingTaken } from '#lib/catalogue';
import { type Actor, Clock, type IsoDate, UnitOfWork } from '#lib/platform';
import { FeePlanEntity } from '../db/fee-plan.entity.js';
import { loadTerms } from '../db/plan-terms.js';
import type { FeeCeiling } from '../domain/plan-share.js';
import { refusePricing } from '../pricing.refusals.js';
import { refuseFractions } from './coins.js';
import { type PlanView, planSummary, planView } from './plan-view.js';
import { refuseLater } from './refuse-later.js';
import { PLAN_NAMES } from './taken-names.js';

/** What is left out stays; null for the maximum: the plan has none any more. */
export interface PlanChanges {
  readonly name?: string | null;
  readonly inNetwork?: boolean | null;
  readonly deductible?: string | null;
  readonly yearlyMaximum?: string | null;
  readonly feeCeiling?: FeeCeiling | null;
  readonly ceilingSource?: string | null;
  readonly ceilingCheckedOn?: IsoDate | null;
  readonly downgradeBilled?: boolean | null;
  readonly active?: boolean | null;
}

@Injectable()
export class ChangePlan {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor, id: string, command: PlanChanges): Promise<PlanView> {
    const { deductible, yearlyMaximum, ceilingCheckedOn } = command;
    refuseFractions(actor, { deductible, yearlyMaximum });
    if (ceilingCheckedOn) {
      refuseLater('ceilingCheckedOn', ceilingCheckedOn, this.clock.today(actor.timeZone));
    }
    return this.uow.run(actor.practiceId, async (tx) => {
      const before = await findToChange(tx, FeePlanEntity, id, 'plan');
      refuseUnsourced(before, command);
      const changed = {
        name: command.name?.trim() ?? before.name,
        inNetwork: command.inNetwork ?? before.inNetwork,
        deductible: deductible ?? before.deductible,
        yearlyMaximum: yearlyMaximum === undefined ? before.yearlyMaximum : yearlyMaximum,
        feeCeiling: command.feeCeiling ?? before.feeCeiling,
        ceilingSource: command.ceilingSource?.trim() ?? before.ceilingSource,
        ceilingCheckedOn: ceilingCheckedOn ?? before.ceilingCheckedOn,
        downgradeBilled: command.downgradeBilled ?? before.downgradeBilled,
        active: command.active ?? before.active,
      };
      const after: FeePlanEntity = { ...before, ...changed };
      const changes = changesBetween(planSummary(before), planSummary(after));
      if (changes) {
        await refusingTaken(PLAN_NAMES, () => tx.manager.update(FeePlanEntity, { id }, changed));
        const subject = { subjectKind: 'fee-plan', subjectId: id, details: changes };
        await recordAudit(tx, actor, { action: 'fee-plan.changed', ...subject });
      }
      return planView(after, await loadTerms(tx, id));
    });
  }
}

/** Another ceiling needs its own source and day: the old note says nothing about it. */
function refuseUnsourced(before: FeePlanEntity, command: PlanChanges): void {
  if (!command.feeCeiling || command.feeCeiling === before.feeCeiling) return;
  const fields = (['ceilingSource', 'ceilingCheckedOn'] as const)
    .filter((field) => !command[field])
    .map((field) => ({ field, message: 'must be stated with another fee ceiling' }));
  if (fields.length === 0) return;
  const detail = 'Say who states the new fee ceiling, and when that was looked up.';
  throw refusePricing('terms_do_not_fit', detail, fields);
}
