import type { Demand, LeadTime, Random } from './demand.js';
import type { ShelfLot } from './shelf-queue.js';
import { sampler, stepFor, tabulate } from './tables.js';

/** Goods on their way in counts; `usableDays` counts from their arrival. */
export interface Arrival {
  readonly quantity: number;
  readonly when: LeadTime;
  readonly usableDays: number;
}

/** Where a run starts, in counts. What is owed takes the first goods there are. */
export interface ShelfStart {
  readonly lots: readonly ShelfLot[];
  readonly arrivals: readonly Arrival[];
  readonly owed: number;
}

/** How much is used in each span of each run: drawn once, and the same for all that is compared. */
export interface UsePaths {
  /** Days at which a span starts or ends, from 0 to the horizon. */
  readonly days: readonly number[];
  readonly runs: number;
  /** Use of span `i` of run `r` at r * (days - 1) + i. */
  readonly use: Float64Array;
}

const ENTRIES = 4000;

/** The days at which anything can change: the spans between them need only one draw each. */
export function eventDays(starts: readonly ShelfStart[], horizonDays: number): readonly number[] {
  const days = new Set([0, horizonDays]);
  for (const start of starts) {
    for (const lot of start.lots) days.add(lot.usableDays);
    for (const arrival of start.arrivals) {
      for (const { days: day } of arrival.when) {
        days.add(day);
        days.add(day + arrival.usableDays);
      }
    }
  }
  return [...days].filter((day) => day >= 0 && day <= horizonDays).sort((a, b) => a - b);
}

export function everyDay(horizonDays: number): readonly number[] {
  return Array.from({ length: horizonDays + 1 }, (_, day) => day);
}

export function drawUse(
  demand: Demand,
  days: readonly number[],
  runs: number,
  random: Random,
): UsePaths {
  const spans = days.length - 1;
  const use = new Float64Array(runs * spans);
  for (let i = 0; i < spans; i += 1) {
    const distribution = demand.use(days[i] ?? 0, days[i + 1] ?? 0);
    const step = stepFor(distribution, ENTRIES);
    const draw = sampler(tabulate(distribution, step));
    for (let r = 0; r < runs; r += 1) use[r * spans + i] = draw(random) * step;
  }
  return { days, runs, use };
}

/** Whole days until the goods are here, by inversion of one random number. */
export function drawLeadTime(lead: LeadTime, u: number): number {
  let reached = 0;
  let days = 0;
  for (const chance of lead) {
    if (chance.probability === 0) continue;
    days = chance.days;
    reached += chance.probability;
    if (u < reached) break;
  }
  return days;
}

/** The stock of one run: lots by expiry, what is owed, and what became of everything. */
export class ShelfRun {
  private readonly quantities: number[] = [];
  private readonly expiries: number[] = [];
  onHand = 0;
  owed = 0;
  used = 0;
  wasted = 0;
  short = 0;
  stockOuts = 0;
  stockDays = 0;

  constructor(start: ShelfStart) {
    this.owed = start.owed;
    for (const lot of start.lots) this.put(lot.quantity, lot.usableDays);
    this.settle();
  }

  /** Takes goods in; `settle` follows when all that came is in. */
  put(quantity: number, expiry: number): void {
    if (quantity <= 0) return;
    let at = this.expiries.length;
    while (at > 0 && (this.expiries[at - 1] ?? 0) > expiry) at -= 1;
    this.quantities.splice(at, 0, quantity);
    this.expiries.splice(at, 0, expiry);
    this.onHand += quantity;
  }

  /** What is owed goes out as soon as there is something. */
  settle(): void {
    if (this.owed > 0 && this.onHand > 0) this.owed = this.draw(this.owed);
  }

  /** Use over a span of so many days, first expiry first; what is missing is owed. */
  take(use: number, days: number): void {
    const before = this.onHand;
    const open = this.draw(use);
    if (open > 0) {
      // A shelf that starts empty and owing runs out with the first use that it cannot serve.
      if (this.owed === 0 || this.short === 0) this.stockOuts += 1;
      this.owed += open;
      this.short += open;
    }
    this.stockDays += ((before + this.onHand) / 2) * days;
  }

  /** Takes out first expiry first; what is not there. */
  private draw(amount: number): number {
    let open = amount;
    while (open > 0 && this.quantities.length > 0) {
      const first = this.quantities[0] ?? 0;
      if (first > open) {
        this.quantities[0] = first - open;
        open = 0;
      } else {
        open -= first;
        this.quantities.shift();
        this.expiries.shift();
      }
    }
    this.used += amount - open;
    this.onHand = this.quantities.length === 0 ? 0 : this.onHand - (amount - open);
    return open;
  }

  /** Throws away what may not be used any more at the start of that day. */
  expire(day: number): void {
    while (this.expiries.length > 0 && (this.expiries[0] ?? 0) <= day) {
      const gone = this.quantities.shift() ?? 0;
      this.expiries.shift();
      this.wasted += gone;
      this.onHand -= gone;
    }
    if (this.quantities.length === 0) this.onHand = 0;
  }

  /** What steady use leaves to expire within so many days from that day. */
  steadilyExpiring(day: number, within: number, rate: number): number {
    let place = 0;
    let end = 0;
    let expired = 0;
    let last = day;
    for (let i = 0; i < this.expiries.length; i += 1) {
      const expiry = this.expiries[i] ?? 0;
      if (expiry > day + within) break;
      end += this.quantities[i] ?? 0;
      place += rate * (expiry - last);
      last = expiry;
      expired += Math.max(end - place, 0);
      place = Math.max(place, end);
    }
    return expired;
  }
}
