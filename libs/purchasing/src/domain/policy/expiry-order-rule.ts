import { firstExpiryFirst, type ShelfLot } from './shelf-queue.js';

export interface ExpiryOrder {
  readonly position: number;
  /** What steady expected use leaves to expire on each day of lead time + review - 1. */
  readonly outdating: readonly number[];
  readonly totalOutdating: number;
  /** Expected use over lead time + review. */
  readonly protectionUse: number;
  readonly shortfall: number;
  readonly packs: number;
}

/**
 * The order rule that takes expected outdating off the position first (Broekmeulen & van Donselaar
 * 2009, Computers & Operations Research 36(11), 3013-3018; rule from memory): order when position -
 * outdating within lead time + review - 1 is below the safety stock + expected use over lead time +
 * review; as many packs as the difference needs. `expectedDaily` is at least that long.
 */
export function expiryOrder(input: {
  readonly reviewDays: number;
  readonly leadDays: number;
  readonly pack: number;
  readonly expectedDaily: readonly number[];
  readonly safetyStock: number;
  readonly lots: readonly ShelfLot[];
  readonly inTransit: number;
}): ExpiryOrder {
  const days = input.leadDays + input.reviewDays;
  if (!(input.pack > 0)) throw new RangeError('pack: a pack holds more than zero.');
  if (input.expectedDaily.length < days) {
    throw new RangeError('expectedDaily: one figure for every day of lead time and review.');
  }
  const position = input.lots.reduce((sum, lot) => sum + lot.quantity, input.inTransit);
  const outdating = outdatingByDay(input.lots, input.expectedDaily.slice(0, Math.max(days - 1, 0)));
  const totalOutdating = outdating.reduce((a, b) => a + b, 0);
  const protectionUse = input.expectedDaily.slice(0, days).reduce((a, b) => a + b, 0);
  const shortfall = input.safetyStock + protectionUse - (position - totalOutdating);
  const packs = shortfall > 0 ? Math.ceil(shortfall / input.pack - 1e-9) : 0;
  return { position, outdating, totalOutdating, protectionUse, shortfall, packs };
}

function outdatingByDay(lots: readonly ShelfLot[], daily: readonly number[]): readonly number[] {
  let left = firstExpiryFirst(lots);
  return daily.map((use, i) => {
    let open = use;
    left = left.map((lot) => {
      const taken = Math.min(lot.quantity, open);
      open -= taken;
      return { ...lot, quantity: lot.quantity - taken };
    });
    const gone = left.filter((lot) => lot.usableDays <= i + 1);
    left = left.filter((lot) => lot.usableDays > i + 1);
    return gone.reduce((sum, lot) => sum + lot.quantity, 0);
  });
}
