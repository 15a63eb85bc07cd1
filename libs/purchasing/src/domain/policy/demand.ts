import type { Distribution as Amounts } from '../forecast/distribution.js';
import type { Random } from '../forecast/seeded-random.js';

export type { Random };

/**
 * What a random quantity may turn out to be; in the formulas continuous, for use in counts. Where
 * known, counts come with what makes a table of them cheap.
 */
export interface Distribution extends Amounts {
  /** The chances of 0, 1, 2, ... */
  readonly weights?: Float64Array;
  /** For counts that follow f(k) = (a + b / k) f(k - 1), with the chance of a single count. */
  readonly a?: number;
  readonly b?: number;
  pmf?(k: number): number;
}

/**
 * The forecast of use of one consumable, in whole counts (one piece, one use, or the smallest
 * amount of paste that is told apart). Days are counted from today, 0; spans that do not overlap
 * are taken to be independent.
 */
export interface Demand {
  /** Use from the start of day `from` to the start of day `to` (whole days, from <= to). */
  use(from: number, to: number): Distribution;
}

class RememberedDemand implements Demand {
  private readonly known = new Map<string, Distribution>();

  constructor(private readonly demand: Demand) {}

  use(from: number, to: number): Distribution {
    const key = `${from}:${to}`;
    const found = this.known.get(key) ?? this.demand.use(from, to);
    this.known.set(key, found);
    return found;
  }
}

/** The same demand, asked only once for each span: a forecast may take long to answer. */
export function remembered(demand: Demand): Demand {
  return demand instanceof RememberedDemand ? demand : new RememberedDemand(demand);
}

/** A lead time of so many whole days, with its chance. The chances of a list add up to 1. */
export interface LeadTimeChance {
  readonly days: number;
  readonly probability: number;
}

export type LeadTime = readonly LeadTimeChance[];

export function meanLeadTime(lead: LeadTime): number {
  return lead.reduce((total, l) => total + l.days * l.probability, 0);
}

/** The smallest number of days within which a delivery comes with at least this chance. */
export function leadTimeWithin(lead: LeadTime, chance: number): number {
  let reached = 0;
  let days = 0;
  for (const l of [...lead].sort((a, b) => a.days - b.days)) {
    days = l.days;
    reached += l.probability;
    if (reached >= chance - 1e-12) break;
  }
  return days;
}

/** Throws RangeError unless the days are whole, at least 0, and the chances add up to 1. */
export function refuseBadLeadTime(lead: LeadTime): void {
  if (lead.some((l) => !Number.isInteger(l.days) || l.days < 0)) {
    throw new RangeError('leadTime: the days are whole and not negative.');
  }
  if (lead.some((l) => !(l.probability >= 0))) {
    throw new RangeError('leadTime: no chance is negative.');
  }
  const total = lead.reduce((sum, l) => sum + l.probability, 0);
  if (Math.abs(total - 1) > 1e-9) throw new RangeError('leadTime: the chances add up to 1.');
}
