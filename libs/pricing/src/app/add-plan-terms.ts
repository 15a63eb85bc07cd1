import { Injectable } from '@nestjs/common';
import { recordAudit } from '#lib/access';
import { findToChange } from '#lib/catalogue';
import type { Reason } from '#lib/dentition';
import { type Actor, type IsoDate, UnitOfWork } from '#lib/platform';
import { FeePlanEntity } from '../db/fee-plan.entity.js';
import { insertTerm, loadTerms, type NewTerm } from '../db/plan-terms.js';
import { USUAL_REASONS } from '../domain/plan-terms.js';
import { termProblems } from '../domain/term-problems.js';
import { refusePricing } from '../pricing.refusals.js';
import { checkFee } from './check-references.js';
import { refuseFractions, textOrNull } from './coins.js';
import { type PlanView, planView } from './plan-view.js';

export interface NewPlanTerm {
  readonly feeId?: string | null;
  readonly feeClass?: string | null;
  readonly validFrom: IsoDate;
  readonly allowedFee?: string | null;
  readonly alternateFee?: string | null;
  readonly coverage?: string | null;
  readonly deductibleApplies?: boolean | null;
  readonly reasons?: readonly Reason[] | null;
  readonly cosmeticNote?: string | null;
}

/** What a plan says about a fee or a class from a day on. Nothing said before is changed. */
@Injectable()
export class AddPlanTerms {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, key: string, id: string, command: NewPlanTerm): Promise<PlanView> {
    const operation = `POST /api/fee-plans/${id}/terms`;
    const done = await this.uow.runOnce({ actor, key, operation, body: command }, async (tx) => {
      const plan = await findToChange(tx, FeePlanEntity, id, 'plan');
      const term = termOf(id, command);
      const problems = termProblems(term);
      const [first] = problems;
      if (first) {
        throw refusePricing('terms_do_not_fit', `${first.field} ${first.message}.`, problems);
      }
      const { allowedFee, alternateFee } = term;
      refuseFractions(actor, { allowedFee, alternateFee });
      await checkFee(tx, term.feeId);
      await insertTerm(tx, actor.personId, term);
      const { planId, ...details } = term;
      const subject = { subjectKind: 'fee-plan', subjectId: planId, details };
      await recordAudit(tx, actor, { action: 'fee-plan.terms-added', ...subject });
      return planView(plan, await loadTerms(tx, id));
    });
    return done.body;
  }
}

function termOf(planId: string, command: NewPlanTerm): NewTerm {
  return {
    planId,
    feeId: command.feeId ?? null,
    feeClass: textOrNull(command.feeClass),
    validFrom: command.validFrom,
    allowedFee: command.allowedFee ?? null,
    alternateFee: command.alternateFee ?? null,
    coverage: command.coverage ?? null,
    deductibleApplies: command.deductibleApplies ?? true,
    reasons: command.reasons ?? USUAL_REASONS,
    cosmeticNote: textOrNull(command.cosmeticNote),
  };
}
