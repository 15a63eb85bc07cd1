import type { Money, Quantity } from '#lib/measure';
import { packsTotal, type SupplyOffer } from './offer.js';

/** What tells consumables apart; null where one does not apply. */
export interface ProductAttributes {
  readonly itemId: string;
  readonly name: string;
  readonly category: string;
  readonly unit: string;
  readonly shade: string | null;
  readonly opacity: string | null;
  readonly viscosity: string | null;
  readonly size: string | null;
  readonly grit: string | null;
}

/** The same product with what is free to use and how it can be bought. */
export interface SubstituteCandidate {
  readonly attributes: ProductAttributes;
  /** Usable on hand above its own reorder point; not negative. */
  readonly spare: Quantity;
  readonly offers: readonly SupplyOffer[];
}

/**
 * Something a person may choose instead; never taken by itself.
 * another pack: the same consumable bought otherwise.
 * another shade: the same product in a shade that the dentist has to agree to.
 */
export type Substitute =
  | {
      readonly kind: 'another pack';
      readonly itemId: string;
      readonly offerId: string;
      readonly supplierId: string;
      readonly packContent: Quantity;
      readonly packPrice: Money | null;
      readonly needsConsent: true;
    }
  | {
      readonly kind: 'another shade';
      readonly itemId: string;
      readonly shade: string;
      readonly spare: Quantity;
      readonly offerIds: readonly string[];
      readonly needsConsent: true;
    };

/**
 * Other pack sizes of the consumable itself, the cheapest per unit first, then other shades of the
 * same product (all attributes but the shade alike), the one with most to spare first. A shade is
 * offered only when there is some to spare or it can be bought. Ties go by id.
 */
export function substitutesFor(
  item: ProductAttributes,
  ordered: SupplyOffer | null,
  offers: readonly SupplyOffer[],
  others: readonly SubstituteCandidate[],
): readonly Substitute[] {
  const packs = offers
    .filter((offer) => offer.offerId !== ordered?.offerId)
    .filter((offer) => offer.packContent !== ordered?.packContent)
    .sort(byUnitPrice)
    .map((offer) => ({
      kind: 'another pack' as const,
      itemId: item.itemId,
      offerId: offer.offerId,
      supplierId: offer.supplierId,
      packContent: offer.packContent,
      packPrice: packsTotal(offer, 1n),
      needsConsent: true as const,
    }));
  return [...packs, ...otherShades(item, others)];
}

function otherShades(
  item: ProductAttributes,
  others: readonly SubstituteCandidate[],
): readonly Substitute[] {
  return others
    .filter((other) => isOtherShade(item, other.attributes))
    .filter((other) => other.spare > 0n || other.offers.length > 0)
    .sort((a, b) => {
      if (a.spare !== b.spare) return a.spare > b.spare ? -1 : 1;
      return a.attributes.itemId < b.attributes.itemId ? -1 : 1;
    })
    .map((other) => ({
      kind: 'another shade' as const,
      itemId: other.attributes.itemId,
      shade: other.attributes.shade ?? '',
      spare: other.spare,
      offerIds: other.offers.map((offer) => offer.offerId).sort(),
      needsConsent: true as const,
    }));
}

const SAME = ['name', 'category', 'unit', 'opacity', 'viscosity', 'size', 'grit'] as const;

function isOtherShade(item: ProductAttributes, other: ProductAttributes): boolean {
  if (item.itemId === other.itemId || item.shade === null || other.shade === null) return false;
  if (folded(item.shade) === folded(other.shade)) return false;
  return SAME.every((key) => folded(item[key]) === folded(other[key]));
}

function folded(text: string | null): string | null {
  return text === null ? null : text.trim().toLowerCase();
}

function byUnitPrice(a: SupplyOffer, b: SupplyOffer): number {
  const [left, right] = [packsTotal(a, 1n), packsTotal(b, 1n)];
  if (left === null || right === null) {
    if (left !== right) return left === null ? 1 : -1;
  } else {
    const [one, other] = [left * b.packContent, right * a.packContent];
    if (one !== other) return one < other ? -1 : 1;
  }
  return a.offerId < b.offerId ? -1 : 1;
}
