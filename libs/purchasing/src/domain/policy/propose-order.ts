import { type Money, type Quantity, quantityFromMicro } from '#lib/measure';
import { daysOfUse, decideOrder, type OrderDecision, type OrderReason } from './decide-order.js';
import { leadTimeWithin, type Random } from './demand.js';
import { countsOf, finiteQuantity, quantityOf } from './edge.js';
import { explainDecision, type ProposalFigure } from './explain-decision.js';
import { drawArrivals, type Outlook, runOff } from './forward.js';
import { endless, type ItemFacts } from './item-facts.js';
import type { OrderBound } from './limit-packs.js';
import { adjustedPosition } from './offer-plan.js';
import { flagsOf, type ProposalFlag } from './proposal-flags.js';
import { expectedExpiry } from './shelf-queue.js';
import { type Arrival, drawUse, eventDays, type ShelfStart } from './simulate.js';

export interface ProposalOptions {
  /** The same generator state gives the same proposal. */
  readonly random: Random;
  readonly runs?: number;
  readonly horizonDays?: number;
}

/** What the forward simulation expects, with nothing else ordered until the horizon. */
export interface ShelfOutlook {
  readonly stockOutChance: number;
  readonly short: Quantity;
  readonly wasted: Quantity;
  readonly used: Quantity;
  readonly averageStock: Quantity;
}

export interface OrderProposal {
  readonly itemId: string;
  readonly reason: OrderReason;
  readonly offerId: string | null;
  readonly supplierId: string | null;
  readonly packs: bigint;
  readonly quantity: Quantity;
  readonly total: Money | null;
  readonly position: Quantity;
  readonly reorderPoint: Quantity | null;
  readonly orderUpTo: Quantity | null;
  readonly bounds: readonly OrderBound[];
  readonly flags: readonly ProposalFlag[];
  readonly figures: readonly ProposalFigure[];
  /** Expected to expire of all that is there, on its way and (after) proposed. */
  readonly wasteBefore: Quantity;
  readonly wasteAfter: Quantity;
  /** Days at mean use until the shelf is empty, and until the reorder point is reached. */
  readonly runsOutInDays: number;
  readonly neededInDays: number | null;
  readonly horizonDays: number;
  readonly before: ShelfOutlook;
  readonly after: ShelfOutlook;
  readonly decision: OrderDecision;
}

const RUNS = 400;
/** Without an offer there is no next order to wait for. */
const HORIZON = 90;
const LONGEST_HORIZON = 365;

/**
 * The order of one item with everything that explains it. Before and after are compared over the
 * same random use and arrivals: the lots really there and on their way, first expiry first, without
 * and with the order, and no other order until the horizon: the day on which an order after this one
 * could come. Throws RangeError naming the field for facts that cannot be.
 */
export function proposeOrder(given: ItemFacts, options: ProposalOptions): OrderProposal {
  return explainOrder(decideOrder(given), options);
}

/** The same for a decision that is made already. */
export function explainOrder(decision: OrderDecision, options: ProposalOptions): OrderProposal {
  const { facts, plan, limited, shelf } = decision;
  const ordered = plan ? limited.packs * plan.counts.pack : 0;
  const horizonDays = horizonOf(decision, options.horizonDays);
  const outlook = bothOutlooks(facts, decision, ordered, horizonDays, options);
  const exact = (counts: number) => finiteQuantity(counts, facts.countSize);
  const told = (o: Outlook) => ({
    stockOutChance: o.stockOutChance,
    short: exact(o.short),
    wasted: exact(o.wasted),
    used: exact(o.used),
    averageStock: exact(o.averageStock),
  });
  const waste = expectedWaste(facts, decision, ordered);
  return {
    itemId: facts.itemId,
    reason: decision.reason,
    offerId: plan?.offer.offerId ?? null,
    supplierId: plan?.offer.supplierId ?? null,
    packs: BigInt(limited.packs),
    quantity: plan ? exactPacks(plan.offer.packContent, limited.packs) : exact(0),
    total: decision.total,
    position: exact(shelf.position),
    reorderPoint: plan ? quantityOf(plan.reorderPoint, facts.countSize) : null,
    orderUpTo: plan ? quantityOf(plan.orderUpTo, facts.countSize) : null,
    bounds: limited.bounds,
    flags: flagsOf(decision),
    figures: explainDecision(decision),
    wasteBefore: exact(waste.before),
    wasteAfter: exact(waste.after),
    runsOutInDays: daysOfUse(decision, shelf.usable - shelf.owed),
    neededInDays: plan
      ? daysOfUse(decision, adjustedPosition(shelf, plan) - plan.reorderPoint)
      : null,
    horizonDays,
    before: told(outlook.before),
    after: told(outlook.after),
    decision,
  };
}

