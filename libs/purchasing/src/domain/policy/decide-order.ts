import type { Money } from '#lib/measure';
import { remembered } from './demand.js';
import { type ItemFacts, refuseBadFacts, type ShelfState, shelfState } from './item-facts.js';
import { type LimitedPacks, limitPacks } from './limit-packs.js';
import { packsTotal } from './offer.js';
import { adjustedPosition, hardlyUsed, type OfferPlan, planFor, setByHand } from './offer-plan.js';

export type OrderReason =
  | 'at or below the reorder point'
  | 'above the reorder point'
  | 'no use expected'
  | 'no offer'
  | 'stopped by a limit';

export interface OrderDecision {
  readonly facts: ItemFacts;
  readonly shelf: ShelfState;
  readonly yearlyUse: number;
  readonly reason: OrderReason;
  /** Null without an offer. */
  readonly plan: OfferPlan | null;
  readonly limited: LimitedPacks;
  readonly total: Money | null;
}

const YEAR = 365;

/**
 * What to order of one item now, without simulation: which offer, the reorder point, and how many
 * whole packs. Deterministic. Throws RangeError naming the field for facts that cannot be.
 */
export function decideOrder(given: ItemFacts): OrderDecision {
  refuseBadFacts(given);
  const facts = { ...given, demand: remembered(given.demand) };
  const shelf = shelfState(facts);
  const yearlyUse = facts.demand.use(0, YEAR).mean;
  const plans = facts.offers.map((offer) => planFor(facts, shelf, yearlyUse, offer));
  const plan = plans.reduce<OfferPlan | null>((a, b) => (a && !isBetter(b, a) ? a : b), null);
  const common = { facts, shelf, yearlyUse, plan };
  const nothing = { limited: NOTHING, total: null };
  if (!plan) return { ...common, ...nothing, reason: 'no offer' };
  if (adjustedPosition(shelf, plan) > plan.reorderPoint) {
    return { ...common, ...nothing, reason: 'above the reorder point' };
  }
  if (isDead(facts, shelf)) return { ...common, ...nothing, reason: 'no use expected' };
  const limited = limitPacks(facts, shelf, plan);
  const reason = limited.packs === 0 ? 'stopped by a limit' : 'at or below the reorder point';
  const total = limited.packs === 0 ? null : packsTotal(plan.offer, BigInt(limited.packs));
  return { ...common, reason, limited, total };
}

const NOTHING: LimitedPacks = { packs: 0, wanted: 0, bounds: [], aboveCap: false };

/** Nothing owed, nothing set by hand, and hardly a chance that anything is used in a year. */
function isDead(facts: ItemFacts, shelf: ShelfState): boolean {
  const { reorderAt } = setByHand(facts);
  if (shelf.owed > 0 || (reorderAt ?? 0) > 0) return false;
  return hardlyUsed(facts);
}

/** The cheaper year; an offer without a price comes last. */
function isBetter(a: OfferPlan, b: OfferPlan): boolean {
  const [left, right] = [yearOf(a), yearOf(b)];
  if (left === right) return a.offer.offerId < b.offer.offerId;
  return left < right;
}

function yearOf(plan: OfferPlan): number {
  return plan.lot.yearlyCost ?? Number.POSITIVE_INFINITY;
}

/** An answer beyond ten years is none. */
const FAR_AWAY = 3650;

/** So many days the counts last at the mean use of a year: 0 for none left, at most ten years. */
export function daysOfUse(decision: OrderDecision, counts: number): number {
  if (counts <= 0) return 0;
  return Math.min(Math.floor((counts * YEAR) / decision.yearlyUse), FAR_AWAY);
}
