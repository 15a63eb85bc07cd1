import { daysOfUse, type OrderDecision } from './decide-order.js';
import { expectedMoney } from './edge.js';
import { roomInPacks } from './limit-packs.js';
import { adjustedPosition, type OfferPlan } from './offer-plan.js';
import type { BasketItem, ExtraPacks } from './supplier-basket.js';

/** So many packs more than proposed are looked at when a basket has to be filled. */
const MOST_EXTRAS = 12;

/**
 * A decision as an item of its supplier's basket, with what could be bought early: as much as is
 * used before it expires with the wanted certainty. Null without an offer or without use.
 */
export function basketItem(decision: OrderDecision): BasketItem | null {
  const { facts, plan, limited, shelf } = decision;
  if (!plan || decision.reason === 'no use expected') return null;
  return {
    itemId: facts.itemId,
    offer: plan.offer,
    packs: BigInt(limited.packs),
    runsOutInDays: daysOfUse(decision, shelf.usable - shelf.owed),
    extras: decision.reason === 'stopped by a limit' ? [] : extrasOf(decision, plan),
  };
}

function extrasOf(decision: OrderDecision, plan: OfferPlan): readonly ExtraPacks[] {
  const { limited, shelf, facts } = decision;
  const { counts, behind } = plan;
  const room = roomInPacks(facts, shelf, plan);
  const most = Math.min(Math.floor(plan.cap / counts.pack + 1e-9), room);
  const extras: ExtraPacks[] = [];
  let packs = limited.packs;
  while (extras.length < MOST_EXTRAS) {
    const more = packs === 0 ? counts.minimumPacks : 1;
    if (packs + more > most || decision.yearlyUse === 0) break;
    const spare = adjustedPosition(shelf, plan) + packs * counts.pack - plan.reorderPoint;
    const left = (n: number) => behind?.expectedLeft(n * counts.pack) ?? 0;
    const price = counts.unitPrice(packs + more) ?? 0;
    extras.push({
      packs: BigInt(more),
      neededInDays: daysOfUse(decision, spare),
      expectedWaste: expectedMoney((left(packs + more) - left(packs)) * price),
    });
    packs += more;
  }
  return extras;
}
