import type { EpochDay } from '../forecast/calendar.js';
import { seedFrom } from '../forecast/seeded-random.js';
import { forecastHistory, judgeSteps, shelfPrior } from '../forecast/shelf-forecast.js';
import { itemHistory, practiceDays } from '../planning/item-history.js';
import type { PlanningRules } from '../planning/plan-item.js';
import { spanDemand } from '../planning/span-demand.js';
import type { OrderDecision } from '../policy/index.js';
import { type PastItem, type PastShelf, rulesOn } from './past-shelf.js';
import { ItemReplay } from './replay-item.js';
import {
  addSending,
  NOTHING_SENT,
  ordersOf,
  type SendingOfBoth,
  sendingOf,
} from './replay-orders.js';
import { type ReplayedShelf, reportOf } from './replay-report.js';
import type { Wish } from './replay-side.js';

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
  const total = 2 * replays.length * Math.ceil((shelf.endDay - shelf.firstDay) / RECKON_EVERY_DAYS);
  let sending: SendingOfBoth = { computed: NOTHING_SENT, old: NOTHING_SENT };
  let done = 0;
  for (let day = shelf.firstDay; day < shelf.endDay; day += RECKON_EVERY_DAYS) {
    const rules = rulesOn(shelf, day);
    for (const learnt of learn(replays, { day, shelf, rules })) {
      done += learnt;
      yield { done, total };
    }
    const end = Math.min(day + RECKON_EVERY_DAYS, shelf.endDay);
    for (let today = day; today < end; today += 1) {
      const steps = follow(replays, { ...rules, today });
      let step = steps.next();
      for (; step.done !== true; step = steps.next()) yield { done, total };
      sending = {
        computed: addSending(sending.computed, step.value.computed),
        old: addSending(sending.old, step.value.old),
      };
    }
    done += replays.length;
    yield { done, total };
  }
  const notUsed = shelf.items.length - kept.length;
  return reportOf(shelf, replays, { notUsed, kept: kept.length, sending });
}

/** Judges the methods and forecasts every item from what lies before the day; items judged. */
function* learn(
  replays: readonly ItemReplay[],
  at: { readonly day: EpochDay; readonly shelf: PastShelf; readonly rules: PlanningRules },
): Generator<number, void> {
  const { day, shelf, rules } = at;
  const known = shelf.visitDays.filter((visited) => visited < day);
  const practice = practiceDays(known, day);
  const judged = [];
  for (const { item } of replays) {
    const history = historyOf(item, { day, practice, shelf });
    const options = { horizonDays: shelf.horizonDays, seed: seedFrom(item.consumableId) };
    const steps = judgeSteps(history, options);
    let step = steps.next();
    for (; step.done !== true; step = steps.next()) yield 0;
    judged.push({ history, options, judged: step.value });
    yield 1;
  }
  const prior = shelfPrior(judged.map((each) => each.judged));
  const { calendar } = practice;
  for (const [i, replay] of replays.entries()) {
    const own = judged[i];
    if (!own) throw new Error('An item was not judged');
    const forecast = forecastHistory(own.history, own.judged, prior, own.options);
    const demand = spanDemand(forecast.item, own.history);
    replay.learn({ day, demand, step: forecast.step, calendar, rules });
    yield 0;
  }
}

/** One day of all items; stops for a moment after each order that was thought about. */
function* follow(
  replays: readonly ItemReplay[],
  rules: PlanningRules,
): Generator<void, SendingOfBoth> {
  const decisions: OrderDecision[] = [];
  for (const replay of replays) {
    const decision = replay.morning();
    if (!decision) continue;
    decisions.push(decision);
    yield;
  }
  const { lines, sending } = yield* ordersOf(decisions, rules);
  const wishes: Wish[] = [];
  for (const replay of replays) {
    const wish = replay.evening(lines.get(replay.item.consumableId) ?? null);
    if (wish) wishes.push(wish);
    yield;
  }
  return { computed: sending, old: sendingOf(wishes, rules) };
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
