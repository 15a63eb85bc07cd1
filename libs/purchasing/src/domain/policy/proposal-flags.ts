import type { OrderDecision } from './decide-order.js';
import { leadTimeWithin } from './demand.js';

/** What a person should know or decide before the order goes out, or what was assumed. */
export const PROPOSAL_FLAGS = [
  'smallest order above what is used before it expires',
  'reorder point above what is used before it expires',
  'usable life shorter than lead time and review',
  'comes already expired',
  'may run out before it comes',
  'levels set by hand',
  'price not known',
  'lead time of zero days',
  'no use expected',
] as const;
export type ProposalFlag = (typeof PROPOSAL_FLAGS)[number];

export function flagsOf(decision: OrderDecision): readonly ProposalFlag[] {
  const { facts, plan, shelf, limited, yearlyUse } = decision;
  const raised: ProposalFlag[] = [];
  const raise = (when: boolean, flag: ProposalFlag) => {
    if (when) raised.push(flag);
  };
  if (plan) {
    const { counts, offer, protection } = plan;
    const lead = leadTimeWithin(offer.leadTime, 0.5);
    const covered = protection.cdf(shelf.position);
    raise(limited.aboveCap, PROPOSAL_FLAGS[0]);
    raise(plan.reorderPoint > 0 && plan.reorderPoint > plan.longRunCap, PROPOSAL_FLAGS[1]);
    raise(counts.usableDays < lead + facts.reviewDays, PROPOSAL_FLAGS[2]);
    raise(counts.usableDays === 0, PROPOSAL_FLAGS[3]);
    raise(limited.packs > 0 && covered < facts.target.level, PROPOSAL_FLAGS[4]);
    raise(counts.unitPrice(counts.minimumPacks) === null, PROPOSAL_FLAGS[6]);
    raise(leadTimeWithin(offer.leadTime, 1) === 0, PROPOSAL_FLAGS[7]);
  }
  const byHand = facts.override?.reorderAt ?? facts.override?.orderUpTo ?? null;
  raise(byHand !== null, PROPOSAL_FLAGS[5]);
  raise(yearlyUse === 0 || decision.reason === 'no use expected', PROPOSAL_FLAGS[8]);
  return PROPOSAL_FLAGS.filter((flag) => raised.includes(flag));
}
