import { money, ZERO_MONEY } from '#lib/measure';
import type { Fee } from './api/list-fees.js';
import type { Plan } from './api/plans.js';
import { type Left, type Settings, type Share, shareOf } from './share.js';
import { chargeOf, decidingTerms, type Reason, type Term } from './terms.js';

/** What a plan makes of one fee. */
export interface Meaning {
  readonly fee: Fee;
  /** What is asked. */
  readonly price: string;
  readonly reason: Reason;
  readonly share: Share;
  readonly coverage: string | null;
}

type Terms = Pick<Plan, 'inNetwork' | 'feeCeiling' | 'downgradeBilled'> & {
  readonly terms: readonly Term[];
};

const settingsOf = (plan: Omit<Terms, 'terms'>): Settings => ({
  network: plan.inNetwork,
  feeCeiling: plan.feeCeiling,
  downgradeBilled: plan.downgradeBilled,
});

interface Case {
  readonly day: string;
  readonly reason: Reason;
  readonly left: Left;
  readonly step: bigint;
}

/** Undefined: the fee has no price on that day. */
export function meaningOf(plan: Terms, fee: Fee, { day, reason, left, step }: Case) {
  if (fee.current === null) return undefined;
  const price = fee.current.fee;
  const deciding = decidingTerms({ feeId: fee.id, feeClass: fee.feeClass }, plan.terms, day);
  const line = { fee: money(price), feeId: fee.id, feeClass: fee.feeClass, reason };
  const share = shareOf(chargeOf(line, deciding), settingsOf(plan), left, step);
  const coverage = share.covered ? (deciding.covering?.coverage ?? null) : null;
  return { fee, price, reason, share, coverage } satisfies Meaning;
}

/**
 * What a term means for a fee to which it applies, on the first day on which it counts from `day` on:
 * the deductible paid, the whole maximum left. Undefined: no fee with a price shows it.
 */
export function meaningOfTerm(
  plan: Terms & Pick<Plan, 'yearlyMaximum'>,
  term: Term,
  fees: readonly Fee[],
  { today, step }: { readonly today: string; readonly step: bigint },
): Meaning | undefined {
  const day = term.validFrom > today ? term.validFrom : today;
  const maximum = plan.yearlyMaximum === null ? null : money(plan.yearlyMaximum);
  const left: Left = { deductible: ZERO_MONEY, maximum };
  for (const fee of fees) {
    const subject = { feeId: fee.id, feeClass: fee.feeClass };
    const { fees: ofFees, covering } = decidingTerms(subject, plan.terms, day);
    if (ofFees?.id !== term.id && covering?.id !== term.id) continue;
    if (term.feeId === null && !(fee.active && showsTerm(fee, term))) continue;
    const reason = fee.reason ?? ((covering?.reasons[0] ?? 'decay') as Reason);
    const meaning = meaningOf(plan, fee, { day, reason, left, step });
    if (meaning) return meaning;
  }
  return undefined;
}

/** A fee for work of another reason says nothing about what the terms of a class pay. */
const showsTerm = ({ reason }: Fee, { reasons }: Term) =>
  reason === null || reasons.includes(reason);
