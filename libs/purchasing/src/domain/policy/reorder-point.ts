import { lattice } from '../forecast/lattice.js';
import { demandOverLead } from '../forecast/lead-time-demand.js';
import { normalQuantile } from '../forecast/special-functions.js';
import type { Demand, Distribution, LeadTime } from './demand.js';
import { refuseBadLeadTime } from './demand.js';
import { inverseNormalLoss } from './normal.js';

/**
 * What is promised, by name, because the two differ widely.
 * cycle service: the chance that nothing is missing between an order and its delivery.
 * fill rate: the share of use that is met from the shelf.
 */
export const SERVICE_MEASURES = ['cycle service', 'fill rate'] as const;
export type ServiceMeasure = (typeof SERVICE_MEASURES)[number];

export interface ServiceTarget {
  readonly measure: ServiceMeasure;
  /** Above 0 and below 1: 0.95. */
  readonly level: number;
}

export function refuseBadTarget(target: ServiceTarget): void {
  if (!(target.level > 0 && target.level < 1)) {
    throw new RangeError('service: a level is between 0 and 1.');
  }
}

/** Use while a delivery is on its way and until the next look: over every lead time + review. */
export function protectionUse(demand: Demand, lead: LeadTime, reviewDays: number): Distribution {
  refuseBadLeadTime(lead);
  if (!Number.isInteger(reviewDays) || reviewDays < 0) {
    throw new RangeError('reviewDays: whole days, not negative.');
  }
  const chances = new Float64Array(Math.max(...lead.map((l) => l.days)) + 1);
  for (const l of lead) chances[l.days] = (chances[l.days] ?? 0) + l.probability;
  return demandOverLead((days) => demand.use(0, days), lattice(chances), reviewDays);
}

/**
 * Safety stock when use in the protection time is normal with this spread: z * sd for a cycle
 * service; for a fill rate, the k with sd * G(k) = (1 - fill) * order size. May be negative.
 */
export function normalSafetyStock(target: ServiceTarget, sd: number, orderSize: number): number {
  refuseBadTarget(target);
  if (!(sd >= 0)) throw new RangeError('sd: a spread is not negative.');
  if (sd === 0) return 0;
  if (target.measure === 'cycle service') return sd * normalQuantile(target.level);
  if (!(orderSize > 0)) throw new RangeError('orderSize: an order is for more than zero.');
  return sd * inverseNormalLoss(((1 - target.level) * orderSize) / sd);
}

/**
 * The smallest whole level that keeps the promise, if an order of `orderSize` is placed as soon as
 * the position has come down to it. Exact for use in counts: P(D <= s) >= level, or a fill rate
 * 1 - (loss(s) - loss(s + Q)) / Q >= level.
 */
export function reorderPoint(
  target: ServiceTarget,
  protection: Distribution,
  orderSize: number,
): number {
  refuseBadTarget(target);
  const enough = serviceTest(target, protection, orderSize);
  let low = -1;
  let high = Math.max(Math.ceil(protection.mean), 1);
  while (!enough(high)) {
    low = high;
    high *= 2;
    // Only a distribution that is none (its chances do not reach 1) gets this far.
    if (!(high < 1e15)) throw new RangeError('demand: no level keeps the promise.');
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function serviceTest(
  target: ServiceTarget,
  protection: Distribution,
  orderSize: number,
): (level: number) => boolean {
  // A hair of room, because the chances are sums of many rounded terms.
  const wanted = target.level - 1e-12;
  if (target.measure === 'cycle service') return (s) => protection.cdf(s) >= wanted;
  if (!(orderSize > 0)) throw new RangeError('orderSize: an order is for more than zero.');
  return (s) => fillRate(protection, s, orderSize) >= wanted;
}

/** Share of use met from the shelf when `orderSize` is ordered at a position of `level`. */
export function fillRate(protection: Distribution, level: number, orderSize: number): number {
  return 1 - (protection.loss(level) - protection.loss(level + orderSize)) / orderSize;
}
