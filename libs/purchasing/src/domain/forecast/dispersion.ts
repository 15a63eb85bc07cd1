import type { PeriodSeries } from './period-series.js';

/** Variance of the use of a period over its mean, as far as an origin knows. */
export interface Dispersion {
  /** In grid steps; null without two periods or without use. */
  readonly ratio: number | null;
  readonly periods: number;
  readonly demands: number;
}

/** The dispersion at origins in rising order, in one walk. */
export function dispersions(series: PeriodSeries, origins: readonly number[]): Dispersion[] {
  const { use, weight } = series;
  let [n, demands, y1, y2, yw, w1, w2] = [0, 0, 0, 0, 0, 0, 0];
  let t = 0;
  return origins.map((origin) => {
    for (; t < origin; t += 1) {
      const w = weight[t] ?? 0;
      if (w <= 0) continue;
      const y = use[t] ?? 0;
      n += 1;
      if (y > 0) demands += 1;
      y1 += y;
      y2 += y * y;
      yw += y * w;
      w1 += w;
      w2 += w * w;
    }
    if (n < 2 || y1 === 0) return { ratio: null, periods: n, demands };
    const m = y1 / w1;
    const variance = Math.max(0, y2 - 2 * m * yw + m * m * w2) / (n - 1);
    return { ratio: variance / (y1 / n), periods: n, demands };
  });
}

/** Fewer demands than this cannot show that use is more even than chance. */
const EVEN_FROM_DEMANDS = 30;
const MOST_EVEN = 0.1;
/** The shelf counts as much as a year of months against an item's own history. */
const SHELF_PERIODS = 12;

/**
 * The ratio to forecast with: the item's own, not below that of pure chance (1) unless many demands
 * show it, drawn towards the shelf's the more the shorter its history is.
 */
export function forecastRatio(own: Dispersion, shelf: number | null): number {
  const floor = own.demands >= EVEN_FROM_DEMANDS ? MOST_EVEN : 1;
  const ratio = Math.max(floor, own.ratio ?? shelf ?? 1);
  if (shelf === null) return ratio;
  const weight = SHELF_PERIODS / (SHELF_PERIODS + own.periods);
  return (1 - weight) * ratio + weight * Math.max(1, shelf);
}
