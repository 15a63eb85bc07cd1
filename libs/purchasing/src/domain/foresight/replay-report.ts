import {
  type Money,
  moneyFromMicro,
  multiplyRatio,
  type Quantity,
  quantityFromMicro,
} from '#lib/measure';
import type { EpochDay } from '../forecast/calendar.js';
import type { ReplayResult } from '../forecast/replay.js';
import { cheapest } from '../suggest-order.js';
import { offersOn, type PastShelf } from './past-shelf.js';
import type { ItemReplay, OldRule } from './replay-item.js';
import type { Sending, SendingOfBoth } from './replay-orders.js';

/** What one rule made of one item. Values are null when nobody knows a price. */
export interface ReplayedSide {
  /** Days on which not all that was wanted was there. */
  readonly stockOutDays: number;
  readonly unmet: Quantity;
  readonly wasted: Quantity;
  readonly wastedValue: Money | null;
  readonly averageStock: Quantity;
  readonly averageValue: Money | null;
  readonly orders: number;
}

export interface ReplayedItem {
  readonly consumableId: string;
  readonly oldRule: OldRule;
  readonly daysWithUse: number;
  readonly computed: ReplayedSide;
  readonly old: ReplayedSide;
}

export interface ReplayedSums {
  readonly stockOutDays: number;
  /** Items that ran out at least once. */
  readonly itemsOut: number;
  readonly wastedValue: Money;
  readonly averageValue: Money;
  readonly orders: number;
  /** Orders sent, each with its lines together, and what sending them cost. */
  readonly sent: number;
  readonly freight: Money;
}

/** Stock value at the end of a week. */
export interface ReplayedWeek {
  readonly lastDay: EpochDay;
  readonly computed: Money;
  readonly old: Money;
}

export interface ReplayedShelf {
  readonly firstDay: EpochDay;
  readonly lastDay: EpochDay;
  readonly computed: ReplayedSums;
  readonly old: ReplayedSums;
  readonly items: readonly ReplayedItem[];
  readonly weeks: readonly ReplayedWeek[];
  /** Neither there nor used in that time; and used, but nobody says how it is bought. */
  readonly notUsed: number;
  readonly notBought: number;
  readonly withoutPrice: number;
}

/** What an amount is worth; null without a price. */
type Value = (micro: number) => Money | null;

/** What came of it, in exact sums of the items. */
export function reportOf(
  shelf: PastShelf,
  replays: readonly ItemReplay[],
  about: { readonly notUsed: number; readonly kept: number; readonly sending: SendingOfBoth },
): ReplayedShelf {
  const results = replays.map((replay) => {
    const offer = cheapest(offersOn(replay.item, shelf.endDay));
    const value: Value = (micro) => {
      if (!offer || offer.packPrice === null) return null;
      const amount = BigInt(Math.round(micro));
      return moneyFromMicro(multiplyRatio(offer.packPrice, amount, offer.packContent, 'half-up'));
    };
    return { replay, value, ...replay.result() };
  });
  const items = results.map(({ replay, value, computed, old }) => ({
    consumableId: replay.item.consumableId,
    oldRule: replay.oldRule,
    daysWithUse: computed.daysWithDemand,
    computed: sideOf(computed, value),
    old: sideOf(old, value),
  }));
  const weeks: ReplayedWeek[] = [];
  for (let t = 6; t < shelf.endDay - shelf.firstDay; t += 7) {
    const worth = (side: 'computed' | 'old') =>
      results.map((each) => each.value(each[side].days[t]?.onHand ?? 0));
    weeks.push({
      lastDay: shelf.firstDay + t,
      computed: sumOf(worth('computed')),
      old: sumOf(worth('old')),
    });
  }
  return {
    firstDay: shelf.firstDay,
    lastDay: shelf.endDay - 1,
    computed: { ...sumsOf(items.map((item) => item.computed)), ...about.sending.computed },
    old: { ...sumsOf(items.map((item) => item.old)), ...about.sending.old },
    items,
    weeks,
    notUsed: about.notUsed,
    notBought: about.kept - replays.length,
    withoutPrice: items.filter((item) => item.computed.averageValue === null).length,
  };
}

function sideOf(result: ReplayResult, value: Value): ReplayedSide {
  const exact = (micro: number) => quantityFromMicro(BigInt(Math.round(micro)));
  return {
    stockOutDays: result.stockOutDays,
    unmet: exact(result.unmet),
    wasted: exact(result.wasted),
    wastedValue: value(result.wasted),
    averageStock: exact(result.averageOnHand),
    averageValue: value(result.averageOnHand),
    orders: result.orders,
  };
}

function sumsOf(sides: readonly ReplayedSide[]): Omit<ReplayedSums, keyof Sending> {
  const count = (of: (side: ReplayedSide) => number) =>
    sides.reduce((sum, side) => sum + of(side), 0);
  return {
    stockOutDays: count((side) => side.stockOutDays),
    itemsOut: count((side) => (side.stockOutDays > 0 ? 1 : 0)),
    wastedValue: sumOf(sides.map((side) => side.wastedValue)),
    averageValue: sumOf(sides.map((side) => side.averageValue)),
    orders: count((side) => side.orders),
  };
}

function sumOf(values: readonly (Money | null)[]): Money {
  return moneyFromMicro(values.reduce<bigint>((sum, value) => sum + (value ?? 0n), 0n));
}
