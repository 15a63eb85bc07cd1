import { normalSafetyStock, type ServiceTarget } from './reorder-point.js';

/** What is there, on its way and owed, in counts. */
export interface StockState {
  readonly onHand: number;
  readonly onOrder: number;
  readonly owed: number;
}

/** What the reorder point is compared with: on hand + on order - owed. */
export function positionOf(state: StockState): number {
  return state.onHand + state.onOrder - state.owed;
}

/**
 * What the shelf shows when the position reaches the reorder point: with a lead time longer than
 * the time between orders, whole orders are still outstanding then, and the shelf alone misleads.
 */
export function shelfAtReorder(reorderPoint: number, orderSize: number): number {
  if (!(orderSize > 0)) throw new RangeError('orderSize: an order is for more than zero.');
  if (reorderPoint <= 0) return reorderPoint;
  const outstanding = Math.ceil(reorderPoint / orderSize) - 1;
  return reorderPoint - outstanding * orderSize;
}

/** Use over review + lead time with its spread, and the safety stock for the target. */
export interface ReviewLevel {
  readonly mean: number;
  readonly sd: number;
  readonly safetyStock: number;
  /** The level to order up to. */
  readonly orderUpTo: number;
}

/** (R,S): the level to order up to at every review; use per day independent and normal. */
export function reviewLevel(input: {
  readonly dailyMean: number;
  readonly dailySd: number;
  readonly reviewDays: number;
  readonly leadDays: number;
  readonly target: ServiceTarget;
}): ReviewLevel {
  const days = input.reviewDays + input.leadDays;
  const sd = input.dailySd * Math.sqrt(days);
  const mean = input.dailyMean * days;
  const perReview = input.dailyMean * input.reviewDays;
  const safetyStock = normalSafetyStock(input.target, sd, perReview);
  return { mean, sd, safetyStock, orderUpTo: mean + safetyStock };
}

/** (R,S): what is ordered at a review; nothing when the position is above the level. */
export function reviewOrder(orderUpTo: number, position: number): number {
  return Math.max(orderUpTo - position, 0);
}

/** (s,Q): as many whole lots as lift the position above s, none while it is above. */
export function lotsToOrder(position: number, reorderPoint: number, lot: number): number {
  if (!(lot > 0)) throw new RangeError('lot: a lot holds more than zero.');
  if (position > reorderPoint) return 0;
  return Math.max(Math.floor((reorderPoint - position) / lot + 1e-9) + 1, 1);
}

/** An item that is due, in counts. */
export interface DueItem {
  readonly position: number;
  readonly reorderPoint: number;
  readonly orderUpTo: number;
  readonly pack: number;
  /** Packs of the cheapest order; null where a level to order up to is set by hand. */
  readonly usualPacks: number | null;
}

/**
 * The fewest whole packs that lift the position above the reorder point and are at least the
 * cheapest order; under a level set by hand as many as do not pass it. Fewer would be due again at
 * once or cost more in a year, and more is never needed. With no usual order only the reorder point
 * itself is reached.
 */
export function packsWhenDue(item: DueItem): number {
  const { position, reorderPoint, orderUpTo, pack, usualPacks } = item;
  if (usualPacks === 0) return Math.max(Math.ceil((reorderPoint - position) / pack - 1e-9), 1);
  const least = lotsToOrder(position, reorderPoint, pack);
  return Math.max(usualPacks ?? Math.floor((orderUpTo - position) / pack + 1e-9), least);
}

export interface MinMaxOrder {
  /** What is missing up to the maximum; 0 when the position is above the minimum. */
  readonly needed: number;
  /** In whole packs. */
  readonly order: number;
  readonly packs: number;
}

/**
 * (s,S) with packs (Scarf 1960): at or below the minimum, order up to the maximum in whole packs.
 * Rounded up they may pass the maximum; under a cap (what is used before it expires) they round
 * down. `minimum` is the least a supplier sends, in counts.
 */
export function minMaxOrder(input: {
  readonly position: number;
  readonly min: number;
  readonly max: number;
  readonly pack: number;
  readonly minimum?: number;
  readonly capped?: boolean;
}): MinMaxOrder {
  const { position, min, max, pack } = input;
  if (!(pack > 0)) throw new RangeError('pack: a pack holds more than zero.');
  if (max < min) throw new RangeError('max: not below the minimum.');
  if (position > min) return { needed: 0, order: 0, packs: 0 };
  const needed = max - position;
  const whole = needed / pack;
  const packs = input.capped ? Math.floor(whole + 1e-9) : Math.ceil(whole - 1e-9);
  const least = Math.ceil((input.minimum ?? 0) / pack - 1e-9);
  // Rounding just below nothing leaves a negative zero, which is no number of packs.
  const taken = Math.max(packs, least, 0);
  return { needed, order: taken * pack, packs: taken };
}
