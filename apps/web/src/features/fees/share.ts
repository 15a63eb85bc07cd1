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
} from '#lib/measure';

// The rule by which the service splits a fee, kept here so that terms can be read out while they are
// typed. A property test holds it against the service's own.

export interface Settings {
  readonly network: boolean;
  readonly feeCeiling: 'never' | 'non-covered' | 'exhausted' | 'both';
  readonly downgradeBilled: boolean;
}

/** What is asked, and what a plan says about it; `coverage` null or 0: it does not pay. */
export interface Charge {
  readonly fee: Money;
  readonly allowed: Money | null;
  readonly alternate: Money | null;
  readonly coverage: Quantity | null;
  readonly deductibleApplies: boolean;
}

export interface Left {
  readonly deductible: Money;
  /** Null: the plan has no yearly maximum. */
  readonly maximum: Money | null;
}

/** Plan + patient + write-off = fee; the other figures say how it came to that. */
export interface Share {
  readonly planPays: Money;
  readonly patientPays: Money;
  readonly writeOff: Money;
  readonly covered: boolean;
  readonly exhausted: boolean;
  /** What the plan counts from: the fee, the allowed one or the one of the cheaper treatment. */
  readonly base: Money;
  readonly deductibleUsed: Money;
  /** The plan would pay this if enough of the maximum were left. */
  readonly uncapped: Money;
  /** The most that plan and patient together pay; null: no limit. */
  readonly limit: Money | null;
}

const ONE = 1_000_000n;

/** Splits a fee over plan, patient and practice. `step` is the smallest coin in millionths. */
export function shareOf(charge: Charge, plan: Settings, left: Left, step: bigint): Share {
  const { fee, allowed, alternate, coverage } = charge;
  const covered = coverage !== null && coverage > 0n;
  const exhausted = covered && left.maximum !== null && left.maximum < step;
  const upTo = min(fee, allowed ?? fee);
  const base = min(upTo, alternate ?? upTo);
  const deductibleUsed =
    covered && charge.deductibleApplies ? min(left.deductible, base) : ZERO_MONEY;
  const exact = multiplyRatio(
    subtract(base, deductibleUsed),
    coverage ?? 0n,
    ONE * step,
    'half-up',
  );
  const uncapped = covered ? min(moneyFromMicro(exact * step), base) : ZERO_MONEY;
  const planPays = withinMaximum(uncapped, left, step);
  const limit = limitOf(charge, plan, { covered, exhausted });
  const income = min(fee, limit ?? fee);
  return {
    planPays,
    patientPays: subtract(income, planPays),
    writeOff: subtract(fee, income),
    ...{ covered, exhausted, base, deductibleUsed, uncapped, limit },
  };
}

function withinMaximum(share: Money, { maximum }: Left, step: bigint): Money {
  if (maximum === null) return share;
  return max(ZERO_MONEY, min(share, moneyFromMicro(roundTo(maximum, step, 'down'))));
}

function limitOf(
  { allowed, alternate }: Charge,
  plan: Settings,
  { covered, exhausted }: { readonly covered: boolean; readonly exhausted: boolean },
): Money | null {
  if (!plan.network) return null;
  const binds = (where: 'non-covered' | 'exhausted') =>
    plan.feeCeiling === where || plan.feeCeiling === 'both' ? allowed : null;
  if (!covered) return binds('non-covered');
  if (exhausted) return binds('exhausted');
  if (plan.downgradeBilled || alternate === null) return allowed;
  return allowed === null ? alternate : min(allowed, alternate);
}
