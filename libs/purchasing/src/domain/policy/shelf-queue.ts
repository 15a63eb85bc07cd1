import { BehindShelf, type ReachedPlaces } from './behind-shelf.js';
import type { Demand } from './demand.js';
import { convolved, stepFor, type Table, tabulate, trimmed } from './tables.js';

/** Counts that may be used on so many days, today included; Infinity when they never expire. */
export interface ShelfLot {
  readonly quantity: number;
  readonly usableDays: number;
}

/**
 * How far use and expiry have got through the lots, first expiry first. A lot that expires moves
 * the place on to its end: Y = max(Y + use, end of the lot). Kept as chances of `start` + so many
 * steps, one table for each fractional start, so that broken counts stay exact.
 */
interface Place {
  readonly start: number;
  readonly table: Table;
}

/** Long tables are followed in coarser steps; up to so many entries it is exact. */
const ENTRIES = 600;
const HAIR = 1e-9;

/** In order of expiry; which of two comes first when they expire together does not matter. */
export function firstExpiryFirst<T extends ShelfLot>(lots: readonly T[]): readonly T[] {
  return [...lots].sort(
    (a, b) => Math.sign(a.usableDays - b.usableDays || 0) || a.quantity - b.quantity,
  );
}

export interface LotExpiry extends ShelfLot {
  /** What is expected of this lot to expire. */
  readonly expired: number;
  /** What is expected to have expired up to and with this lot. */
  readonly cumulative: number;
}

/**
 * Expected expiry of every lot under random use, first expiry first, none replaced: the recursion
 * W_k = max(W_(k-1), Q_k - use until expiry k) (cf. Nahmias 1977, Management Science 24(1)), exact
 * for use in counts. Lots on the way count from the start: use that comes before them is owed.
 * Only expiry within so many days is counted; what is owed already takes the first goods.
 */
export function expectedExpiry(
  lots: readonly ShelfLot[],
  demand: Demand,
  { within = Number.POSITIVE_INFINITY, owed = 0 } = {},
): readonly LotExpiry[] {
  const queue = firstExpiryFirst(lots);
  const walk = new QueueWalk(demand, Math.min(lastDay(queue), within), owed);
  let cumulative = 0;
  let end = 0;
  return queue.map((lot) => {
    end += lot.quantity;
    const counted = lot.usableDays <= within;
    const expired = counted ? walk.expire(lot.usableDays, end) : 0;
    cumulative += expired;
    return { ...lot, expired, cumulative };
  });
}

/** New goods that may be used until `usableDays` from today, behind the lots that go first. */
export function behindShelf(
  lots: readonly ShelfLot[],
  demand: Demand,
  usableDays: number,
  owed = 0,
): BehindShelf {
  const ahead = firstExpiryFirst(lots).filter((lot) => lot.usableDays <= usableDays);
  const walk = new QueueWalk(demand, Math.max(usableDays, 0), owed);
  let end = 0;
  for (const lot of ahead) {
    end += lot.quantity;
    walk.expire(lot.usableDays, end);
  }
  return BehindShelf.of(walk.reachedBy(usableDays), end);
}

/** With steady use at `rate` a day: what expires of each lot. */
export function steadyExpiry(lots: readonly ShelfLot[], rate: number): readonly LotExpiry[] {
  let place = 0;
  let day = 0;
  let end = 0;
  let cumulative = 0;
  return firstExpiryFirst(lots).map((lot) => {
    end += lot.quantity;
    place += rate > 0 ? rate * (Math.max(lot.usableDays, 0) - day) : 0;
    day = Math.max(lot.usableDays, 0);
    const expired = lot.usableDays === Number.POSITIVE_INFINITY ? 0 : Math.max(end - place, 0);
    place = Math.max(place, end);
    cumulative += expired;
    return { ...lot, expired, cumulative };
  });
}

class QueueWalk {
  private readonly step: number;
  private places: readonly Place[];
  private day = 0;

