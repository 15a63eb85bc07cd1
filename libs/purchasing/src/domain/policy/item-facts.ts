import type { Money, Quantity } from '#lib/measure';
import { type Demand, type LeadTime, meanLeadTime, refuseBadLeadTime } from './demand.js';
import { countsOf } from './edge.js';
import { refuseBadOffer, type SupplyOffer } from './offer.js';
import { refuseBadTarget, type ServiceTarget } from './reorder-point.js';
import type { ShelfLot } from './shelf-queue.js';

/** A lot that may be used, on so many days, today included; null when it does not expire. */
export interface LotOnHand {
  readonly quantity: Quantity;
  readonly usableDays: number | null;
}

/** Goods on their way. */
export interface OpenOrder {
  readonly quantity: Quantity;
  /** Chances of the days until they are here, from today. */
  readonly arrival: LeadTime;
  readonly usableDaysOnArrival: number | null;
}

/** What the practice has set by hand instead of what is reckoned. */
export interface LevelOverride {
  readonly reorderAt: Quantity | null;
  readonly orderUpTo: Quantity | null;
}

export interface OrderLimits {
  /** The most that fits, what is there and on its way included. */
  readonly shelfRoom: Quantity | null;
  /** The most that this order may cost. */
  readonly budget: Money | null;
  /** Wanted chance that what is ordered is used before it expires: 0.9. */
  readonly expiryCertainty: number;
}

/** All that the order of one consumable depends on. */
export interface ItemFacts {
  readonly itemId: string;
  /** Stock units in one count of the forecast. */
  readonly countSize: Quantity;
  readonly demand: Demand;
  /** Days between two looks at the stock; 0 when every posting is looked at. */
  readonly reviewDays: number;
  readonly lots: readonly LotOnHand[];
  readonly openOrders: readonly OpenOrder[];
  readonly openShortfall: Quantity;
  readonly offers: readonly SupplyOffer[];
  /** What an order of this item costs in work and freight, whatever its size. */
  readonly orderCost: Money;
  /** What keeping goods for a year costs, as a share of their price: 0.2. */
  readonly carryingRate: number;
  readonly target: ServiceTarget;
  readonly override: LevelOverride | null;
  readonly limits: OrderLimits;
}

/** The stock in counts. */
export interface ShelfState {
  readonly usable: number;
  readonly onOrder: number;
  readonly owed: number;
  /** On hand + on order - owed. */
  readonly position: number;
  /** What is there and on its way, with the days that it may be used, from today. */
  readonly queue: readonly ShelfLot[];
}

export function shelfState(facts: ItemFacts): ShelfState {
  const counts = (quantity: Quantity) => countsOf(quantity, facts.countSize);
  const lots = facts.lots
    .map((lot) => ({ quantity: counts(lot.quantity), usableDays: endless(lot.usableDays) }))
    .filter((lot) => lot.usableDays > 0);
  const coming = facts.openOrders.map((order) => ({
    quantity: counts(order.quantity),
    usableDays: Math.floor(meanLeadTime(order.arrival) + endless(order.usableDaysOnArrival)),
  }));
  const [usable, onOrder] = [total(lots), total(coming)];
  const owed = counts(facts.openShortfall);
  return { usable, onOrder, owed, position: usable + onOrder - owed, queue: [...lots, ...coming] };
}

export function endless(days: number | null): number {
  return days ?? Number.POSITIVE_INFINITY;
}

/** Throws RangeError naming the field; nothing is decided on facts that cannot be. */
export function refuseBadFacts(facts: ItemFacts): void {
  refuseBadTarget(facts.target);
  for (const offer of facts.offers) refuseBadOffer(offer);
  for (const order of facts.openOrders) refuseBadLeadTime(order.arrival);
  if (facts.countSize <= 0n) throw new RangeError('countSize: a count is more than zero.');
  if ([...facts.lots, ...facts.openOrders].some((lot) => lot.quantity < 0n)) {
    throw new RangeError('quantity: what is there or on its way is not negative.');
  }
  if (facts.openShortfall < 0n) throw new RangeError('openShortfall: not negative.');
  if (facts.orderCost < 0n) throw new RangeError('orderCost: not negative.');
  if (!(facts.carryingRate > 0)) throw new RangeError('carryingRate: more than zero.');
  const { expiryCertainty } = facts.limits;
  if (!(expiryCertainty > 0 && expiryCertainty < 1)) {
    throw new RangeError('expiryCertainty: between 0 and 1.');
  }
  const { reorderAt = null, orderUpTo = null } = facts.override ?? {};
  if (reorderAt !== null && reorderAt < 0n) throw new RangeError('reorderAt: not negative.');
  if (reorderAt !== null && orderUpTo !== null && orderUpTo < reorderAt) {
    throw new RangeError('orderUpTo: not below reorderAt.');
  }
}

function total(lots: readonly ShelfLot[]): number {
  return lots.reduce((sum, lot) => sum + lot.quantity, 0);
}
