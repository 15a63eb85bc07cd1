import type { LeadTime, Random } from './demand.js';
import { packsWhenDue } from './order-rules.js';
import { drawLeadTime, ShelfRun, type ShelfStart, type UsePaths } from './simulate.js';

/** What the runs say, as means; quantities in counts. */
export interface Outlook {
  readonly runs: number;
  /** Share of the runs in which anything was missing. */
  readonly stockOutChance: number;
  /** Times that the shelf ran out while something was wanted. */
  readonly stockOuts: number;
  readonly short: number;
  /** Share of what was wanted that was there; 1 when nothing was wanted. */
  readonly fillRate: number;
  readonly received: number;
  readonly used: number;
  readonly wasted: number;
  readonly left: number;
  readonly averageStock: number;
}

/** A rule that orders again and again, in counts. */
export interface ReorderRule {
  readonly reorderPoint: number;
  readonly orderUpTo: number;
  /** As in `DueItem`; left out, the level is ordered up to. */
  readonly usualPacks?: number | null;
  readonly pack: number;
  readonly minimumPacks: number;
  /** The most that is there and on its way after an order, for the sake of expiry. */
  readonly cap: number;
  readonly leadTime: LeadTime;
  /** Days that goods may be used after they came. */
  readonly usableDays: number;
  readonly reviewDays: number;
  /** Expiry within so many days is taken off the position, at this use a day. */
  readonly lookAheadDays: number;
  readonly dailyUse: number;
}

/** One random number for every run of every arrival; the same ones serve all that is compared. */
export function drawArrivals(arrivals: number, runs: number, random: Random): Float64Array[] {
  return Array.from({ length: arrivals }, () => Float64Array.from({ length: runs }, random));
}

/**
 * What is there and on its way, used up first expiry first, with nothing ordered any more. The days
 * of the paths hold every day on which a lot may come or expire (`eventDays`).
 */
export function runOff(
  start: ShelfStart,
  paths: UsePaths,
  draws: readonly Float64Array[],
): Outlook {
  const spans = paths.days.length - 1;
  const tally = new Tally(paths);
  for (let r = 0; r < paths.runs; r += 1) {
    const run = new ShelfRun(start);
    const coming = start.arrivals.map((arrival, a) => ({
      day: drawLeadTime(arrival.when, draws[a]?.[r] ?? 0),
      arrival,
    }));
    let received = 0;
    for (let i = 0; i < spans; i += 1) {
      const [from, to] = [paths.days[i] ?? 0, paths.days[i + 1] ?? 0];
      for (const { day, arrival } of coming) {
        if (day !== from) continue;
        received += arrival.quantity;
        run.put(arrival.quantity, day + arrival.usableDays);
      }
      run.expire(from);
      run.settle();
      run.take(paths.use[r * spans + i] ?? 0, to - from);
      run.expire(to);
    }
    tally.add(run, received, r);
  }
  return tally.means();
}

/** As `runOff`, but ordering by the rule; the paths are by the day (`everyDay`). */
export function runRule(
  start: ShelfStart,
  rule: ReorderRule,
  paths: UsePaths,
  draws: { readonly arrivals: readonly Float64Array[]; readonly orders: Float64Array },
): Outlook {
  const days = paths.days.length - 1;
  const tally = new Tally(paths);
  const every = Math.max(rule.reviewDays, 1);
  for (let r = 0; r < paths.runs; r += 1) {
    const run = new ShelfRun(start);
    const coming = start.arrivals.map((arrival, a) => ({
      day: drawLeadTime(arrival.when, draws.arrivals[a]?.[r] ?? 0),
      quantity: arrival.quantity,
      usableDays: arrival.usableDays,
    }));
    let received = 0;
    for (let day = 0; day < days; day += 1) {
      if (day % every === 0) {
        const quantity = orderNow(run, coming, rule, day);
        const lead = drawLeadTime(rule.leadTime, draws.orders[r * days + day] ?? 0);
        if (quantity > 0) coming.push({ day: day + lead, quantity, usableDays: rule.usableDays });
      }
      for (let i = coming.length - 1; i >= 0; i -= 1) {
        const next = coming[i];
        if (!next || next.day > day) continue;
        received += next.quantity;
        run.put(next.quantity, day + next.usableDays);
        coming.splice(i, 1);
      }
      run.expire(day);
      run.settle();
      run.take(paths.use[r * days + day] ?? 0, 1);
      run.expire(day + 1);
    }
    tally.add(run, received, r);
  }
  return tally.means();
}

function orderNow(
  run: ShelfRun,
  coming: readonly { readonly quantity: number }[],
  rule: ReorderRule,
  day: number,
): number {
  const onOrder = coming.reduce((sum, next) => sum + next.quantity, 0);
  const expiring = run.steadilyExpiring(day, rule.lookAheadDays, rule.dailyUse);
  const position = run.onHand + onOrder - run.owed - expiring;
  if (position > rule.reorderPoint) return 0;
  const wanted = packsWhenDue({ ...rule, position, usualPacks: rule.usualPacks ?? null });
  const most = Math.floor((rule.cap - position) / rule.pack + 1e-9);
  return Math.max(Math.min(wanted, most), rule.minimumPacks) * rule.pack;
}

class Tally {
  private outs = 0;
  private stockOuts = 0;
  private short = 0;
  private wanted = 0;
  private received = 0;
  private used = 0;
  private wasted = 0;
  private left = 0;
  private stockDays = 0;

  constructor(private readonly paths: UsePaths) {}

  add(run: ShelfRun, received: number, r: number): void {
    const spans = this.paths.days.length - 1;
    for (let i = 0; i < spans; i += 1) this.wanted += this.paths.use[r * spans + i] ?? 0;
    // What was owed before counts not: only whether anything wanted since was missing.
    if (run.short > 0) this.outs += 1;
    this.stockOuts += run.stockOuts;
    this.short += run.short;
    this.received += received;
    this.used += run.used;
    this.wasted += run.wasted;
    this.left += run.onHand;
    this.stockDays += run.stockDays;
  }

  means(): Outlook {
    const { runs, days } = this.paths;
    const horizon = (days.at(-1) ?? 0) - (days[0] ?? 0);
    return {
      runs,
      stockOutChance: this.outs / runs,
      stockOuts: this.stockOuts / runs,
      short: this.short / runs,
      fillRate: this.wanted === 0 ? 1 : 1 - this.short / this.wanted,
      received: this.received / runs,
      used: this.used / runs,
      wasted: this.wasted / runs,
      left: this.left / runs,
      averageStock: horizon === 0 ? this.left / runs : this.stockDays / runs / horizon,
    };
  }
}
