import { type Money, moneyFromMicro, type Quantity, ZERO_MONEY } from '#lib/measure';
import { type LeadTime, refuseBadLeadTime } from './demand.js';
import { amountOf, countsOf, packsOf } from './edge.js';

/** The price of a pack from a number of packs upwards. */
export interface PriceTier {
  /** At least 1; the first tier starts at 1. */
  readonly fromPacks: bigint;
  readonly packPrice: Money;
}

/** A way to buy the consumable. */
export interface SupplyOffer {
  readonly offerId: string;
  readonly supplierId: string;
  /** Stock units in a pack. */
  readonly packContent: Quantity;
  /** Empty when nobody knows the price. */
  readonly tiers: readonly PriceTier[];
  /** all units: every pack at the price reached; incremental: only the packs beyond a break. */
  readonly discount: 'all units' | 'incremental';
  /** The least the supplier sends, at least 1. */
  readonly minimumPacks: bigint;
  /** Days the goods may be used once they are here; null when they do not expire. */
  readonly usableDaysOnArrival: number | null;
  readonly leadTime: LeadTime;
}

type Priced = Pick<SupplyOffer, 'tiers' | 'discount'>;

/** What so many packs cost, exactly; null when there is no price. */
export function packsTotal(offer: Priced, packs: bigint): Money | null {
  const tiers = sortedTiers(offer);
  if (tiers.length === 0) return null;
  if (offer.discount === 'all units') {
    const reached = tiers.filter((tier) => tier.fromPacks <= packs).at(-1) ?? tiers[0];
    return reached ? moneyFromMicro(reached.packPrice * packs) : null;
  }
  let total = 0n;
  for (const [i, tier] of tiers.entries()) {
    const first = i === 0 ? 0n : tier.fromPacks - 1n;
    const next = tiers[i + 1];
    const last = next && next.fromPacks - 1n < packs ? next.fromPacks - 1n : packs;
    if (last > first) total += (last - first) * tier.packPrice;
  }
  return moneyFromMicro(total);
}

function sortedTiers(offer: Priced): readonly PriceTier[] {
  return [...offer.tiers].sort((a, b) => (a.fromPacks < b.fromPacks ? -1 : 1));
}

/** What the statistics need of an offer, in counts and currency units. */
export interface OfferInCounts {
  readonly pack: number;
  readonly minimumPacks: number;
  readonly usableDays: number;
  /** Mean price of a count when so many packs are bought; null without a price. */
  unitPrice(packs: number): number | null;
  /** Price of a count in the tier that so many packs reach; 0 without a price. */
  tierPrice(packs: number): number;
  /** Where a price starts, in packs. */
  readonly breaks: readonly number[];
}

export function inCounts(offer: SupplyOffer, countSize: Quantity): OfferInCounts {
  const pack = countsOf(offer.packContent, countSize);
  const tiers = sortedTiers(offer);
  const reached = (packs: number) =>
    tiers.filter((tier) => packsOf(tier.fromPacks) <= packs).at(-1) ?? tiers[0];
  return {
    pack,
    minimumPacks: packsOf(offer.minimumPacks),
    usableDays: offer.usableDaysOnArrival ?? Number.POSITIVE_INFINITY,
    breaks: tiers.map((tier) => packsOf(tier.fromPacks)),
    tierPrice: (packs) => amountOf(reached(packs)?.packPrice ?? ZERO_MONEY) / pack,
    unitPrice: (packs) => {
      const total = packsTotal(offer, BigInt(packs));
      return total === null ? null : amountOf(total) / (packs * pack);
    },
  };
}

/** Throws RangeError naming the field. */
export function refuseBadOffer(offer: SupplyOffer): void {
  const [first] = sortedTiers(offer);
  if (offer.packContent <= 0n) throw new RangeError('packContent: a pack holds more than zero.');
  if (offer.minimumPacks < 1n) throw new RangeError('minimumPacks: at least 1.');
  if (first && first.fromPacks !== 1n) throw new RangeError('tiers: the first starts at 1 pack.');
  if (offer.tiers.some((tier) => tier.packPrice < 0n)) {
    throw new RangeError('tiers: no price is negative.');
  }
  if (new Set(offer.tiers.map((tier) => tier.fromPacks)).size < offer.tiers.length) {
    throw new RangeError('tiers: two start at the same number of packs.');
  }
  const life = offer.usableDaysOnArrival;
  if (life !== null && !(Number.isInteger(life) && life >= 0)) {
    throw new RangeError('usableDaysOnArrival: whole days, not negative.');
  }
  refuseBadLeadTime(offer.leadTime);
}
