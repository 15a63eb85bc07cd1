import {
  type Money,
  moneyFromMicro,
  multiplyRatio,
  type Quantity,
  quantityFromMicro,
  subtract,
} from '#lib/measure';
import { remembered } from './demand.js';
import { amountOf, countsOf, expectedMoney, finiteQuantity } from './edge.js';
import { type ItemFacts, refuseBadFacts, shelfState } from './item-facts.js';
import { packsTotal, type SupplyOffer } from './offer.js';
import { type OfferPlan, planFor } from './offer-plan.js';

/** What a bulk purchase costs and saves against the usual way of buying. */
export interface BulkComparison {
  readonly quantity: Quantity;
  readonly total: Money;
  /** The same quantity bought the usual way, at the usual order size. */
  readonly usualTotal: Money;
  /** What the price list promises: usualTotal - total. */
  readonly paperSaving: Money;
  readonly expectedWaste: Quantity;
  readonly expectedUsed: Quantity;
  /** The bulk price of what is expected to be thrown away. */
  readonly wasteCost: Money;
  /** What keeping more for longer costs. */
  readonly extraKeeping: Money;
  /** Orders that are not needed in the meantime. */
  readonly savedOrders: Money;
  /** What the used part would have cost the usual way, less all that the bulk costs. */
  readonly realSaving: Money;
  /** What a unit costs that is really used; null when none is expected to be. */
  readonly costPerUsedUnit: Money | null;
  readonly chanceUsedUp: number;
  /** The real saving when little is used before the expiry (1 case in 10), half the time, and much. */
  readonly savingRange: { readonly p10: Money; readonly p50: Money; readonly p90: Money };
  /** Days that the quantity lasts at mean use, behind what is there and on its way; at most ten years. */
  readonly coverDays: number;
  readonly coverAheadDays: number;
  /** Days from today on which the goods may be used; null when they do not expire. */
  readonly usableDays: number | null;
  readonly worthIt: boolean;
}

const YEAR = 365;
/** Goods that do not expire are reckoned with for so long; what is left then counts as lost. */
const LONGEST_YEARS = 5;

/**
 * What a bulk offer really saves once expiry is counted: the lots there and on their way go first,
 * use is random, and what is left at its expiry is lost. Null when one of the prices is not known.
 * Throws RangeError for facts that cannot be or fewer than one pack.
 */
export function compareBulk(
  given: ItemFacts,
  usual: SupplyOffer,
  bulk: { readonly offer: SupplyOffer; readonly packs: bigint },
): BulkComparison | null {
  const offers = [forFiveYears(usual), forFiveYears(bulk.offer)] as const;
  const facts = { ...given, demand: remembered(given.demand), offers };
  refuseBadFacts(facts);
  if (bulk.packs < 1n) throw new RangeError('packs: at least 1.');
  const shelf = shelfState(facts);
  const yearlyUse = facts.demand.use(0, YEAR).mean;
  const usualPlan = planFor(facts, shelf, yearlyUse, offers[0]);
  const bulkPlan = planFor(facts, shelf, yearlyUse, offers[1]);
  const total = packsTotal(bulk.offer, bulk.packs);
  const quantity = quantityFromMicro(bulk.offer.packContent * bulk.packs);
  const usualTotal = usualPriceOf(usual, usualPlan, quantity);
  if (total === null || usualTotal === null) return null;
  const size = countsOf(quantity, facts.countSize);
  const { behind } = bulkPlan;
  const left = behind?.expectedLeft(size) ?? 0;
  const price = amountOf(total) / size;
  const outcome = (usedCounts: number) =>
    outcomeOf(facts, { yearlyUse, usualPlan, bulkPlan }, { quantity, usedCounts, price });
  const saving = (usedCounts: number) => {
    const { used, extraKeeping, savedOrders } = outcome(usedCounts);
    return moneyFromMicro(share(usualTotal, used, quantity) - total - extraKeeping + savedOrders);
  };
  const usedWith = (chance: number) =>
    Math.min(behind?.mostUsedUp(chance) ?? Number.POSITIVE_INFINITY, size);
  const { used, waste, extraKeeping, savedOrders } = outcome(size - left);
  const realSaving = saving(size - left);
  return {
    ...{ quantity, total, usualTotal, extraKeeping, savedOrders, realSaving },
    paperSaving: moneyFromMicro(usualTotal - total),
    expectedWaste: waste,
    expectedUsed: used,
    wasteCost: share(total, waste, quantity),
    costPerUsedUnit:
      used > 0n ? moneyFromMicro(multiplyRatio(total, 1_000_000n, used, 'half-up')) : null,
    chanceUsedUp: behind?.usedUp(size) ?? 1,
    savingRange: {
      p10: saving(usedWith(0.9)),
      p50: saving(usedWith(0.5)),
      p90: saving(usedWith(0.1)),
    },
    coverDays: daysAt(yearlyUse, size),
    coverAheadDays: daysAt(yearlyUse, Math.max(shelf.position, 0)),
    usableDays: bulk.offer.usableDaysOnArrival === null ? null : bulkPlan.newGoodsDays,
    worthIt: realSaving > 0n,
  };
}

