import { countsOf, packsOf } from './edge.js';
import type { ItemFacts, ShelfState } from './item-facts.js';
import { packsTotal, type SupplyOffer } from './offer.js';
import { adjustedPosition, type OfferPlan } from './offer-plan.js';
import { packsWhenDue } from './order-rules.js';

/** What made the order another size than the level asked for. */
export const ORDER_BOUNDS = [
  'minimum order',
  'price break',
  'expiry',
  'shelf room',
  'budget',
] as const;
export type OrderBound = (typeof ORDER_BOUNDS)[number];

export interface LimitedPacks {
  readonly packs: number;
  /** Whole packs that lift the position above the point, before any limit. */
  readonly wanted: number;
  readonly bounds: readonly OrderBound[];
  /** The smallest order is more than is used before it expires with the wanted certainty. */
  readonly aboveCap: boolean;
}

/**
 * Whole packs of an item that is due, within the limits. Expiry rounds down, but never below the smallest
 * order, which is then flagged; room and budget are hard, and may leave nothing to order.
 */
export function limitPacks(facts: ItemFacts, shelf: ShelfState, plan: OfferPlan): LimitedPacks {
  const { counts, offer } = plan;
  const bounds = new Set<OrderBound>();
  const position = adjustedPosition(shelf, plan);
  const wanted = packsWhenDue({ ...plan, position, pack: counts.pack });
  let packs = wanted;
  if (packs < counts.minimumPacks) {
    packs = counts.minimumPacks;
    bounds.add('minimum order');
  }
  const capPacks = Math.floor(plan.cap / counts.pack + 1e-9);
  const aboveCap = counts.minimumPacks > capPacks;
  if (packs > capPacks) {
    packs = Math.max(capPacks, counts.minimumPacks);
    bounds.add('expiry');
    if (aboveCap) bounds.add('minimum order');
  }
  // The usual order itself may be as small as it is only because more would expire.
  const heldBack = packs === plan.usualPacks && packs < plan.packsWithoutExpiry;
  if (heldBack && packs + 1 > capPacks) bounds.add('expiry');
  const room = roomInPacks(facts, shelf, plan);
  const better = cheaperBreak(offer, packs, Math.min(capPacks, room));
  if (better > packs) {
    packs = better;
    bounds.add('price break');
  }
  if (packs > room) {
    packs = room;
    bounds.add('shelf room');
  }
  const paid = withinBudget(facts, offer, packs);
  if (paid < packs) {
    packs = paid;
    bounds.add('budget');
  }
  const sendable = packs >= counts.minimumPacks ? packs : 0;
  return {
    packs: sendable,
    wanted,
    bounds: ORDER_BOUNDS.filter((bound) => bounds.has(bound)),
    aboveCap: aboveCap && sendable > 0,
  };
}

/** Packs that still fit; what is owed leaves as soon as it comes, so it takes no room. */
export function roomInPacks(facts: ItemFacts, shelf: ShelfState, plan: OfferPlan): number {
  const { shelfRoom } = facts.limits;
  if (shelfRoom === null) return Number.POSITIVE_INFINITY;
  const free = countsOf(shelfRoom, facts.countSize) - Math.max(shelf.position, 0);
  return Math.max(Math.floor(free / plan.counts.pack + 1e-9), 0);
}

/** A number of packs at a later price that costs less in all than the packs wanted; else those. */
function cheaperBreak(offer: SupplyOffer, packs: number, most: number): number {
  const now = packsTotal(offer, BigInt(packs));
  if (now === null) return packs;
  const found = offer.tiers
    .map((tier) => tier.fromPacks)
    .filter((from) => from > BigInt(packs) && packsOf(from) <= most)
    .map((from) => ({ from, total: packsTotal(offer, from) ?? now }))
    .filter((other) => other.total < now)
    .sort((a, b) => (a.total < b.total || (a.total === b.total && a.from < b.from) ? -1 : 1));
  return found[0] ? packsOf(found[0].from) : packs;
}

/** The most packs, no more than asked, that the budget pays; an unknown price costs nothing. */
function withinBudget(facts: ItemFacts, offer: SupplyOffer, packs: number): number {
  const { budget } = facts.limits;
  const cost = (n: number) => packsTotal(offer, BigInt(n));
  const total = cost(packs);
  if (budget === null || total === null || total <= budget) return packs;
  // Under all-units prices fewer packs may cost more, so every smaller number is looked at.
  for (let n = Math.min(packs - 1, 100_000); n > 0; n -= 1) {
    const less = cost(n);
    if (less !== null && less <= budget) return n;
  }
  return 0;
}
