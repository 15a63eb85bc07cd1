import type { BehindShelf } from './behind-shelf.js';
import type { OfferInCounts } from './offer.js';

/** What decides how many packs are best, in counts and currency units. */
export interface LotQuestion {
  readonly offer: OfferInCounts;
  /** Expected use in a year. */
  readonly yearlyUse: number;
  readonly orderCost: number;
  readonly carryingRate: number;
  /** What becomes of new goods; null when they do not expire. */
  readonly behind: BehindShelf | null;
  /** The most packs that are used up in time with the wanted certainty; may be Infinity. */
  readonly mostPacks: number;
}

export interface LotChoice {
  readonly packs: number;
  /** Goods, orders, keeping and expected waste of a year; null without a price. */
  readonly yearlyCost: number | null;
  /** The size that costs alone would choose, in counts; null without a price. */
  readonly economicLot: number | null;
}

/** Without a price there is nothing to weigh: an order then covers so many days. */
export const COVER_DAYS = 28;

/** Up to here every number of packs is tried. */
const TRY_ALL = 64;

/**
 * The number of packs with the cheapest year, from the smallest order up to what is used before it
 * expires (or the smallest order, if that is more). Counts goods at the price reached, orders,
 * keeping, and the price of what is expected to expire.
 */
export function choosePacks(question: LotQuestion): LotChoice {
  const { offer, yearlyUse } = question;
  const least = offer.minimumPacks;
  const most = Math.max(question.mostPacks, least);
  const price = offer.unitPrice(least);
  if (price === null || price === 0) {
    const covers = Math.ceil((yearlyUse * COVER_DAYS) / 365 / offer.pack - 1e-9);
    const packs = Math.min(Math.max(covers, least), most);
    return { packs, yearlyCost: price, economicLot: null };
  }
  if (yearlyUse === 0) return { packs: least, yearlyCost: 0, economicLot: 0 };
  const starts = [least, ...offer.breaks.filter((b) => b > least && b <= most)];
  const candidates = starts.flatMap((start) => {
    const after = offer.breaks.find((b) => b > start) ?? Number.POSITIVE_INFINITY;
    return cheapestWithin(question, start, Math.min(after - 1, most));
  });
  const best = candidates.reduce((a, b) => (isBetter(b, a) ? b : a));
  return { packs: best.packs, yearlyCost: best.cost, economicLot: lotAt(question, best.packs) };
}

/** Goods, orders, keeping and expected waste of a year when each order is for so many packs. */
export function yearlyCost(question: LotQuestion, packs: number): number {
  const { offer, yearlyUse, behind } = question;
  const size = packs * offer.pack;
  const price = offer.unitPrice(packs) ?? 0;
  const waste = behind ? behind.expectedLeft(size) : 0;
  // What expires has to be bought again: use of a year needs so many orders.
  const orders = yearlyUse / size;
  return (
    price * yearlyUse +
    orders * question.orderCost +
    (question.carryingRate * price * size) / 2 +
    orders * waste * price
  );
}

interface Candidate {
  readonly packs: number;
  readonly cost: number;
}

function cheapestWithin(question: LotQuestion, low: number, high: number): readonly Candidate[] {
  const cost = (packs: number) => ({ packs, cost: yearlyCost(question, packs) });
  const economic = lotAt(question, low) / question.offer.pack;
  // Nothing beyond the economic lot is cheaper: from there on keeping and waste only grow.
  const top = Math.min(high, Math.max(low, Math.ceil(economic) + 1));
  if (top - low <= TRY_ALL) {
    return Array.from({ length: top - low + 1 }, (_, i) => cost(low + i));
  }
  let [from, to] = [low, top];
  while (to - from > 3) {
    const third = Math.floor((to - from) / 3);
    const [left, right] = [cost(from + third), cost(to - third)];
    if (left.cost <= right.cost) to = right.packs;
    else from = left.packs;
  }
  const middle = Array.from({ length: to - from + 1 }, (_, i) => cost(from + i));
  return [cost(low), cost(top), ...middle];
}

/**
 * The economic lot in counts at the price paid for so many packs. Under incremental prices what the
 * lower price does not apply to works like a dearer order.
 */
function lotAt(question: LotQuestion, packs: number): number {
  const { offer } = question;
  const size = packs * offer.pack;
  const price = offer.tierPrice(packs);
  if (!(price > 0)) return size;
  const fixed = Math.max(((offer.unitPrice(packs) ?? 0) - price) * size, 0);
  const order = question.orderCost + fixed;
  return Math.sqrt((2 * order * question.yearlyUse) / (question.carryingRate * price));
}

function isBetter(a: Candidate, b: Candidate): boolean {
  return a.cost < b.cost || (a.cost === b.cost && a.packs < b.packs);
}
