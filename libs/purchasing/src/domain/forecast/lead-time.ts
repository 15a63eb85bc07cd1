import {
  addOpenDays,
  type EpochDay,
  isoDay,
  nextOpenDay,
  openDaysBetween,
  type WorkCalendar,
} from './calendar.js';
import { countWith } from './counts.js';
import { asLattice, type Lattice, lattice, latticeMixture } from './lattice.js';

/** What came of one order. */
export interface OrderOutcome {
  readonly orderedOn: EpochDay;
  /** Quantity ordered, in millionths. */
  readonly ordered: bigint;
  /** What arrived and when, in any order. */
  readonly parts: readonly { readonly day: EpochDay; readonly quantity: bigint }[];
  /** The last day known: an order not complete by then is late, not lost. */
  readonly seenUntil: EpochDay;
}

export type LeadTimeKind = 'first part' | 'complete';

/** One lead time in the supplier's working days; open orders are known to take longer. */
export interface LeadObservation {
  readonly days: number;
  readonly arrived: boolean;
  /** How much of an order it tells of, when that came in parts; 1 unless given. */
  readonly weight?: number;
}

/**
 * Working days from an order to its first part, or until it was complete. An order placed on a
 * closed day starts on the next open one. Throws RangeError when something arrived before it was
 * ordered.
 */
export function observeLeadTime(
  outcome: OrderOutcome,
  kind: LeadTimeKind,
  calendar: WorkCalendar,
): LeadObservation {
  const start = nextOpenDay(calendar, outcome.orderedOn);
  const parts = [...outcome.parts].sort((a, b) => a.day - b.day);
  let received = 0n;
  for (const { day, quantity } of parts) {
    if (day < outcome.orderedOn) {
      throw new RangeError(`a part of ${isoDay(day)} arrived before it was ordered`);
    }
    received += quantity;
    if (kind === 'first part' ? received > 0n : received >= outcome.ordered) {
      return { days: openDaysBetween(calendar, start, day), arrived: true };
    }
  }
  return { days: openDaysBetween(calendar, start, outcome.seenUntil), arrived: false };
}

/** An order with its lines; `closed`: what has not come will not come any more. */
export interface LinesOutcome {
  readonly orderedOn: EpochDay;
  readonly closed: boolean;
  readonly lines: readonly Pick<OrderOutcome, 'ordered' | 'parts'>[];
  readonly seenUntil: EpochDay;
}

/**
 * One order as shares by day: each line counts alike, each part by its share of the line, and what
 * is still to come is known to take longer. The shares of an order add up to 1, or to nothing when
 * it was closed and nothing came. Throws RangeError as `observeLeadTime` does.
 */
export function observeShares(order: LinesOutcome, calendar: WorkCalendar): LeadObservation[] {
  const shares = order.lines.flatMap(({ ordered, parts }) => {
    const came = parts.reduce((sum, part) => sum + part.quantity, 0n);
    const of = order.closed || came > ordered ? came : ordered;
    const known = parts.map((part) => ({ days: partDays(order, part.day, calendar), of: part }));
    const arrived = known.map(({ days, of: part }) => ({
      ...{ days, arrived: true, weight: Number(part.quantity) / Number(of) },
    }));
    const open = { days: partDays(order, order.seenUntil, calendar), arrived: false };
    const missing = Number(of - came) / Number(of);
    return of > came ? [...arrived, { ...open, weight: missing }] : arrived;
  });
  const total = shares.reduce((sum, share) => sum + share.weight, 0);
  return shares.map((share) => ({ ...share, weight: share.weight / total }));
}

function partDays(order: LinesOutcome, day: EpochDay, calendar: WorkCalendar): number {
  if (day < order.orderedOn) {
    throw new RangeError(`a part of ${isoDay(day)} arrived before it was ordered`);
  }
  return openDaysBetween(calendar, nextOpenDay(calendar, order.orderedOn), day);
}

function weightOf(observation: LeadObservation): number {
  return observation.weight ?? 1;
}

function weightIn(observations: readonly LeadObservation[]): number {
  return observations.reduce((sum, each) => sum + weightOf(each), 0);
}

export interface LeadTimePrior {
  /** Working days that the supplier states; null when nobody said. */
  readonly statedDays: number | null;
}

export interface LeadTime {
  /** Working days. */
  readonly days: Lattice;
  /** Orders that came, as their shares add up. */
  readonly observations: number;
  /** Orders that have not come yet, as their shares add up. */
  readonly late: number;
  /** How much of the distribution is the smooth assumption rather than deliveries seen, 0 to 1. */
  readonly assumed: number;
}

/** Nobody said and nothing was seen: common practice, no source. */
const ASSUMED_DAYS = 3;
/** The smooth part weighs as much as this many deliveries. */
const SMOOTH_WEIGHT = 4;
const LONGEST_LEAD = 250;

/**
 * The lead time of a supplier from its own deliveries: the stepwise distribution that allows for
 * orders still open (Kaplan & Meier 1958), mixed with a smooth count around the mean of stated and
 * seen, which counts as four deliveries. So one delivery does not make a certainty, and a hundred
 * speak for themselves. Throws RangeError on a negative day.
 */
