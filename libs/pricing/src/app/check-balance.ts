import { money } from '#lib/measure';
import type { Actor, FieldError } from '#lib/platform';
import type { FeePlanEntity } from '../db/fee-plan.entity.js';
import { refusePricing } from '../pricing.refusals.js';
import { refuseFractions } from './coins.js';

interface Left {
  readonly deductibleLeft: string;
  readonly maximumLeft?: string | null;
}

type Limits = Pick<FeePlanEntity, 'deductible' | 'yearlyMaximum'>;

/** Refuses what cannot be left of a plan. `path` is where in the request it stands. */
export function checkBalance(actor: Actor, plan: Limits, left: Left, path = ''): void {
  const problems: FieldError[] = [];
  const add = (field: string, message: string) =>
    problems.push({ field: `${path}${field}`, message });
  const maximumLeft = left.maximumLeft ?? null;
  refuseFractions(actor, {
    [`${path}deductibleLeft`]: left.deductibleLeft,
    [`${path}maximumLeft`]: maximumLeft,
  });
  if (money(left.deductibleLeft) > money(plan.deductible)) {
    add('deductibleLeft', "is more than the plan's whole deductible");
  }
  if (maximumLeft === null && plan.yearlyMaximum !== null) {
    add('maximumLeft', 'must be stated, because the plan has a yearly maximum');
  }
  if (maximumLeft !== null && plan.yearlyMaximum === null) {
    add('maximumLeft', 'must be left out, because the plan has no yearly maximum');
  }
  const most = plan.yearlyMaximum;
  if (maximumLeft !== null && most !== null && money(maximumLeft) > money(most)) {
    add('maximumLeft', "is more than the plan's whole maximum");
  }
  const [first] = problems;
  if (!first) return;
  throw refusePricing('balance_does_not_fit', `${first.field} ${first.message}.`, problems);
}
