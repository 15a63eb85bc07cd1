import { type Money, money, moneyFromMicro, multiplyRatio } from '#lib/measure';
import { type Actor, type IsoDate, type Tx, unknownReference } from '#lib/platform';
import { moneyText } from '#lib/stock';
import { FeePlanEntity } from '../db/fee-plan.entity.js';
import { leftOn } from '../db/plan-left.js';
import { loadTerms, toTerm } from '../db/plan-terms.js';
import type { Balance, PlanSettings } from '../domain/plan-share.js';
import type { PlanTerm } from '../domain/plan-terms.js';
import type { QuoteQuestionDto } from '../http/quote.dto.js';
import { refusePricing } from '../pricing.refusals.js';
import { checkBalance } from './check-balance.js';

export interface QuotedPlan {
  readonly row: FeePlanEntity;
  readonly settings: PlanSettings;
  readonly terms: readonly PlanTerm[];
  readonly balance: Balance;
  /** The day for which what is left was recorded; null: stated with the question. */
  readonly asOf: IsoDate | null;
}

/** The plan of a quote with what is left of it. What nobody entered is not guessed. */
export async function loadPlan(
  tx: Tx,
  actor: Actor,
  body: QuoteQuestionDto,
  day: IsoDate,
): Promise<QuotedPlan | null> {
  if (!body.planId) {
    if (!body.balance) return null;
    throw refusePricing('balance_does_not_fit', 'What is left needs a plan it is left of.', [
      { field: 'planId', message: 'must be stated with a balance' },
    ]);
  }
  const row = await tx.manager.findOneBy(FeePlanEntity, { id: body.planId });
  if (!row) throw unknownReference('planId', 'plan');
  if (!row.active) {
    throw refusePricing('not_in_use', 'This plan is no longer in use.', [
      { field: 'planId', message: 'names a plan that is no longer in use' },
    ]);
  }
  const left = await whatIsLeft(tx, actor, row, body, day);
  const { inNetwork: network, feeCeiling, downgradeBilled } = row;
  return {
    row,
    settings: { network, feeCeiling, downgradeBilled },
    terms: (await loadTerms(tx, row.id)).map(toTerm),
    ...left,
  };
}

async function whatIsLeft(
  tx: Tx,
  actor: Actor,
  plan: FeePlanEntity,
  body: QuoteQuestionDto,
  day: IsoDate,
): Promise<Pick<QuotedPlan, 'balance' | 'asOf'>> {
  if (body.balance) {
    checkBalance(actor, plan, body.balance, 'balance.');
    const { deductibleLeft, maximumLeft = null } = body.balance;
    return { balance: balanceOf(deductibleLeft, maximumLeft), asOf: null };
  }
  const { chartReference } = body;
  if (chartReference) {
    const left = await leftOn(tx, { planId: plan.id, chartReference, day, except: [] });
    if (left) {
      const { asOf, ...balance } = left;
      return { balance, asOf };
    }
  }
  const detail =
    'Enter what is left of deductible and maximum for this chart and plan, or state it.';
  throw refusePricing('balance_not_known', detail, [
    { field: 'balance', message: 'must be stated, because nothing was recorded by that day' },
  ]);
}

function balanceOf(deductible: string, maximum: string | null): Balance {
  return {
    deductibleLeft: money(deductible),
    maximumLeft: maximum === null ? null : money(maximum),
  };
}

export interface MinuteCosts {
  readonly chair: Money | null;
  readonly assistant: Money | null;
}

interface RateRow {
  readonly yearly_cost: string;
  readonly practical_minutes: number;
  readonly assistant_rate: string | null;
}

/** What a minute of a chair and of an assistant cost on a day, if the practice ever entered it. */
export async function loadMinuteCosts(tx: Tx, day: IsoDate): Promise<MinuteCosts> {
  const [row] = await tx.query<RateRow>(
    `SELECT yearly_cost, practical_minutes, assistant_rate FROM cost_rates
     WHERE practice_id = current_practice() AND valid_from <= $1
     ORDER BY valid_from DESC LIMIT 1`,
    [day],
  );
  if (!row) return { chair: null, assistant: null };
  const yearly = money(moneyText(row.yearly_cost));
  return {
    chair: moneyFromMicro(multiplyRatio(yearly, 1n, BigInt(row.practical_minutes), 'half-up')),
    assistant: row.assistant_rate === null ? null : money(moneyText(row.assistant_rate)),
  };
}
