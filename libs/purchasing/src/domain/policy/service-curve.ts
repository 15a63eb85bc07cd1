import { type Money, moneyFromMicro, type Quantity } from '#lib/measure';
import { decideOrder } from './decide-order.js';
import { type Demand, leadTimeWithin, type Random, remembered } from './demand.js';
import { expectedMoney, finiteQuantity } from './edge.js';
import { drawArrivals, type Outlook, type ReorderRule, runRule } from './forward.js';
import type { ItemFacts } from './item-facts.js';
import type { OfferPlan } from './offer-plan.js';
import { startOf } from './propose-order.js';
import { drawUse, everyDay, type ShelfStart, type UsePaths } from './simulate.js';

export interface CurveOptions {
  readonly random: Random;
  /** Rising service levels, each between 0 and 1. */
  readonly levels: readonly number[];
  readonly runs?: number;
  readonly horizonDays?: number;
}

/** What the policy for one service level makes of the time to come. */
export interface CurvePoint {
  readonly level: number;
  readonly reorderPoint: Quantity;
  readonly orderUpTo: Quantity;
  readonly averageStock: Quantity;
  /** Null when the item has no price. */
  readonly stockValue: Money | null;
  readonly wasted: Quantity;
  readonly wastedValue: Money | null;
  readonly stockOuts: number;
  readonly fillRate: number;
}

export interface ServiceCurve {
  readonly itemId: string;
  readonly horizonDays: number;
  /** Empty when the item has no offer. */
  readonly points: readonly CurvePoint[];
  /** The policy as it is in force, levels set by hand included; null when there is no offer. */
  readonly now: CurvePoint | null;
}

/** Levels that show the bend of the curve. */
export const CURVE_LEVELS: readonly number[] = [0.8, 0.85, 0.9, 0.95, 0.97, 0.98, 0.99, 0.995];

const RUNS = 20;
const YEAR = 365;

/**
 * Service level against stock, waste and stock-outs: for each level the policy is reckoned anew and
 * followed day by day from the stock really there, over the same random use and lead times. Levels
 * set by hand are left aside, but for `now`. Throws RangeError as `decideOrder` does.
 */
