import { meanInterval, type Series } from './point-methods.js';

export type DemandClass = 'smooth' | 'erratic' | 'intermittent' | 'lumpy';

/** Cut-offs of Syntetos, Boylan & Croston (2005), J. Oper. Res. Soc. 56, 495-503. */
const INTERVAL_CUT = 1.32;
const VARIATION_CUT = 0.49;

/** The two numbers by which demand is classified; the interval in both usual readings. */
export interface DemandShape {
  readonly demands: number;
  /** All periods for each demand, trailing zeros too; Infinity without demand. */
  readonly periodsPerDemand: number;
  /** Periods up to the last demand for each demand (Croston's mean interval). */
  readonly meanInterval: number;
  /** Squared coefficient of variation of the demands that are not 0 (n - 1 in the variance). */
  readonly squaredVariation: number;
}

/** Interval and variation of a series of uses per period. Throws RangeError on a bad use. */
export function demandShape(series: Series): DemandShape {
  const interval = meanInterval(series);
  let demands = 0;
  let sum = 0;
  for (let t = 0; t < series.length; t += 1) {
    const y = series[t] ?? 0;
    if (y > 0) demands += 1;
    sum += y;
  }
  const mean = sum / demands;
  let square = 0;
  for (let t = 0; t < series.length; t += 1) {
    const y = series[t] ?? 0;
    if (y > 0) square += (y - mean) ** 2;
  }
  return {
    demands,
    periodsPerDemand: series.length / demands,
    meanInterval: interval,
    squaredVariation: demands < 2 ? 0 : square / (demands - 1) / mean ** 2,
  };
}

/** The class, or null without demand. A point on a cut belongs to the wilder side. */
export function classifyDemand(
  shape: DemandShape,
  interval: 'periodsPerDemand' | 'meanInterval' = 'periodsPerDemand',
): DemandClass | null {
  if (shape.demands === 0) return null;
  const frequent = shape[interval] < INTERVAL_CUT;
  const even = shape.squaredVariation < VARIATION_CUT;
  if (frequent) return even ? 'smooth' : 'erratic';
  return even ? 'intermittent' : 'lumpy';
}
