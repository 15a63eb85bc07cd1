import { moneyFromMicro, type Quantity, quantityFromMicro } from '#lib/measure';
import { meanLeadTime } from './policy/demand.js';
import { finiteQuantity } from './policy/edge.js';
import type { OrderDecision, ServiceMeasure } from './policy/index.js';
import { hardlyUsed } from './policy/offer-plan.js';

/** Why planning orders or does not; what has no offer has no level either. */
export type LevelReason = Exclude<OrderDecision['reason'], 'no offer'>;

/** What planning made of a consumable, kept for the alerts. Quantities in millionths. */
export interface ComputedLevel {
  readonly consumableId: string;
  /** The day of the practice. */
  readonly computedOn: string;
  readonly reason: LevelReason;
  readonly reorderPoint: bigint;
  readonly orderUpTo: bigint;
  /** On hand and on order less what is owed, as it was. */
  readonly position: bigint;
  /** Expected to expire before goods can be here: rounded down, see `isDue`. */
  readonly expiringFirst: bigint;
  /** Expected over lead time and review. */
  readonly expectedUse: bigint;
  /** Mean, in calendar days. */
  readonly leadDays: number;
  readonly reviewDays: number;
  readonly serviceMeasure: ServiceMeasure;
  readonly serviceLevel: number;
  /** Bought for what is owed, not for the shelf. */
  readonly hardlyUsed: boolean;
  readonly presentationId: string;
  readonly packs: bigint;
  /** Of so many packs, in millionths of the currency; null: none, or no price is known. */
  readonly total: bigint | null;
}

/** What is kept of a decision; null for what nobody says how to buy. */
export function computedLevel(decision: OrderDecision, computedOn: string): ComputedLevel | null {
  const { facts, plan, shelf, limited, reason, total } = decision;
  if (plan === null || reason === 'no offer') return null;
  const exact = (counts: number): Quantity => finiteQuantity(counts, facts.countSize);
  return {
    consumableId: facts.itemId,
    computedOn,
    reason,
    reorderPoint: exact(plan.reorderPoint),
    orderUpTo: exact(plan.orderUpTo),
    position: exact(shelf.position),
    expiringFirst: wholeMillionths(plan.expiringFirst, facts.countSize),
    expectedUse: exact(plan.protection.mean),
    leadDays: meanLeadTime(plan.offer.leadTime),
    reviewDays: facts.reviewDays,
    serviceMeasure: facts.target.measure,
    serviceLevel: facts.target.level,
    hardlyUsed: hardlyUsed(facts),
    presentationId: plan.offer.offerId,
    packs: BigInt(limited.packs),
    total: total === null ? null : moneyFromMicro(total),
  };
}

/**
 * Rounded down: position and level are whole millionths, so that what is left of the position is at or
 * below the level after rounding exactly when it was before.
 */
function wholeMillionths(counts: number, countSize: Quantity): bigint {
  return quantityFromMicro(BigInt(Math.floor(counts * Number(countSize) + 1e-6)));
}
