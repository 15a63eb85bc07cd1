import {
  formatMoney,
  formatQuantity,
  moneyFromMicro,
  multiplyRatio,
  type Quantity,
  quantityFromMicro,
} from '#lib/measure';
import type { PlannedOffer } from '../domain/planning/plan-item.js';
import { quantityOf } from '../domain/policy/edge.js';
import { type SubstituteCandidate, substitutesFor } from '../domain/policy/substitutes.js';
import { cheapest } from '../domain/suggest-order.js';
import type { SubstituteDto } from '../http/proposals.dto.js';
import type { Decided, DecidedShelf } from './decide-shelf.js';

/**
 * What a person could take instead: other packs of it, other shades of the same product, and what
 * somebody said may stand in for it. Nothing of this is ever taken by itself.
 */
export function substitutesOf(each: Decided, known: DecidedShelf): SubstituteDto[] {
  const { item, decision } = each;
  const others = [...known.items.values()].filter((other) => other !== each);
  const candidates = others.map(
    (other): SubstituteCandidate => ({
      attributes: other.item.attributes,
      spare: spareOf(other),
      offers: other.decision.facts.offers,
    }),
  );
  const { facts, plan } = decision;
  const found = substitutesFor(item.attributes, plan?.offer ?? null, facts.offers, candidates);
  const told = found.flatMap((substitute): SubstituteDto[] => {
    if (substitute.kind === 'another pack') {
      const offer = item.offers.find((o) => o.presentationId === substitute.offerId);
      return offer ? [dtoOf('another pack', each, offer, null)] : [];
    }
    const other = known.items.get(substitute.itemId);
    return other ? [dtoOf('another shade', other, cheapestOf(other), null)] : [];
  });
  const pairs = known.pairs.filter((pair) => pair.consumableId === item.consumableId);
  const typed = pairs.flatMap((pair): SubstituteDto[] => {
    const other = known.items.get(pair.standInId);
    return other ? [dtoOf('another consumable', other, cheapestOf(other), pair.note)] : [];
  });
  // What a person said about a shade says more than that it is one.
  const said = new Set(typed.map((each) => each.consumable.id));
  const rest = told.filter((s) => s.kind !== 'another shade' || !said.has(s.consumable.id));
  return [...typed, ...rest];
}

function cheapestOf({ item }: Decided): PlannedOffer | null {
  const offer = cheapest(item.offers);
  return item.offers.find((each) => each.presentationId === offer?.presentationId) ?? null;
}

/** Usable on hand above its own reorder point; not negative. */
function spareOf({ decision }: Decided): Quantity {
  const { shelf, plan, facts } = decision;
  const spare = Math.max(shelf.usable - shelf.owed - (plan?.reorderPoint ?? 0), 0);
  return quantityOf(spare, facts.countSize) ?? quantityFromMicro(0n);
}

function dtoOf(
  kind: SubstituteDto['kind'],
  of: Decided,
  offer: PlannedOffer | null,
  note: string | null,
): SubstituteDto {
  const price = offer?.packPrice ?? null;
  return {
    kind,
    consumable: of.item.consumable,
    presentation: offer === null ? null : { id: offer.presentationId, name: offer.name },
    supplierName: offer?.supplierName ?? null,
    packContent: offer === null ? null : formatQuantity(quantityFromMicro(offer.packContent)),
    packPrice: price === null ? null : formatMoney(moneyFromMicro(price)),
    unitPrice: offer === null || price === null ? null : unitPrice(price, offer.packContent),
    spare: formatQuantity(spareOf(of)),
    note,
  };
}

function unitPrice(packPrice: bigint, packContent: bigint): string {
  const price = multiplyRatio(moneyFromMicro(packPrice), 1_000_000n, packContent, 'half-up');
  return formatMoney(moneyFromMicro(price));
}
