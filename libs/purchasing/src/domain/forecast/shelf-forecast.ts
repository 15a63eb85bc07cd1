import { allAtOnce, type Backtest, backtestSteps, originsOf } from './backtest.js';
import type { BookedDays } from './booked-visits.js';
import { type EpochDay, isOpen, monthOf, weekdayOf } from './calendar.js';
import { ShelfGatherer, type ShelfPrior } from './choose-method.js';
import { classifyDemand, type DemandClass, demandShape } from './demand-class.js';
import type { Distribution } from './distribution.js';
import { forecastItem, type ItemForecast } from './item-forecast.js';
import { SERVICE_LEVELS } from './measures.js';
import { candidateMethods } from './methods.js';
import { dailySeries, type PeriodSeries, weekdayProfile } from './period-series.js';
import type { Window } from './predict.js';
import {
  expectedFromSteps,
  inQuantities,
  type QuantityDistribution,
  toSteps,
} from './quantity-grid.js';
import type { DemandHistory } from './usage-history.js';

/** What a forecast took for granted; the screen turns each into a sentence. */
export type Assumption =
  | { readonly code: 'no use yet'; readonly days: number }
  | { readonly code: 'few uses'; readonly uses: number }
  | { readonly code: 'short history'; readonly days: number }
  | { readonly code: 'died out'; readonly daysSinceUse: number }
  | { readonly code: 'left out as one-off or retake'; readonly quantity: bigint }
  | { readonly code: 'shortfalls counted as use'; readonly quantity: bigint };

/** What the visits booked will use, in millionths, from the day after the history on. */
export interface BookedUse {
  readonly quantities: readonly bigint[];
  /** How far each varies, in stock units squared; as pure chance would when left out. */
  readonly variances?: readonly number[];
  /** Share of a usual day booked already, 0 to 1 by day; null when it is not known. */
  readonly coverage: readonly number[] | null;
}

/** The forecast of one item from the day after its history on. */
export interface DayForecast {
  readonly item: ItemForecast;
  readonly step: bigint;
  readonly demandClass: DemandClass | null;
  readonly assumptions: readonly Assumption[];
  /** The first day forecast. */
  readonly firstDay: EpochDay;
  /** Expected use of each day, in millionths, by the statistics alone. */
  expectedByDay(days: number): bigint[];
  /** Use over so many days from the first day on, in grid steps. */
  stepsOver(days: number, booked?: BookedUse): Distribution;
  /** The same in quantities. */
  over(days: number, booked?: BookedUse): QuantityDistribution;
}

export interface ShelfOptions {
  /** Days one forecast adds up in the backtest: the usual lead time and review period. */
  readonly horizonDays: number;
  readonly seed: number;
  /** Draws of the resampling method; 2000 unless given. */
  readonly draws?: number;
}

/** How the methods did on one item. Call once per item, then gather, then forecast. */
export function judgeHistory(history: DemandHistory, options: ShelfOptions): Backtest {
  return allAtOnce(judgeSteps(history, options));
}

/** The same in steps of a few milliseconds, so that somebody else can go first in between. */
export function judgeSteps(
  history: DemandHistory,
  options: ShelfOptions,
): Generator<void, Backtest> {
  const settings = {
    methods: candidateMethods('day'),
    horizon: options.horizonDays,
    levels: SERVICE_LEVELS,
    seed: options.seed,
  };
  // The pattern of the week comes from before the first origin, so that no origin looks ahead.
  const [first] = originsOf(history.demand.length, settings);
  const profile = weekdayProfile(history, first ?? history.demand.length);
  return backtestSteps(dailySeries(history, profile), settings);
}

/** What the items judged teach about each other. */
export function shelfPrior(judged: Iterable<Backtest>): ShelfPrior {
  const gatherer = new ShelfGatherer(candidateMethods('day').length);
  for (const item of judged) gatherer.add(item);
  return gatherer.prior();
}

