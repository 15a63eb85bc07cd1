import { type Money, max, subtract, sum, ZERO_MONEY } from '#lib/measure';
import {
  type Balance,
  type Charge,
  type PlanSettings,
  type PlanShare,
  planShare,
  withoutPlan,
} from './plan-share.js';

/** Who pays what, as a person states it: of a remittance, say. */
export interface StatedShare {
  readonly planPays: Money;
  readonly patientPays: Money;
  readonly writeOff: Money;
  readonly deductibleUsed: Money;
}

export interface ChargeLine {
  readonly charge: Charge;
  readonly planId: string | null;
  /** Null: worked out from the plan's terms; without a plan the patient pays all of it. */
  readonly stated: StatedShare | null;
}

export interface ChargedPlan {
  readonly settings: PlanSettings;
  /** What was left before the visit; null: nobody was ever told. */
  readonly balance: Balance | null;
}

export interface SharedCharges {
  readonly shares: readonly StatedShare[];
  /** What is left after all lines, of every plan whose balance is known. */
  readonly left: ReadonlyMap<string, Balance>;
}

/**
 * Splits the lines of one visit in their order: each uses up what those before it left of its plan,
 * also one whose amounts were stated. A line to be worked out needs its plan's balance.
 */
export function shareCharges(
  lines: readonly ChargeLine[],
  plans: ReadonlyMap<string, ChargedPlan>,
  step: bigint,
): SharedCharges {
  const left = new Map<string, Balance>();
  for (const [id, { balance }] of plans) if (balance) left.set(id, balance);
  const shares = lines.map((line): StatedShare => {
    const share = line.stated ?? workedOut(line, plans, left, step);
    const before = line.planId === null ? undefined : left.get(line.planId);
    if (line.planId !== null && before) left.set(line.planId, usedUp(before, share));
    return share;
  });
  return { shares, left };
}

function workedOut(
  { charge, planId }: ChargeLine,
  plans: ReadonlyMap<string, ChargedPlan>,
  left: ReadonlyMap<string, Balance>,
  step: bigint,
): PlanShare {
  if (planId === null) return withoutPlan(charge.fee);
  const plan = plans.get(planId);
  const balance = left.get(planId);
  if (!plan || !balance) throw new RangeError('A line under a plan needs what is left of it.');
  return planShare(charge, plan.settings, balance, step);
}

/** What a payer really paid may be more than was thought to be left: then nothing is. */
export function usedUp(
  { deductibleLeft, maximumLeft }: Balance,
  used: Pick<StatedShare, 'deductibleUsed' | 'planPays'>,
): Balance {
  const less = (amount: Money, by: Money) => max(ZERO_MONEY, subtract(amount, by));
  return {
    deductibleLeft: less(deductibleLeft, used.deductibleUsed),
    maximumLeft: maximumLeft === null ? null : less(maximumLeft, used.planPays),
  };
}

type StatedField = 'planPays' | 'patientPays' | 'writeOff' | 'deductibleUsed' | 'planId';

export interface StatedProblem {
  readonly field: StatedField;
  readonly message: string;
}

/** What does not fit together in stated amounts: plan + patient + write-off = fee, always. */
export function statedProblems(
  fee: Money,
  stated: StatedShare,
  planId: string | null,
): StatedProblem[] {
  const problems: StatedProblem[] = [];
  const total = sum([stated.planPays, stated.patientPays, stated.writeOff]);
  if (total !== fee) {
    const message = 'does not add up: plan, patient and write-off together must be the fee';
    problems.push({ field: 'patientPays', message });
  }
  if (planId === null && (stated.planPays > 0n || stated.deductibleUsed > 0n)) {
    problems.push({ field: 'planId', message: 'must be stated where a plan pays' });
  }
  if (stated.deductibleUsed > fee) {
    problems.push({ field: 'deductibleUsed', message: 'is more than the fee' });
  }
  return problems;
}
