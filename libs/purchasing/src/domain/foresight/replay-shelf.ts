import {
  type Money,
  moneyFromMicro,
  multiplyRatio,
  type Quantity,
  quantityFromMicro,
} from '#lib/measure';
import type { EpochDay } from '../forecast/calendar.js';
import type { ReplayResult } from '../forecast/replay.js';
import { seedFrom } from '../forecast/seeded-random.js';
import { forecastHistory, judgeSteps, shelfPrior } from '../forecast/shelf-forecast.js';
import { itemHistory, practiceDays } from '../planning/item-history.js';
import { spanDemand } from '../planning/span-demand.js';
import { cheapest } from '../suggest-order.js';
import { offersOn, type PastItem, type PastShelf, rulesOn } from './past-shelf.js';
import { ItemReplay, type OldRule } from './replay-item.js';

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

export interface ReplayProgress {
  readonly done: number;
  readonly total: number;
}

/** Methods are judged and forecasts made anew so often; orders are thought about at each review. */
export const RECKON_EVERY_DAYS = 28;

/**
 * Replays the history of a practice day by day, under the computed policy and under the rules it
 * had. On each day only what lies before it is known: use, prices and how long goods last. Both
 * sides meet the same use, lead times and lives of goods. The same facts give the same answer.
 * Every step takes some milliseconds.
 */
export function* replayShelf(shelf: PastShelf): Generator<ReplayProgress, ReplayedShelf> {
  const kept = shelf.items.filter((item) => wasThere(item, shelf));
  const bought = kept.filter((item) => item.presentations.length > 0);
  const really = rulesOn(shelf, shelf.endDay).leadOf;
  const replays = bought.map((item) => new ItemReplay(item, shelf, really));
  const days = shelf.endDay - shelf.firstDay;
  const total = 2 * bought.length * Math.ceil(days / RECKON_EVERY_DAYS);
  let done = 0;
  for (let day = shelf.firstDay; day < shelf.endDay; day += RECKON_EVERY_DAYS) {
    const known = shelf.visitDays.filter((visited) => visited < day);
    const practice = practiceDays(known, day);
    const judged = [];
    for (const { item } of replays) {
      const history = historyOf(item, { day, practice, shelf });
      const options = { horizonDays: shelf.horizonDays, seed: seedFrom(item.consumableId) };
      const steps = judgeSteps(history, options);
      let step = steps.next();
      for (; step.done !== true; step = steps.next()) yield { done, total };
      judged.push({ history, options, judged: step.value });
      done += 1;
      yield { done, total };
    }
    const rules = rulesOn(shelf, day);
    const prior = shelfPrior(judged.map((each) => each.judged));
    for (const [i, replay] of replays.entries()) {
      const own = judged[i];
      if (!own) throw new Error('An item was not judged');
      const forecast = forecastHistory(own.history, own.judged, prior, own.options);
      const demand = spanDemand(forecast.item, own.history);
      const { calendar } = practice;
      const length = Math.min(RECKON_EVERY_DAYS, shelf.endDay - day);
      const steps = replay.follow({ day, demand, step: forecast.step, calendar, rules }, length);
      while (steps.next().done !== true) yield { done, total };
      done += 1;
      yield { done, total };
    }
  }
  return reportOf(shelf, replays, { notUsed: shelf.items.length - kept.length, kept: kept.length });
}

function wasThere(item: PastItem, { firstDay, endDay }: PastShelf): boolean {
  if (item.startLots.some((lot) => lot.quantity > 0n)) return true;
  return item.uses.some(({ day }) => day >= firstDay && day < endDay);
}

function historyOf(
  item: PastItem,
  facts: {
    readonly day: EpochDay;
    readonly practice: ReturnType<typeof practiceDays>;
    readonly shelf: PastShelf;
  },
) {
  const { day, practice, shelf } = facts;
  const since = item.stockedSince;
  return itemHistory({
    uses: item.uses.filter((use) => use.day < day),
    oneOffs: item.oneOffs,
    practice,
    today: day,
    stockedSince: since !== null && since < day ? since : null,
    leaveOutRetakes: shelf.rules.settings.leaveOutRetakes,
  });
}

/** What an amount is worth; null without a price. */
type Value = (micro: number) => Money | null;

function reportOf(
  shelf: PastShelf,
  replays: readonly ItemReplay[],
  counts: { readonly notUsed: number; readonly kept: number },
): ReplayedShelf {
  const results = replays.map((replay) => {
    const offer = cheapest(offersOn(replay.item, shelf.endDay));
    const value: Value = (micro) => {
      if (!offer || offer.packPrice === null) return null;
      const amount = BigInt(Math.round(micro));
      return moneyFromMicro(multiplyRatio(offer.packPrice, amount, offer.packContent, 'half-up'));
    };
    return { replay, value, computed: replay.computed.result(), old: replay.old.result() };
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
    computed: sumsOf(items.map((item) => item.computed)),
    old: sumsOf(items.map((item) => item.old)),
    items,
    weeks,
    notUsed: counts.notUsed,
    notBought: counts.kept - replays.length,
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

function sumsOf(sides: readonly ReplayedSide[]): ReplayedSums {
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
