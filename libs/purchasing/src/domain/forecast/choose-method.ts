import type { Backtest } from './backtest.js';
import { followsDeath, type Method } from './methods.js';
import type { PeriodSeries } from './period-series.js';

/** What the whole shelf teaches about each of its items. */
export interface ShelfPrior {
  /** Loss of each method against the mean of all; null where no item could be judged. */
  readonly losses: readonly (number | null)[];
  /** Variance over mean of the use of a period, a mean over all demands; null without one. */
  readonly ratio: number | null;
  /** Use against what was expected of it over past windows: below 1, the shelf fades. */
  readonly drift: number;
}

const DRIFT_LEAST = 0.7;
const DRIFT_MOST = 1.3;
/** As many usual uses must have been expected before half of a drift is believed. */
const DRIFT_USES = 200;

/** Gathers the shelf item by item, so that it needs no memory of them. */
export class ShelfGatherer {
  private readonly loss: number[];
  private readonly judged: number[];
  private used = 0;
  private expected = 0;
  private ratio = 0;
  private demands = 0;

  constructor(readonly methods: number) {
    this.loss = new Array<number>(methods).fill(0);
    this.judged = new Array<number>(methods).fill(0);
  }

  /** Losses are told in usual uses, so that grams and pieces weigh alike. */
  add(item: Backtest): void {
    const ratio = item.dispersion.ratio;
    if (ratio !== null) {
      this.ratio += ratio * item.dispersion.demands;
      this.demands += item.dispersion.demands;
    }
    if (item.origins === 0) return;
    this.used += item.used;
    this.expected += item.expected;
    const common = commonLoss(item);
    if (common === 0) return;
    for (let m = 0; m < this.methods; m += 1) {
      const loss = item.losses[m] ?? null;
      if (loss === null) continue;
      // Against the first method on the same item: a method that skips items gains nothing by it.
      this.loss[m] = (this.loss[m] ?? 0) + (loss - common) / item.usualUse;
      this.judged[m] = (this.judged[m] ?? 0) + common / item.usualUse;
    }
  }

  prior(): ShelfPrior {
    const raw = (this.used + DRIFT_USES) / (this.expected + DRIFT_USES);
    return {
      losses: this.loss.map((sum, m) => {
        const base = this.judged[m] ?? 0;
        return base === 0 ? null : 1 + sum / base;
      }),
      ratio: this.demands === 0 ? null : this.ratio / this.demands,
      drift: Math.min(DRIFT_MOST, Math.max(DRIFT_LEAST, raw)),
    };
  }
}

/** How widely the drifts of the items of a shelf are spread about its own; no source. */
const DRIFT_SPREAD = 0.15;

/**
 * What a shelf's drift makes of one item: an item that has enough use of its own to show that it
 * was used as expected is not taken along. Between the shelf's drift and 1, the nearer to what the
 * item itself shows the less chance there is in its use.
 */
export function driftOf(item: Backtest, shelf: number): number {
  if (item.expected === 0 || item.usualUse === 0) return shelf;
  const own = item.used / item.expected;
  const [low, high] = shelf < 1 ? [shelf, 1] : [1, shelf];
  const shown = Math.min(high, Math.max(low, own));
  const chance = ((item.dispersion.ratio ?? 1) / item.usualUse) * (item.overlap / item.expected);
  const trust = DRIFT_SPREAD ** 2 / (DRIFT_SPREAD ** 2 + chance);
  return shelf + trust * (shown - shelf);
}

function commonLoss(item: Backtest): number {
  return item.losses[0] ?? 0;
}

/** Without a shelf nothing drifts and no method is better than another. */
export const NO_SHELF: ShelfPrior = { losses: [], ratio: null, drift: 1 };

export type ChoiceReason = 'no use' | 'short history' | 'died out' | 'least loss in the backtest';

export interface Choice {
  /** Place in the list of methods. */
  readonly index: number;
  readonly reason: ChoiceReason;
  /** Own loss over that of the default; null where it was not judged. */
  readonly ownLoss: number | null;
}

/** An item's own origins weigh as much as the shelf once there are this many. */
const SHELF_ORIGINS = 30;
/** Leaving the default needs a reason: this much less loss. */
const DEFAULT_ADVANTAGE = 0.02;
const LEAST_ORIGINS = 3;
const LEAST_DEMANDS = 4;

/**
 * The method with the least pinball loss, its own and the shelf's weighed by how often the item
 * could be judged; the first method for short histories. An item that died out is left to methods
 * that notice it.
 */
export function chooseMethod(
  methods: readonly Method[],
  item: Backtest,
  options: { readonly shelf: ShelfPrior; readonly died: boolean },
): Choice {
  const none = { index: 0, ownLoss: null };
  if (item.usualUse === 0) return { ...none, reason: 'no use' };
  const dying = options.died;
  if (item.origins < LEAST_ORIGINS || item.dispersion.demands < LEAST_DEMANDS) {
    return { ...none, reason: dying ? 'died out' : 'short history' };
  }
  const common = commonLoss(item);
  const trust = item.origins / (item.origins + SHELF_ORIGINS);
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (const [m, method] of methods.entries()) {
    const loss = item.losses[m] ?? null;
    if (loss === null || (dying && !followsDeath(method))) continue;
    const own = common === 0 ? 1 : loss / common;
    const score = trust * own + (1 - trust) * (options.shelf.losses[m] ?? 1);
    const total = m === 0 ? score - DEFAULT_ADVANTAGE : score;
    if (total < least) [best, least] = [m, total];
  }
  const ownLoss = item.losses[best] ?? null;
  return {
    index: best,
    reason: dying ? 'died out' : 'least loss in the backtest',
    ownLoss: ownLoss === null || common === 0 ? null : ownLoss / common,
  };
}

/** So long a silence happens by chance this rarely. */
const SILENCE_CHANCE = 0.01;

/**
 * Whether an item's present silence is too long for the rate it had between its first and last
 * use: P(no use for so long) = (1 - 1 / interval)^silence below 1 %. Needs two uses.
 */
export function hasDied(series: PeriodSeries): boolean {
  let [uses, before, since] = [0, 0, 0];
  for (let t = 0; t < series.use.length; t += 1) {
    since += series.weight[t] ?? 0;
    if ((series.use[t] ?? 0) === 0) continue;
    uses += 1;
    before += since;
    since = 0;
  }
  if (uses < 2) return false;
  const rate = Math.min(0.999, uses / Math.max(before, uses));
  return since * Math.log1p(-rate) < Math.log(SILENCE_CHANCE);
}
