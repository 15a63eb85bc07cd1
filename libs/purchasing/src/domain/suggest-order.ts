/** A way to buy a consumable, with what a pack of it last cost (else its list price). */
export interface Offer {
  readonly presentationId: string;
  readonly name: string;
  readonly supplierName: string | null;
  /** Stock units in a pack, in millionths. */
  readonly packContent: bigint;
  /** In millionths of the currency; null when nobody knows. */
  readonly packPrice: bigint | null;
}

export interface SuggestedOrder {
  readonly offer: Offer;
  readonly packs: bigint;
  readonly cost: bigint | null;
}

export interface ReorderLevels {
  /** Usable on hand less open shortfalls, in millionths; may be negative. */
  readonly position: bigint;
  readonly reorderAt: bigint;
  readonly reorderUpTo: bigint | null;
}

export function isBelow(levels: ReorderLevels): boolean {
  return levels.position <= levels.reorderAt;
}

/** The offer that costs least per stock unit; one without a price only when there is no other. */
export function cheapest(offers: readonly Offer[]): Offer | undefined {
  return [...offers].sort(byUnitPrice)[0];
}

function byUnitPrice(a: Offer, b: Offer): number {
  if (a.packPrice === null || b.packPrice === null) {
    if (a.packPrice !== b.packPrice) return a.packPrice === null ? 1 : -1;
  } else {
    const [left, right] = [a.packPrice * b.packContent, b.packPrice * a.packContent];
    if (left !== right) return left < right ? -1 : 1;
  }
  return a.presentationId < b.presentationId ? -1 : 1;
}

/** Whole packs that lift the position to the level wanted, at least one. */
export function suggestOrder(
  levels: ReorderLevels,
  offers: readonly Offer[],
): SuggestedOrder | undefined {
  const offer = cheapest(offers);
  if (!offer || !isBelow(levels)) return undefined;
  const missing = (levels.reorderUpTo ?? levels.reorderAt) - levels.position;
  const whole = (missing + offer.packContent - 1n) / offer.packContent;
  const packs = whole > 0n ? whole : 1n;
  return { offer, packs, cost: offer.packPrice === null ? null : offer.packPrice * packs };
}