  constructor(
    private readonly demand: Demand,
    until: number,
    owed: number,
  ) {
    this.places = [{ start: owed, table: ONE }];
    this.step = until > 0 ? stepFor(demand.use(0, until), ENTRIES) : 1;
  }

  /** Walks to the expiry of the lot that ends at `end`; what is expected of it to expire. */
  expire(usableDays: number, end: number): number {
    if (usableDays === Number.POSITIVE_INFINITY) return 0;
    this.walkTo(usableDays);
    let expired = 0;
    let chance = 0;
    const kept: Place[] = [];
    for (const place of this.places) {
      const { first, masses } = place.table;
      // Places before the end of the lot are left behind with what expires of it.
      let k = 0;
      for (; k < masses.length; k += 1) {
        const missing = end - (place.start + (first + k) * this.step);
        if (missing <= HAIR) break;
        expired += (masses[k] ?? 0) * missing;
        chance += masses[k] ?? 0;
      }
      if (k < masses.length) {
        kept.push({ start: place.start, table: { first: first + k, masses: masses.slice(k) } });
      }
    }
    if (chance > 0) {
      kept.push({ start: end, table: { first: 0, masses: new Float64Array([chance]) } });
    }
    this.places = merged(kept, this.step);
    return expired;
  }

  /** Every place that use can have reached by the end of that many days, with its chance. */
  reachedBy(usableDays: number): ReachedPlaces {
    this.walkTo(usableDays);
    const [only, ...others] = this.places.map((place) => listed(place, this.step));
    if (only && others.length === 0) return only;
    const all = [only, ...others].flatMap((list) =>
      list ? Array.from(list.values, (value, k) => ({ value, chance: list.chances[k] ?? 0 })) : [],
    );
    all.sort((a, b) => a.value - b.value);
    return {
      values: Float64Array.from(all, (place) => place.value),
      chances: Float64Array.from(all, (place) => place.chance),
    };
  }

  private walkTo(usableDays: number): void {
    if (usableDays <= this.day) return;
    const use = tabulate(this.demand.use(this.day, usableDays), this.step);
    this.day = usableDays;
    this.places = this.places.map(({ start, table }) => ({ start, table: convolved(table, use) }));
  }
}

function listed({ start, table }: Place, step: number): ReachedPlaces {
  const values = table.masses.map((_, k) => start + (table.first + k) * step);
  return { values, chances: table.masses };
}

const ONE: Table = { first: 0, masses: new Float64Array([1]) };

/** Tables whose starts differ by whole steps are one table. */
function merged(places: readonly Place[], step: number): readonly Place[] {
  const result: Place[] = [];
  for (const place of [...places].sort((a, b) => a.start - b.start)) {
    const i = result.findIndex((other) => isWhole((place.start - other.start) / step));
    const other = result[i];
    if (other) result[i] = joined(other, place, Math.round((place.start - other.start) / step));
    else result.push(place);
  }
  return result;
}

function joined(one: Place, other: Place, shift: number): Place {
  const from = Math.min(one.table.first, other.table.first + shift);
  const to = Math.max(endOf(one.table), endOf(other.table) + shift);
  const masses = new Float64Array(to - from);
  masses.set(one.table.masses, one.table.first - from);
  const gap = other.table.first + shift - from;
  for (const [k, mass] of other.table.masses.entries()) {
    masses[k + gap] = (masses[k + gap] ?? 0) + mass;
  }
  return { start: one.start, table: trimmed({ first: from, masses }) };
}

function endOf(table: Table): number {
  return table.first + table.masses.length;
}

function lastDay(queue: readonly ShelfLot[]): number {
  const days = queue.map((lot) => lot.usableDays).filter((d) => d !== Number.POSITIVE_INFINITY);
  return Math.max(0, ...days);
}

function isWhole(x: number): boolean {
  return Math.abs(x - Math.round(x)) < HAIR;
}
