import { type Money, moneyFromMicro, multiplyRatio } from '#lib/measure';

/** What a supplier asks for a pack, in millionths. */
export interface PackOffer {
  readonly supplierId: string;
  readonly consumableId: string;
  readonly presentationId: string;
  /** Stock units in a pack. */
  readonly content: bigint;
  /** The price last paid, else the list price. */
  readonly packPrice: bigint;
  /** The price paid a year ago; null when nothing was bought until then. */
  readonly yearAgo: bigint | null;
}

export interface ComparedOffer<T extends PackOffer> {
  readonly offer: T;
  readonly unitPrice: Money;
  readonly cheapest: boolean;
  /** Above the cheapest one, as a share; 0 for the cheapest. */
  readonly aboveCheapest: number;
  /** Against a year ago, as a share; null when it is not known. */
  readonly change: number | null;
}

/** Offers of one consumable: the best of each supplier, the cheapest first. */
export function compareOffers<T extends PackOffer>(offers: readonly T[]): ComparedOffer<T>[] {
  const sorted = [...offers].sort(byUnitPrice);
  const best = sorted.filter(
    (offer, i) => sorted.findIndex((other) => other.supplierId === offer.supplierId) === i,
  );
  const [first] = best;
  if (first === undefined) return [];
  return best.map((offer) => ({
    offer,
    unitPrice: unitPriceOf(offer.packPrice, offer.content),
    // Equal prices are equally cheap.
    cheapest: crossed(offer, first) === 0n,
    aboveCheapest: shareOf(crossed(offer, first), first.packPrice * offer.content),
    change: offer.yearAgo === null ? null : shareOf(offer.packPrice - offer.yearAgo, offer.yearAgo),
  }));
}

/** A millionth of the currency is the finest price there is. */
function unitPriceOf(packPrice: bigint, content: bigint): Money {
  return moneyFromMicro(multiplyRatio(packPrice, 1_000_000n, content, 'half-up'));
}

function byUnitPrice(a: PackOffer, b: PackOffer): number {
  const difference = crossed(a, b);
  if (difference !== 0n) return difference < 0n ? -1 : 1;
  return `${a.supplierId}${a.presentationId}` < `${b.supplierId}${b.presentationId}` ? -1 : 1;
}

/** Price per unit compared without a division: below 0 when `a` is cheaper. */
function crossed(a: PackOffer, b: PackOffer): bigint {
  return a.packPrice * b.content - b.packPrice * a.content;
}

/** To a hundredth of a percent; null-safe for things that cost nothing. */
function shareOf(part: bigint, whole: bigint): number {
  if (whole === 0n) return 0;
  return Number((part * 10_000n + (part < 0n ? -whole : whole) / 2n) / whole) / 10_000;
}
