import { monthOf, weekdayOf } from './calendar.js';
import type { DemandHistory } from './usage-history.js';

/** Use per period with what a period is expected to weigh; all arrays have one entry per period. */
export interface PeriodSeries {
  /** In grid steps. */
  readonly use: Float64Array;
  /** Expected use of a period against an average one; 0 where there is no evidence. */
  readonly weight: Float64Array;
  /** Periods that resemble each other (weekday), for resampling. */
  readonly kind: Uint8Array;
  /** Place in the year (month), or null where the periods are not in a year. */
  readonly season: Uint8Array | null;
  /** Periods in a year, for the seasonal method. */
  readonly yearLength: number;
}

/** A series of equal periods without a calendar, such as weeks or months. */
export function plainSeries(use: ArrayLike<number>, yearLength = 0): PeriodSeries {
  const n = use.length;
  for (let t = 0; t < n; t += 1) {
    const y = use[t] ?? Number.NaN;
    if (!(y >= 0 && Number.isFinite(y))) {
      throw new RangeError(`use in period ${t + 1} must be a number of at least 0, not ${y}`);
    }
  }
  return {
    use: Float64Array.from(use),
    weight: new Float64Array(n).fill(1),
    kind: new Uint8Array(n),
    season: yearLength > 0 ? Uint8Array.from({ length: n }, (_, t) => t % yearLength) : null,
    yearLength,
  };
}

const DAYS_PER_YEAR = 365;

/** A history with the weight of each weekday put on its days. */
export function dailySeries(history: DemandHistory, profile: readonly number[]): PeriodSeries {
  const { demand, counts, firstDay } = history;
  const n = demand.length;
  const kind = Uint8Array.from({ length: n }, (_, t) => weekdayOf(firstDay + t));
  const weight = Float64Array.from({ length: n }, (_, t) =>
    counts[t] === 1 ? (profile[kind[t] ?? 0] ?? 0) : 0,
  );
  const season = Uint8Array.from({ length: n }, (_, t) => monthOf(firstDay + t));
  return { use: demand, weight, kind, season, yearLength: DAYS_PER_YEAR };
}

/** Between-weekday variance that is believed beforehand, as a squared coefficient of variation. */
const WEEKDAY_SPREAD = 0.09;
const MONTH_SPREAD = 0.04;

/**
 * What each weekday uses against the average open day: its own mean drawn towards the common one,
 * the more so the less the data can tell (Buehlmann credibility with an assumed spread of 0.3).
 * Weekdays without evidence weigh 1 if the practice works then, else 0. Open weekdays average 1.
 */
export function weekdayProfile(history: DemandHistory, upTo = history.demand.length): number[] {
  const groups = new Groups(7);
  for (let t = 0; t < upTo; t += 1) {
    if (history.counts[t] === 1)
      groups.add(weekdayOf(history.firstDay + t), history.demand[t] ?? 0);
  }
  const factors = groups.factors(WEEKDAY_SPREAD);
  return factors.map((factor, i) =>
    history.calendar.openWeekdays[i] === true || groups.seen(i) > 0 ? factor : 0,
  );
}

/** Sums by group, and each group's factor against the mean of all. */
export class Groups {
  private readonly count: Float64Array;
  private readonly sum: Float64Array;
  private readonly square: Float64Array;

  constructor(readonly size: number) {
    this.count = new Float64Array(size);
    this.sum = new Float64Array(size);
    this.square = new Float64Array(size);
  }

  add(group: number, use: number): void {
    this.count[group] = (this.count[group] ?? 0) + 1;
    this.sum[group] = (this.sum[group] ?? 0) + use;
    this.square[group] = (this.square[group] ?? 0) + use * use;
  }

  seen(group: number): number {
    return this.count[group] ?? 0;
  }

  /** Factors by credibility; they average 1 over what was seen. All 1 without use. */
  factors(spread = MONTH_SPREAD): number[] {
    const n = total(this.count);
    const mean = total(this.sum) / n;
    if (!(mean > 0)) return new Array<number>(this.size).fill(1);
    const needed = this.noise(n, mean) / (mean * mean) / spread;
    const raw = Array.from(this.count, (count, g) =>
      count === 0 ? 1 : ((this.sum[g] ?? 0) + needed * mean) / (count + needed) / mean,
    );
    const average = raw.reduce((sum, factor, g) => sum + (factor * this.seen(g)) / n, 0);
    return raw.map((factor) => factor / average);
  }

  /** Variance within the groups, and some of the whole: few periods agree by chance. */
  private noise(n: number, mean: number): number {
    let within = 0;
    for (let g = 0; g < this.size; g += 1) {
      const [count, sum] = [this.seen(g), this.sum[g] ?? 0];
      if (count > 0) within += Math.max(0, (this.square[g] ?? 0) - (sum * sum) / count);
    }
    const whole = Math.max(0, total(this.square) / n - mean * mean);
    return within / n + (whole * this.size) / n;
  }
}

function total(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0);
}