export function leadTime(observations: readonly LeadObservation[], prior: LeadTimePrior): LeadTime {
  for (const { days } of observations) checkDays('days', days);
  if (prior.statedDays !== null) checkDays('statedDays', prior.statedDays);
  const late = weightIn(observations.filter((o) => !o.arrived));
  const n = weightIn(observations.filter((o) => o.arrived));
  const { weights, beyond } = survival(observations);
  const smooth = smoothPart(observations, prior);
  const assumed = SMOOTH_WEIGHT / (SMOOTH_WEIGHT + n);
  const tail = tailBeyond(smooth, observations);
  const seen = n === 0 ? smooth : latticeMixture(withTail(weights, beyond, tail));
  const mixed = [
    { weight: 1 - assumed, of: seen },
    { weight: assumed, of: smooth },
  ];
  // With nothing arrived yet, what is known is only that the open orders take longer.
  const days = n === 0 ? tail : latticeMixture(mixed);
  return { days, observations: n, late, assumed };
}

function checkDays(name: string, days: number): void {
  if (!(Number.isInteger(days) && days >= 0 && days <= 10_000)) {
    throw new RangeError(`${name} must be whole working days of at least 0, not ${days}`);
  }
}

/** Kaplan-Meier: weight of each day, and what is left beyond the last one seen. */
function survival(observations: readonly LeadObservation[]): {
  weights: Float64Array;
  beyond: number;
} {
  const top = observations.reduce((most, o) => Math.max(most, o.days), 0);
  const weights = new Float64Array(top + 1);
  let alive = 1;
  let atRisk = weightIn(observations);
  for (let day = 0; day <= top; day += 1) {
    const here = observations.filter((o) => o.days === day);
    const arrived = weightIn(here.filter((o) => o.arrived));
    if (arrived > 0) {
      const share = Math.min(arrived / atRisk, 1);
      weights[day] = alive * share;
      alive *= 1 - share;
    }
    atRisk -= weightIn(here);
  }
  return { weights, beyond: alive };
}

function smoothPart(observations: readonly LeadObservation[], prior: LeadTimePrior): Lattice {
  const stated = prior.statedDays;
  const arrived = observations.filter((o) => o.arrived);
  const [weight, start] = [stated === null ? 1 : 2, stated ?? ASSUMED_DAYS];
  const all = weightIn(arrived) + weight;
  const sum = arrived.reduce((total, o) => total + weightOf(o) * o.days, weight * start);
  const mean = sum / all;
  // Around the stated time the spread is taken as that of pure chance, at least a day.
  const least = Math.max(1, mean);
  const from = (o: LeadObservation) => weightOf(o) * (o.days - mean) ** 2;
  const square = arrived.reduce((total, o) => total + from(o), weight * least);
  return asLattice(countWith(mean, square / all));
}

/** The smooth part as far as open orders still allow it: longer than the longest one waits. */
function tailBeyond(smooth: Lattice, observations: readonly LeadObservation[]): Lattice {
  const waits = observations.filter((o) => !o.arrived).map((o) => o.days);
  if (waits.length === 0) return smooth;
  const longest = Math.max(...waits);
  const kept = smooth.weights.map((w, day) => (day > longest ? w : 0));
  const left = kept.reduce((total, w) => total + w, 0);
  // Nothing measurable is left: it comes the next day or later, each as unlikely as the last.
  if (left < 1e-9) return geometricFrom(longest + 1);
  return lattice(kept);
}

function geometricFrom(first: number): Lattice {
  const length = Math.min(LONGEST_LEAD, 60);
  const weights = new Float64Array(first + length);
  for (let i = 0; i < length; i += 1) weights[first + i] = 0.8 ** i;
  return lattice(weights);
}

function withTail(weights: Float64Array, beyond: number, tail: Lattice) {
  const parts = [];
  if (beyond < 1 - 1e-12) parts.push({ weight: 1 - beyond, of: lattice(weights) });
  if (beyond > 1e-12) parts.push({ weight: beyond, of: tail });
  return parts;
}

/** A lead time in calendar days for an order placed on a day. */
export function onCalendar(days: Lattice, calendar: WorkCalendar, orderedOn: EpochDay): Lattice {
  const found = new Map<number, number>();
  let at = nextOpenDay(calendar, orderedOn);
  for (let k = 0; k < days.weights.length; k += 1) {
    if (k > 0) at = nextOpenDay(calendar, at + 1);
    const weight = days.weights[k] ?? 0;
    if (weight > 1e-12) found.set(at - orderedOn, weight);
  }
  const length = Math.max(...found.keys()) + 1;
  return lattice(Float64Array.from({ length }, (_, d) => found.get(d) ?? 0));
}

/** The day by which an order has arrived with the certainty wanted. */
export function arrivesBy(
  days: Lattice,
  calendar: WorkCalendar,
  orderedOn: EpochDay,
  certainty: number,
): EpochDay {
  return addOpenDays(calendar, orderedOn, days.quantile(certainty));
}