/** The forecast of an item, with the method chosen for it and what it assumed. */
export function forecastHistory(
  history: DemandHistory,
  judged: Backtest,
  shelf: ShelfPrior,
  options: ShelfOptions,
): DayForecast {
  const profile = weekdayProfile(history);
  const series = dailySeries(history, profile);
  const resampling = { draws: options.draws ?? 2000, seed: options.seed };
  const item = forecastItem(series, judged, {
    methods: candidateMethods('day'),
    shelf,
    resampling,
  });
  const firstDay = history.firstDay + history.demand.length;
  const { step } = history;
  const window = (days: number) => futureWindow(history, profile, firstDay, days);
  const stepsOver = (days: number, booked?: BookedUse) =>
    booked === undefined
      ? item.over(window(days))
      : item.over(window(days), bookedInSteps(booked, { from: 0, days }, step));
  const known = series.use.filter((_, t) => (series.weight[t] ?? 0) > 0);
  return {
    item,
    step,
    demandClass: classifyDemand(demandShape(known)),
    assumptions: assumptionsOf(history, series, item),
    firstDay,
    expectedByDay: (days) =>
      Array.from(item.expected(window(days)), (steps) => expectedFromSteps(steps, step)),
    stepsOver,
    over: (days, booked) => inQuantities(stepsOver(days, booked), step),
  };
}

function futureWindow(
  history: DemandHistory,
  profile: readonly number[],
  firstDay: EpochDay,
  days: number,
): Window {
  if (!Number.isInteger(days) || days < 0) {
    throw new RangeError(`days must be a whole number of at least 0, not ${days}`);
  }
  const kind = Uint8Array.from({ length: days }, (_, t) => weekdayOf(firstDay + t));
  const weight = Float64Array.from({ length: days }, (_, t) =>
    isOpen(history.calendar, firstDay + t) ? (profile[kind[t] ?? 0] ?? 0) : 0,
  );
  const season = Uint8Array.from({ length: days }, (_, t) => monthOf(firstDay + t));
  return { weight, kind, season };
}

/**
 * What is booked on so many days, the first of them `from` days after the history. Days beyond what
 * was passed in have nothing booked.
 */
export function bookedInSteps(
  booked: BookedUse,
  span: { readonly from: number; readonly days: number },
  step: bigint,
): BookedDays {
  const { quantities, variances, coverage } = booked;
  const each = (of: (t: number) => number) =>
    Float64Array.from({ length: span.days }, (_, i) => of(span.from + i));
  const square = (1_000_000 / Number(step)) ** 2;
  return {
    booked: each((t) => toSteps(quantities[t] ?? 0n, step)),
    ...(variances === undefined ? {} : { variance: each((t) => (variances[t] ?? 0) * square) }),
    coverage: coverage === null ? null : each((t) => coverage[t] ?? 0),
  };
}

const SHORT_DAYS = 60;
const FEW_USES = 4;

function assumptionsOf(
  history: DemandHistory,
  series: PeriodSeries,
  item: ItemForecast,
): Assumption[] {
  const found: Assumption[] = [];
  const days = history.demand.length;
  const uses = history.demand.reduce((count, y) => count + (y > 0 ? 1 : 0), 0);
  if (uses === 0) found.push({ code: 'no use yet', days });
  else if (uses < FEW_USES) found.push({ code: 'few uses', uses });
  if (item.choice.reason === 'short history' && days < SHORT_DAYS) {
    found.push({ code: 'short history', days });
  }
  if (item.died) {
    const last = series.use.findLastIndex((y) => y > 0);
    found.push({ code: 'died out', daysSinceUse: days - 1 - last });
  }
  if (history.leftOut > 0n) {
    found.push({ code: 'left out as one-off or retake', quantity: history.leftOut });
  }
  if (history.shortfall > 0n) {
    found.push({ code: 'shortfalls counted as use', quantity: history.shortfall });
  }
  return found;
}
