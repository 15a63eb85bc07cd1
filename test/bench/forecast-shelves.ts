import { parentPort, workerData } from 'node:worker_threads';
import { quantity } from '#lib/measure';
import { moneyFromMicro } from '../../libs/measure/src/index.js';
import { countWith } from '../../libs/purchasing/src/domain/forecast/counts.js';
import {
  backtest,
  candidateMethods,
  certain,
  forecastItem,
  plainSeries,
  SERVICE_LEVELS,
  ShelfGatherer,
  seededRandom,
} from '../../libs/purchasing/src/domain/forecast/index.js';
import type { ItemForecast } from '../../libs/purchasing/src/domain/forecast/item-forecast.js';
import {
  type Demand,
  decideOrder,
  type ItemFacts,
} from '../../libs/purchasing/src/domain/policy/index.js';

/** One of the workers: shelves of invented series, judged, forecast and decided on one by one. */
export interface ShelvesTask {
  readonly firstShelf: number;
  readonly shelves: number;
  readonly items: number;
  readonly weeks: number;
}

export interface ShelfDone {
  readonly proposed: number;
  readonly packs: number;
}

const METHODS = candidateMethods('week');
const HORIZON = 3;
const DAYS = 7;

/** Invented weekly use: some items every week, most now and then, a few dying. */
export function inventedWeeks(items: number, weeks: number, seed: number): Float64Array[] {
  const random = seededRandom(seed);
  return Array.from({ length: items }, (_, i) => {
    const chance = 0.02 + 0.9 * random() ** 2;
    const size = 1 + Math.floor(6 * random() ** 2);
    const end = i % 10 === 0 ? weeks * random() : weeks;
    return Float64Array.from({ length: weeks }, (__, t) =>
      t < end && random() < chance ? 1 + Math.floor(size * random()) : 0,
    );
  });
}

/** A weekly forecast asked by the day: a span is so many weeks, whole or not. */
function dailyDemand(item: ItemForecast): Demand {
  const over = (weight: number[]) =>
    item.over({
      weight: Float64Array.from(weight),
      kind: new Uint8Array(weight.length),
      season: null,
    });
  const drawn = item.method.name === 'resampling';
  const week = drawn ? over([1]) : null;
  return {
    use: (from, to) => {
      const weeks = (to - from) / DAYS;
      if (weeks === 0) return certain(0);
      // Weeks are drawn one by one; longer spans are as well told by their mean and variance.
      if (week) return weeks === 1 ? week : countWith(week.mean * weeks, week.variance * weeks);
      return over([weeks]);
    },
  };
}

const LEAD = [
  { days: 2, probability: 0.15 },
  { days: 3, probability: 0.45 },
  { days: 4, probability: 0.25 },
  { days: 7, probability: 0.15 },
];

/** A box of ten that lives for a year and a half, looked at once a week. */
function factsOf(id: string, demand: Demand, onHand: number): ItemFacts {
  return {
    itemId: id,
    countSize: quantity('1'),
    demand,
    reviewDays: 7,
    lots: onHand === 0 ? [] : [{ quantity: quantity(String(onHand)), usableDays: 200 }],
    openOrders: [],
    openShortfall: quantity('0'),
    offers: [
      {
        offerId: 'box',
        supplierId: 'supplier',
        packContent: quantity('10'),
        tiers: [{ fromPacks: 1n, packPrice: moneyFromMicro(24_000_000n) }],
        discount: 'all units',
        minimumPacks: 1n,
        usableDaysOnArrival: 540,
        leadTime: LEAD,
      },
    ],
    orderCost: moneyFromMicro(5_000_000n),
    carryingRate: 0.2,
    target: { measure: 'cycle service', level: 0.95 },
    override: null,
    limits: { shelfRoom: null, budget: null, expiryCertainty: 0.9 },
  };
}

/** Judges, forecasts and decides one shelf. */
export function decideShelf(shelf: number, items: number, weeks: number): ShelfDone {
  const settings = { methods: METHODS, horizon: HORIZON, levels: SERVICE_LEVELS, seed: 7 };
  const gatherer = new ShelfGatherer(METHODS.length);
  const judged = inventedWeeks(items, weeks, shelf + 1).map((use) => {
    const series = plainSeries(use);
    const result = backtest(series, settings);
    gatherer.add(result);
    return { series, result };
  });
  const prior = gatherer.prior();
  let [proposed, packs] = [0, 0];
  for (const [i, { series, result }] of judged.entries()) {
    const resampling = { draws: 1000, seed: 7 };
    const item = forecastItem(series, result, { methods: METHODS, shelf: prior, resampling });
    const facts = factsOf(`${shelf}-${i}`, dailyDemand(item), i % 4);
    const { limited } = decideOrder(facts);
    if (limited.packs > 0) proposed += 1;
    packs += limited.packs;
  }
  return { proposed, packs };
}

if (parentPort !== null) {
  const { firstShelf, shelves, items, weeks } = workerData as ShelvesTask;
  for (let shelf = firstShelf; shelf < firstShelf + shelves; shelf += 1) {
    parentPort.postMessage(decideShelf(shelf, items, weeks));
  }
}