/** What does not expire, but lies for five years, was not worth buying either. */
function forFiveYears(offer: SupplyOffer): SupplyOffer {
  return { ...offer, usableDaysOnArrival: offer.usableDaysOnArrival ?? LONGEST_YEARS * YEAR };
}

function share(amount: Money, part: Quantity, whole: Quantity): Money {
  return moneyFromMicro(multiplyRatio(amount, part, whole, 'half-up'));
}

/** An answer beyond ten years is none. */
const FAR_AWAY = 3650;

function daysAt(yearlyUse: number, counts: number): number {
  if (counts === 0) return 0;
  return Math.min(Math.round((counts * YEAR) / yearlyUse), FAR_AWAY);
}

/** What comes of the bulk when so much of it is used. */
function outcomeOf(
  facts: ItemFacts,
  plans: {
    readonly yearlyUse: number;
    readonly usualPlan: OfferPlan;
    readonly bulkPlan: OfferPlan;
  },
  bulk: { readonly quantity: Quantity; readonly usedCounts: number; readonly price: number },
) {
  const { yearlyUse, usualPlan, bulkPlan } = plans;
  const { usedCounts, price } = bulk;
  const size = countsOf(bulk.quantity, facts.countSize);
  const usualSize = usualPlan.lot.packs * usualPlan.counts.pack;
  const usualPrice = usualPlan.counts.unitPrice(usualPlan.lot.packs) ?? 0;
  const life = Math.min(bulkPlan.counts.usableDays / YEAR, LONGEST_YEARS);
  const years = yearlyUse > 0 ? Math.min(size / yearlyUse, life) : life;
  // Between the two ends the bulk lies at half its size above what is left over at the end.
  const bulkStock = size - usedCounts / 2;
  const keeping = price * bulkStock - (usualPrice * usualSize) / 2;
  const orders = Math.max(usedCounts / usualSize - 1, 0);
  const waste = finiteQuantity(size - usedCounts, facts.countSize);
  return {
    waste,
    used: subtract(bulk.quantity, waste),
    extraKeeping: expectedMoney(keeping * facts.carryingRate * years),
    savedOrders: expectedMoney(orders * amountOf(facts.orderCost)),
  };
}

/** The quantity at the mean price of the usual order. */
function usualPriceOf(usual: SupplyOffer, plan: OfferPlan, quantity: Quantity): Money | null {
  const packs = BigInt(plan.lot.packs);
  const total = packsTotal(usual, packs);
  if (total === null) return null;
  return moneyFromMicro(multiplyRatio(total, quantity, usual.packContent * packs, 'half-up'));
}
