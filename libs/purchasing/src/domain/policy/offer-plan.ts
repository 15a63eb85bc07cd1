import type { BehindShelf } from './behind-shelf.js';
import { type Distribution, leadTimeWithin } from './demand.js';
import { amountOf, countsOf } from './edge.js';
import { endless, type ItemFacts, type ShelfState } from './item-facts.js';
import { choosePacks, type LotChoice, yearlyCost } from './lot-choice.js';
import { inCounts, type OfferInCounts, type SupplyOffer } from './offer.js';
import { protectionUse, reorderPoint } from './reorder-point.js';
import { behindShelf, expectedExpiry } from './shelf-queue.js';

/** What one offer makes of the item; all in counts. */
export interface OfferPlan {
  readonly offer: SupplyOffer;
  readonly counts: OfferInCounts;
  /** Use over lead time + review. */
  readonly protection: Distribution;
  readonly reorderPoint: number;
  /** What is never passed in whole packs: the point and the usual order, or as set by hand. */
  readonly orderUpTo: number;
  /** Packs of the cheapest order; 0 for what is hardly used, null under a level set by hand. */
  readonly usualPacks: number | null;
  /** The cheapest order if nothing ever expired. */
  readonly packsWithoutExpiry: number;
  /** Expected to expire before an order placed at the next look could be here. */
  readonly expiringFirst: number;
  readonly lot: LotChoice;
  /** Days from today on which new goods may be used; Infinity when they do not expire. */
  readonly newGoodsDays: number;
  readonly behind: BehindShelf | null;
  /** The most that is used before it expires with the wanted certainty; Infinity without expiry. */
  readonly cap: number;
  /** The same with an empty shelf: the most that there may be in all after an order. */
  readonly longRunCap: number;
  /** What a year costs when each order is for so many packs. */
  costOfYear(packs: number): number;
}

/** On hand + on order - owed, less what is expected to expire before new goods can come. */
export function adjustedPosition(shelf: ShelfState, plan: OfferPlan): number {
  return shelf.position - plan.expiringFirst;
}

/** What one offer makes of an item. */
export function planFor(
  facts: ItemFacts,
  shelf: ShelfState,
  yearlyUse: number,
  offer: SupplyOffer,
): OfferPlan {
  const counts = inCounts(offer, facts.countSize);
  const protection = protectionUse(facts.demand, offer.leadTime, facts.reviewDays);
  const lead = leadTimeWithin(offer.leadTime, 0.5);
  const newGoodsDays = lead + endless(offer.usableDaysOnArrival);
  const window = Math.max(lead + facts.reviewDays - 1, 0);
  const soonGone = expectedExpiry(shelf.queue, facts.demand, { within: window, owed: shelf.owed });
  const expiring = soonGone.at(-1)?.cumulative ?? 0;
  const question = {
    offer: counts,
    yearlyUse,
    orderCost: amountOf(facts.orderCost),
    carryingRate: facts.carryingRate,
  };
  const first = choosePacks({ ...question, behind: null, mostPacks: Number.POSITIVE_INFINITY });
  const at = (packs: number) =>
    Math.max(reorderPoint(facts.target, protection, packs * counts.pack), 0);
  const behind = goodsBehind(facts, shelf, newGoodsDays);
  const empty = goodsBehind(facts, { queue: [], owed: 0 }, newGoodsDays);
  const most = (goods: BehindShelf | null) =>
    goods?.mostUsedUp(facts.limits.expiryCertainty) ?? Number.POSITIVE_INFINITY;
  // The size of a usual order is judged as it will stand then: behind a reorder point of goods.
  const stillAbove = shelf.position - expiring > at(first.packs);
  const lotBehind = stillAbove && empty ? empty.withMoreAhead(at(first.packs)) : behind;
  const mostPacks = Math.floor(most(lotBehind) / counts.pack + 1e-9);
  const asked = { ...question, behind: lotBehind, mostPacks };
  const lot = lotBehind ? choosePacks(asked) : first;
  const { reorderAt, orderUpTo } = setByHand(facts);
  const point = reorderAt ?? at(lot.packs);
  // What is hardly used any more is bought for what is owed, and not for the shelf.
  const usual = hardlyUsed(facts) ? 0 : lot.packs;
  return {
    offer,
    counts,
    protection,
    reorderPoint: point,
    orderUpTo: Math.max(orderUpTo ?? point + usual * counts.pack, point),
    usualPacks: orderUpTo === null ? usual : null,
    packsWithoutExpiry: first.packs,
    expiringFirst: expiring,
    lot,
    newGoodsDays,
    behind,
    cap: most(behind),
    longRunCap: most(empty),
    costOfYear: (packs) => yearlyCost(asked, packs),
  };
}

function goodsBehind(
  facts: ItemFacts,
  shelf: Pick<ShelfState, 'queue' | 'owed'>,
  usableDays: number,
): BehindShelf | null {
  if (usableDays === Number.POSITIVE_INFINITY) return null;
  return behindShelf(shelf.queue, facts.demand, usableDays, shelf.owed);
}

const YEAR = 365;
/** Below this chance of any use in the year to come an empty shelf is left empty. */
const HARDLY_ANY_USE = 0.05;

export function hardlyUsed(facts: ItemFacts): boolean {
  return 1 - facts.demand.use(0, YEAR).cdf(0) < HARDLY_ANY_USE;
}

/** The levels set by hand, in counts. */
export function setByHand(facts: ItemFacts) {
  const { reorderAt = null, orderUpTo = null } = facts.override ?? {};
  return {
    reorderAt: reorderAt === null ? null : countsOf(reorderAt, facts.countSize),
    orderUpTo: orderUpTo === null ? null : countsOf(orderUpTo, facts.countSize),
  };
}