function exactPacks(content: Quantity, packs: number): Quantity {
  return quantityFromMicro(content * BigInt(packs));
}

/** Until an order after this one could come, at mean use: what is ordered now decides till then. */
function horizonOf(decision: OrderDecision, wanted: number | undefined): number {
  const { facts, plan, shelf, limited } = decision;
  if (!plan) return wanted ?? HORIZON;
  const least = leadTimeWithin(plan.offer.leadTime, 0.95) + facts.reviewDays + 1;
  const ordered = limited.packs * plan.counts.pack;
  const spare = adjustedPosition(shelf, plan) + ordered - plan.reorderPoint;
  const next = daysOfUse(decision, spare) + leadTimeWithin(plan.offer.leadTime, 0.5);
  return Math.max(wanted ?? Math.min(next, LONGEST_HORIZON), least);
}

/** Where the simulation of an item starts. */
export function startOf(facts: ItemFacts): ShelfStart {
  const counts = (quantity: Quantity) => countsOf(quantity, facts.countSize);
  return {
    lots: facts.lots
      .map((lot) => ({ quantity: counts(lot.quantity), usableDays: endless(lot.usableDays) }))
      .filter((lot) => lot.usableDays > 0),
    arrivals: facts.openOrders.map((order) => ({
      quantity: counts(order.quantity),
      when: order.arrival,
      usableDays: endless(order.usableDaysOnArrival),
    })),
    owed: counts(facts.openShortfall),
  };
}

function bothOutlooks(
  facts: ItemFacts,
  decision: OrderDecision,
  ordered: number,
  horizonDays: number,
  options: ProposalOptions,
): { readonly before: Outlook; readonly after: Outlook } {
  const start = startOf(facts);
  const { plan } = decision;
  const runs = options.runs ?? RUNS;
  const order: Arrival[] =
    plan && ordered > 0
      ? [{ quantity: ordered, when: plan.offer.leadTime, usableDays: plan.counts.usableDays }]
      : [];
  const more = { ...start, arrivals: [...start.arrivals, ...order] };
  const days = eventDays([more], horizonDays);
  const paths = drawUse(facts.demand, days, runs, options.random);
  const draws = drawArrivals(more.arrivals.length, runs, options.random);
  const before = runOff(start, paths, draws);
  return { before, after: order.length === 0 ? before : runOff(more, paths, draws) };
}

/** Exact, over every expiry to come: the goods there, on their way, and with the order. */
function expectedWaste(facts: ItemFacts, decision: OrderDecision, ordered: number) {
  const { plan, shelf } = decision;
  const { owed } = shelf;
  const total = (lots: typeof shelf.queue) =>
    expectedExpiry(lots, facts.demand, { owed }).at(-1)?.cumulative ?? 0;
  const before = total(shelf.queue);
  if (!plan || ordered === 0) return { before, after: before };
  const newGoods = { quantity: ordered, usableDays: plan.newGoodsDays };
  return { before, after: total([...shelf.queue, newGoods]) };
}
