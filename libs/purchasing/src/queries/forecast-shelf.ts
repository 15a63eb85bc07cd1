import { createHash } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { IsoDate, Tx } from '#lib/platform';
import type { Backtest } from '../domain/forecast/backtest.js';
import { epochDay } from '../domain/forecast/calendar.js';
import {
  type DayForecast,
  forecastHistory,
  judgeSteps,
  seedFrom,
} from '../domain/forecast/index.js';
import { type ShelfOptions, shelfPrior } from '../domain/forecast/shelf-forecast.js';
import type { DayUse, DemandHistory } from '../domain/forecast/usage-history.js';
import type { BookedDemand } from '../domain/planning/booked-demand.js';
import { itemHistory, type OneOffSpan, practiceDays } from '../domain/planning/item-history.js';
import type { PlanningRules } from '../domain/planning/plan-item.js';
import { loadBookedDemand } from './booked-use.js';
import { loadOneOffSpans, type PlannedItem } from './planning-facts.js';
import { Turns } from './take-turns.js';
import { loadUsage, loadVisitDays, type UsageText, usesOf } from './usage-history.js';

/** Everything that the forecasts of a practice depend on. */
export interface ShelfUse {
  readonly practiceId: string;
  readonly today: IsoDate;
  readonly usage: readonly UsageText[];
  readonly visitDays: readonly IsoDate[];
  readonly oneOffs: ReadonlyMap<string, readonly OneOffSpan[]>;
  readonly items: readonly PlannedItem[];
  readonly rules: PlanningRules;
  /** What visits are booked to use: put over the forecasts, which do not depend on it. */
  readonly booked: BookedDemand;
}

export interface ForecastOfItem {
  readonly uses: readonly DayUse[];
  readonly history: DemandHistory;
  readonly judged: Backtest;
  readonly forecast: DayForecast;
}

export type ShelfForecasts = ReadonlyMap<string, ForecastOfItem>;

export async function loadShelfUse(
  tx: Tx,
  today: IsoDate,
  known: { readonly items: readonly PlannedItem[]; readonly rules: PlanningRules },
  locationId: string | null = null,
): Promise<ShelfUse> {
  const usage = await loadUsage(tx, today, locationId);
  const visitDays = await loadVisitDays(tx, today);
  const oneOffs = await loadOneOffSpans(tx);
  const { leaveOutRetakes } = known.rules.settings;
  const booked = await loadBookedDemand(tx, today, { leaveOutRetakes, locationId });
  return { practiceId: tx.practiceId, today, usage, visitDays, oneOffs, booked, ...known };
}

/** So many shelves are remembered; each holds its histories and methods, no distributions. */
const MOST_REMEMBERED = 8;

/**
 * Forecasts of all consumables of a practice, item by item, so that other requests get their turn
 * in between. An answer is kept for as long as nothing that it depends on has changed.
 */
@Injectable()
export class ForecastShelf {
  private readonly remembered = new Map<string, Promise<ShelfForecasts>>();

  async run(shelf: ShelfUse): Promise<ShelfForecasts> {
    const key = keyOf(shelf);
    const found = this.remembered.get(key);
    const answer = found ?? forecastAll(shelf);
    this.remembered.delete(key);
    this.remembered.set(key, answer);
    const [oldest] = this.remembered.keys();
    if (this.remembered.size > MOST_REMEMBERED && oldest !== undefined) {
      this.remembered.delete(oldest);
    }
    try {
      return await answer;
    } catch (error) {
      this.remembered.delete(key);
      throw error;
    }
  }
}

/** The facts themselves, not a count of them: a late or reversed entry is never missed. */
function keyOf(shelf: ShelfUse): string {
  const { practiceId, today, usage, visitDays, oneOffs, items, rules } = shelf;
  const hash = createHash('sha256');
  hash.update(JSON.stringify([practiceId, today, visitDays, [...oneOffs], rules.settings]));
  for (const { consumableId, stockedSince } of items)
    hash.update(`${consumableId}${stockedSince};`);
  for (const { consumableId, days } of usage) hash.update(`${consumableId} ${days};`);
  return hash.digest('base64');
}

async function forecastAll(shelf: ShelfUse): Promise<ShelfForecasts> {
  const { rules, items } = shelf;
  const turns = new Turns();
  const options = (id: string): ShelfOptions => ({
    horizonDays: usualHorizon(rules),
    seed: seedFrom(id),
  });
  const judged: (Omit<ForecastOfItem, 'forecast'> & { readonly id: string })[] = [];
  const practice = practiceDays(shelf.visitDays.map(epochDay), rules.today);
  const usage = new Map(shelf.usage.map((each) => [each.consumableId, each.days]));
  for (const { consumableId: id, stockedSince } of items) {
    await turns.next();
    const days = usage.get(id);
    const uses = days === undefined ? [] : usesOf(days);
    const { leaveOutRetakes } = rules.settings;
    const oneOffs = shelf.oneOffs.get(id) ?? [];
    const facts = { uses, oneOffs, practice, today: rules.today, stockedSince, leaveOutRetakes };
    const history = itemHistory(facts);
    const backtest = await turns.through(judgeSteps(history, options(id)));
    judged.push({ id, uses, history, judged: backtest });
  }
  const prior = shelfPrior(judged.map((each) => each.judged));
  const forecasts = new Map<string, ForecastOfItem>();
  for (const { id, ...each } of judged) {
    await turns.next();
    const forecast = forecastHistory(each.history, each.judged, prior, options(id));
    forecasts.set(id, { ...each, forecast });
  }
  return forecasts;
}

/** The days that a usual order has to last: review and lead time, in calendar days. */
export function usualHorizon({ settings }: PlanningRules): number {
  return Math.max(1, settings.reviewDays + Math.ceil((settings.leadDays * 7) / 5));
}
