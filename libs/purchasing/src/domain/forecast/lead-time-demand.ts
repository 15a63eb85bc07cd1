import { checkMoment, type Distribution, type LatticeLike, mixture } from './distribution.js';
import { asLattice, isLattice, type Lattice, latticeMixture } from './lattice.js';

export interface Moments {
  readonly mean: number;
  readonly variance: number;
}

/**
 * Mean and variance of demand over a random lead time: d L and L s_d^2 + d^2 s_L^2 (every textbook
 * on stock; independent days and lead times). With a review period R pass R + L. Throws RangeError.
 */
export function demandOverLeadMoments(day: Moments, lead: Moments): Moments {
  checkMoment('mean demand of a day', day.mean);
  checkMoment('variance of demand of a day', day.variance);
  checkMoment('mean lead time', lead.mean);
  checkMoment('variance of lead time', lead.variance);
  return {
    mean: day.mean * lead.mean,
    variance: lead.mean * day.variance + day.mean ** 2 * lead.variance,
  };
}

const NEGLIGIBLE = 1e-9;
const LONGEST_LATTICE = 5000;

/**
 * Demand until an order placed now (and, with a review period, the next one) has arrived: the exact
 * mixture of the demand over each number of days, weighed by how likely the lead time is. `over(n)`
 * is the demand of the first n days. Throws RangeError on a bad review period.
 */
export function demandOverLead(
  over: (days: number) => Distribution,
  leadDays: Lattice,
  reviewDays = 0,
): Distribution {
  if (!Number.isInteger(reviewDays) || reviewDays < 0) {
    throw new RangeError(`reviewDays must be a whole number of at least 0, not ${reviewDays}`);
  }
  const parts: { weight: number; of: Distribution }[] = [];
  for (let days = 0; days < leadDays.weights.length; days += 1) {
    const weight = leadDays.weights[days] ?? 0;
    if (weight > NEGLIGIBLE) parts.push({ weight, of: over(days + reviewDays) });
  }
  const lattices = parts.map(({ weight, of }) => ({ weight, of: latticeOf(of) }));
  const whole = lattices.filter(
    (part): part is { weight: number; of: Lattice } => part.of !== null,
  );
  return whole.length === parts.length ? latticeMixture(whole) : mixture(parts);
}

/** Counts are summed up as lattices while that is quick. */
function latticeOf(of: Distribution): Lattice | null {
  if (isLattice(of)) return of;
  if (!isCount(of) || of.mean + 12 * Math.sqrt(of.variance) > LONGEST_LATTICE) return null;
  return asLattice(of);
}

function isCount(of: Distribution): of is LatticeLike {
  return 'pmf' in of;
}
