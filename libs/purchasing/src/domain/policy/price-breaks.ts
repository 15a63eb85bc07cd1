import { economicLot } from './economic-lot.js';

/** A price per count from a quantity upwards. */
export interface PriceBreak {
  readonly from: number;
  readonly unitPrice: number;
}

/** Yearly use, cost of an order, and what keeping a count for a year costs. */
export type BreakCosts = {
  readonly yearlyUse: number;
  readonly orderCost: number;
} & (
  | { /** As a share of its price. */ readonly carryingRate: number }
  | { /** Whatever its price. */ readonly holdingCost: number }
);

/** An order size worth considering, with what a year costs at it: goods, orders and keeping. */
export interface SizeCandidate {
  readonly size: number;
  readonly total: number;
}

/**
 * All units at the price of the quantity reached. Per price the economic lot, lifted to the break;
 * one that already reaches a lower price is no candidate. Cheapest first.
 */
export function allUnitsDiscount(
  costs: BreakCosts,
  breaks: readonly PriceBreak[],
): readonly SizeCandidate[] {
  const tiers = inOrder(breaks);
  const found = tiers.flatMap((tier, i) => {
    const next = tiers[i + 1];
    const size = Math.max(lotAt(costs, tier.unitPrice), tier.from);
    return next && size >= next.from
      ? []
      : [{ size, total: yearCost(costs, tier.unitPrice, size) }];
  });
  return found.sort(byTotal);
}

/** The economic lot at every price, feasible or not. */
export function economicLots(costs: BreakCosts, breaks: readonly PriceBreak[]): readonly number[] {
  return inOrder(breaks).map((tier) => lotAt(costs, tier.unitPrice));
}

/**
 * Every unit beyond a break at the lower price: `from` 400 leaves the first 400 at the old one. The
 * fixed part of a tier (what its lower price does not apply to) works like a dearer order; the best
 * size is always a feasible economic lot (e.g. Nahmias, Production and Operations Analysis, ch. 4).
 */
export function incrementalDiscount(
  costs: BreakCosts,
  breaks: readonly PriceBreak[],
): readonly SizeCandidate[] {
  const tiers = inOrder(breaks);
  let fixed = 0;
  const found = tiers.flatMap((tier, i) => {
    const before = tiers[i - 1];
    if (before) fixed += (before.unitPrice - tier.unitPrice) * tier.from;
    const lot = lotAt({ ...costs, orderCost: costs.orderCost + fixed }, tier.unitPrice);
    // Below the first price nothing is sold; below another one its lot is simply no candidate.
    const size = before ? lot : Math.max(lot, tier.from);
    const next = tiers[i + 1];
    if (size < tier.from || (next && size >= next.from)) return [];
    const price = tier.unitPrice + fixed / size;
    return [{ size, total: yearCost(costs, price, size) }];
  });
  return found.sort(byTotal);
}

/** Purchase lots of a fixed size, each at its own price per count. Cheapest year first. */
export function offeredLots(
  costs: BreakCosts,
  offers: readonly { readonly size: number; readonly unitPrice: number }[],
): readonly SizeCandidate[] {
  return offers
    .map(({ size, unitPrice }) => ({ size, total: yearCost(costs, unitPrice, size) }))
    .sort(byTotal);
}

/** Goods, orders and keeping in a year, at one price and order size. */
export function yearCost(costs: BreakCosts, unitPrice: number, size: number): number {
  if (!(size > 0)) throw new RangeError('size: an order is for more than zero.');
  const ordering = (costs.orderCost * costs.yearlyUse) / size;
  const holding = (keptFor(costs, unitPrice) * size) / 2;
  return unitPrice * costs.yearlyUse + ordering + holding;
}

function lotAt(costs: BreakCosts, unitPrice: number): number {
  return economicLot({ ...costs, holdingCost: keptFor(costs, unitPrice) });
}

function keptFor(costs: BreakCosts, unitPrice: number): number {
  return 'holdingCost' in costs ? costs.holdingCost : costs.carryingRate * unitPrice;
}

function inOrder(breaks: readonly PriceBreak[]): readonly PriceBreak[] {
  if (breaks.length === 0) throw new RangeError('breaks: there is at least one price.');
  return [...breaks].sort((a, b) => a.from - b.from);
}

function byTotal(a: SizeCandidate, b: SizeCandidate): number {
  return a.total - b.total || a.size - b.size;
}
