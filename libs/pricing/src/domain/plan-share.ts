import {
  type Money,
  max,
  min,
  moneyFromMicro,
  multiplyRatio,
  type Quantity,
  roundTo,
  subtract,
  ZERO_MONEY,
  ZERO_QUANTITY,
} from '#lib/measure';

/**
 * Whether the plan's allowed fee also binds the practice where the plan does not pay: for work it
 * never covers, for covered work once the yearly maximum is used up, for both, or never.
 */
export const FEE_CEILINGS = ['never', 'non-covered', 'exhausted', 'both'] as const;

export type FeeCeiling = (typeof FEE_CEILINGS)[number];

export interface PlanSettings {
  readonly network: boolean;
  readonly feeCeiling: FeeCeiling;
  /** Whether a network practice may bill the patient what a downgrade leaves unpaid. */
  readonly downgradeBilled: boolean;
}

/** What is asked for one line, and what the plan says about it. */
export interface Charge {
  readonly fee: Money;
  /** The most a network practice may ask; null: the plan names none, so the fee stands. */
  readonly allowed: Money | null;
  /** The allowed fee of the cheaper treatment the plan pays instead; null: no downgrade. */
  readonly alternate: Money | null;
  /** The share the plan pays, from 0 to 1; null or 0: the plan does not cover this. */
  readonly coverage: Quantity | null;
  readonly deductibleApplies: boolean;
}

/** What is left of the patient's year. */
export interface Balance {
  readonly deductibleLeft: Money;
  /** Null: the plan has no yearly maximum. */
  readonly maximumLeft: Money | null;
}

/** Plan + patient + write-off = fee, always. */
export interface PlanShare {
  readonly planPays: Money;
  readonly patientPays: Money;
  readonly writeOff: Money;
  readonly deductibleUsed: Money;
  readonly covered: boolean;
  readonly exhausted: boolean;
}

const ONE = 1_000_000n;

/** Splits one fee over the plan, the patient and the practice. `step` is the smallest coin. */
export function planShare(
  charge: Charge,
  plan: PlanSettings,
  balance: Balance,
  step: bigint,
): PlanShare {
  const { fee } = charge;
  const covered = isCovered(charge);
  const exhausted = covered && isExhausted(balance, step);
  const base = planBase(charge);
  const deductibleUsed =
    covered && charge.deductibleApplies ? min(balance.deductibleLeft, base) : ZERO_MONEY;
  const share = shareOf(subtract(base, deductibleUsed), charge.coverage ?? ZERO_QUANTITY, step);
  const planPays = covered ? capped(share, base, balance, step) : ZERO_MONEY;
  const income = min(fee, incomeLimit(charge, plan, balance, step) ?? fee);
  return {
    planPays,
    patientPays: subtract(income, planPays),
    writeOff: subtract(fee, income),
    deductibleUsed,
    covered,
    exhausted,
  };
}

interface SharedLines {
  readonly shares: readonly PlanShare[];
  /** What was left before each line. */
  readonly before: readonly Balance[];
  readonly left: Balance;
}

/** Several lines one after the other: each uses up what the ones before it left. */
export function planShares(
  charges: readonly Charge[],
  plan: PlanSettings,
  balance: Balance,
  step: bigint,
): SharedLines {
  let left = balance;
  const before: Balance[] = [];
  const shares = charges.map((charge) => {
    before.push(left);
    const share = planShare(charge, plan, left, step);
    left = balanceAfter(left, share);
    return share;
  });
  return { shares, before, left };
}

function balanceAfter(balance: Balance, share: PlanShare): Balance {
  const { deductibleLeft, maximumLeft } = balance;
  return {
    deductibleLeft: subtract(deductibleLeft, share.deductibleUsed),
    maximumLeft: maximumLeft === null ? null : subtract(maximumLeft, share.planPays),
  };
}

/**
 * The most that plan and patient together pay for a line, whatever its fee; null: no limit. So the
 * income of a line is the smaller of its fee and this.
 */
export function incomeLimit(
  charge: Charge,
  plan: PlanSettings,
  balance: Balance,
  step: bigint,
): Money | null {
  if (!plan.network) return null;
  if (!isCovered(charge)) return binds(plan, 'non-covered') ? charge.allowed : null;
  if (isExhausted(balance, step)) return binds(plan, 'exhausted') ? charge.allowed : null;
  const { allowed, alternate } = charge;
  if (plan.downgradeBilled || alternate === null) return allowed;
  return allowed === null ? alternate : min(allowed, alternate);
}

export function withoutPlan(fee: Money): PlanShare {
  const none = { deductibleUsed: ZERO_MONEY, covered: false, exhausted: false };
  return { planPays: ZERO_MONEY, patientPays: fee, writeOff: ZERO_MONEY, ...none };
}

function isCovered({ coverage }: Charge): boolean {
  return coverage !== null && coverage > 0n;
}

/** Less than the smallest coin left is nothing left. */
function isExhausted({ maximumLeft }: Balance, step: bigint): boolean {
  return maximumLeft !== null && maximumLeft < step;
}

function binds(plan: PlanSettings, where: 'non-covered' | 'exhausted'): boolean {
  return plan.feeCeiling === where || plan.feeCeiling === 'both';
}

/** What the plan's share is counted from: never more than the fee itself. */
function planBase({ fee, allowed, alternate }: Charge): Money {
  const upTo = min(fee, allowed ?? fee);
  return min(upTo, alternate ?? upTo);
}

/** Rounded once, to the smallest coin. */
function shareOf(amount: Money, coverage: Quantity, step: bigint): Money {
  return moneyFromMicro(multiplyRatio(amount, coverage, ONE * step, 'half-up') * step);
}

function capped(share: Money, base: Money, { maximumLeft }: Balance, step: bigint): Money {
  const upTo = min(share, base);
  if (maximumLeft === null) return upTo;
  const left = moneyFromMicro(roundTo(maximumLeft, step, 'down'));
  return max(ZERO_MONEY, min(upTo, left));
}