export function serviceCurve(given: ItemFacts, options: CurveOptions): ServiceCurve {
  const steps = curveSteps(given, options);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** The same in steps of some milliseconds, so that somebody else can go first in between. */
export function* curveSteps(
  given: ItemFacts,
  options: CurveOptions,
): Generator<void, ServiceCurve> {
  const facts = { ...given, demand: remembered(given.demand) };
  const horizonDays = options.horizonDays ?? YEAR;
  const runs = options.runs ?? RUNS;
  const start = startOf(facts);
  const world: World = {
    start,
    paths: yield* drawPaths(facts.demand, horizonDays, runs, options.random),
    draws: {
      arrivals: drawArrivals(start.arrivals.length, runs, options.random),
      orders: Float64Array.from({ length: runs * horizonDays }, options.random),
    },
  };
  const points: CurvePoint[] = [];
  for (const level of options.levels) {
    const target = { ...facts.target, level };
    const point = yield* follow({ ...facts, target, override: null }, world);
    if (point) points.push(point);
  }
  const now = yield* follow(facts, world);
  return { itemId: facts.itemId, horizonDays, points, now };
}

/** What every policy of an item is followed through: the same start, use and lead times. */
interface World {
  readonly start: ShelfStart;
  readonly paths: UsePaths;
  readonly draws: { readonly arrivals: readonly Float64Array[]; readonly orders: Float64Array };
}

/** Days drawn in one step. */
const DRAWN_AT_ONCE = 60;

function* drawPaths(
  demand: Demand,
  horizonDays: number,
  runs: number,
  random: Random,
): Generator<void, UsePaths> {
  const days = everyDay(horizonDays);
  const use = new Float64Array(runs * horizonDays);
  for (let from = 0; from < horizonDays; from += DRAWN_AT_ONCE) {
    const some = days.slice(from, from + DRAWN_AT_ONCE + 1);
    const drawn = drawUse(demand, some, runs, random);
    const spans = some.length - 1;
    for (let r = 0; r < runs; r += 1) {
      use.set(drawn.use.subarray(r * spans, (r + 1) * spans), r * horizonDays + from);
    }
    yield;
  }
  return { days, runs, use };
}

function* follow(facts: ItemFacts, world: World): Generator<void, CurvePoint | null> {
  const { plan, yearlyUse } = decideOrder(facts);
  yield;
  if (!plan) return null;
  const rule = ruleOf(facts, plan, yearlyUse / YEAR);
  const outlook = runRule(world.start, rule, world.paths, world.draws);
  yield;
  return pointOf(facts, plan, outlook);
}

/** The plan of an offer as a rule that can be followed. */
function ruleOf(facts: ItemFacts, plan: OfferPlan, dailyUse: number): ReorderRule {
  const { counts, offer } = plan;
  const lead = leadTimeWithin(offer.leadTime, 0.5);
  // What is hardly used any more is bought once something is owed, and not for the shelf.
  const onlyOwed = plan.usualPacks === 0 && plan.reorderPoint === 0;
  return {
    reorderPoint: onlyOwed ? -1 : plan.reorderPoint,
    orderUpTo: plan.orderUpTo,
    usualPacks: plan.usualPacks,
    pack: counts.pack,
    minimumPacks: counts.minimumPacks,
    cap: plan.longRunCap,
    leadTime: offer.leadTime,
    usableDays: counts.usableDays,
    reviewDays: facts.reviewDays,
    lookAheadDays: Math.max(lead + facts.reviewDays - 1, 0),
    dailyUse,
  };
}

function pointOf(facts: ItemFacts, plan: OfferPlan, outlook: Outlook): CurvePoint {
  const exact = (counts: number) => finiteQuantity(counts, facts.countSize);
  const price = plan.counts.unitPrice(plan.lot.packs);
  const value = (counts: number) => (price === null ? null : expectedMoney(counts * price));
  return {
    level: facts.target.level,
    reorderPoint: exact(plan.reorderPoint),
    orderUpTo: exact(plan.orderUpTo),
    averageStock: exact(outlook.averageStock),
    stockValue: value(outlook.averageStock),
    wasted: exact(outlook.wasted),
    wastedValue: value(outlook.wasted),
    stockOuts: outlook.stockOuts,
    fillRate: outlook.fillRate,
  };
}

/** One point of the whole shelf; items without a price add to the stock-outs only. */
export interface ShelfSums {
  readonly stockValue: Money;
  readonly wastedValue: Money;
  readonly stockOuts: number;
  readonly items: number;
  readonly itemsWithoutPrice: number;
}

export interface ShelfPoint extends ShelfSums {
  readonly level: number;
}

/** Adds the curves of the items up, level by level. Exact sums; the order does not matter. */
export function shelfCurve(curves: readonly ServiceCurve[]): readonly ShelfPoint[] {
  const levels = new Set(curves.flatMap((curve) => curve.points.map((point) => point.level)));
  return [...levels]
    .sort((a, b) => a - b)
    .map((level) => {
      const points = curves.flatMap((curve) => curve.points.filter((p) => p.level === level));
      return { level, ...shelfSums(points) };
    });
}

/** What the policies in force add up to, whatever level each item has. */
export function shelfNow(curves: readonly ServiceCurve[]): ShelfSums {
  return shelfSums(curves.flatMap((curve) => curve.now ?? []));
}

function shelfSums(points: readonly CurvePoint[]): ShelfSums {
  const sum = (of: (point: CurvePoint) => Money | null) =>
    moneyFromMicro(points.reduce((total, point) => total + (of(point) ?? 0n), 0n));
  return {
    stockValue: sum((point) => point.stockValue),
    wastedValue: sum((point) => point.wastedValue),
    // Added from the smallest up, so that the order of the items cannot show in the last digit.
    stockOuts: points
      .map((point) => point.stockOuts)
      .sort((a, b) => a - b)
      .reduce((a, b) => a + b, 0),
    items: points.length,
    itemsWithoutPrice: points.filter((point) => point.stockValue === null).length,
  };
}
