import { type EpochDay, weekdayOf } from '../forecast/calendar.js';
import type { BookedUse } from '../forecast/shelf-forecast.js';

/** What one such visit is planned to take of an item; squares are statistics in stock units. */
export interface BookedNeed {
  readonly mean: bigint;
  readonly meanSquare: number;
  /** The share of ways the visit may turn out in which it is needed at all. */
  readonly share: number;
}

/** Alike visits that are still to come on a day. */
export interface BookedGroup {
  /** Days from today; 0 is today. */
  readonly day: number;
  readonly toCome: number;
  /** Chair time of one of them. */
  readonly minutes: number;
  readonly needs: ReadonlyMap<string, BookedNeed>;
  /** Its paste is in none of the needs. */
  readonly shadeUnknown: boolean;
}

/** Sums over the visits lately recorded, of one item, in stock units. */
export interface Experience {
  /** Visits whose templates planned it. */
  readonly planned: {
    readonly visits: number;
    readonly planned: number;
    readonly used: number;
    readonly plannedSquare: number;
    readonly plannedUsed: number;
    readonly usedSquare: number;
  };
  /** What visits used whose templates did not plan it, over all of them. */
  readonly extra: { readonly used: number; readonly usedSquare: number };
}

/** Whether the practice books every visit here, and what its days usually are. */
export interface Diary {
  /** For so many days from today on it is as full as it will get. */
  readonly fullDays: number;
  /** Chair time of a worked day, Monday first; 0 where it is not known. */
  readonly usualMinutes: readonly number[];
  /** Chair time booked by day from today on, kept visits included. */
  readonly bookedMinutes: readonly number[];
}

export interface BookedFacts {
  readonly today: EpochDay;
  readonly groups: readonly BookedGroup[];
  readonly experience: ReadonlyMap<string, Experience>;
  /** Visits that the experience is of. */
  readonly visits: number;
  readonly keptShare: number;
  /** Null: not every visit is booked here. */
  readonly diary: Diary | null;
}

/** What visits are booked to use. */
export interface BookedDemand {
  readonly keptShare: number;
  readonly wholeDay: boolean;
  /** Visits still to come, by day from today on. */
  readonly visits: readonly number[];
  /** Undefined where bookings say nothing of the item: its forecast is the one without them. */
  of(itemId: string): BookedUse | undefined;
}

/** Until enough bookings have passed; common practice, no source. */
const PLAIN_KEPT_SHARE = 0.9;
/** The plain share counts for so many bookings. */
const PLAIN_WEIGHT = 20;
/** Fewer visits than this say less than the template. */
const FEW_VISITS = 8;

/** The share of bookings that are kept, learned from those whose day has passed. */
export function shareKept(kept: number, dropped: number): number {
  return (kept + PLAIN_KEPT_SHARE * PLAIN_WEIGHT) / (kept + dropped + PLAIN_WEIGHT);
}

/**
 * Booked use by day with how far it varies. A visit is kept or not; when it is, it takes what its
 * templates plan times what was lately taken for what they planned, which varies as it did lately.
 * With a diary that holds every visit, the share of a usual day that is booked is covered; a day on
 * which nothing is booked counts as not filled in. What visits took beside their templates is then
 * expected of the booked ones as well.
 */
export function bookedDemand(facts: BookedFacts): BookedDemand {
  const { groups, diary, keptShare } = facts;
  const length = groups.reduce((n, each) => Math.max(n, each.day + 1), diary ? 1 : 0);
  const covered = diary === null ? null : coverage(diary, facts.today);
  const visits = new Array<number>(length).fill(0);
  for (const { day, toCome } of groups) visits[day] = (visits[day] ?? 0) + toCome;
  return {
    keptShare,
    wholeDay: diary !== null,
    visits,
    of: (itemId) => {
      const known = covered?.some((share) => share > 0) ?? false;
      const needed = groups.some((group) => group.needs.has(itemId));
      if (!known && !needed) return undefined;
      const own = covered === null ? null : covered.map((c, day) => c * told(facts, itemId, day));
      return { ...expectedUse(facts, itemId), coverage: own };
    },
  };
}

function coverage(diary: Diary, today: EpochDay): number[] {
  return diary.bookedMinutes.map((minutes, day) => {
    if (minutes <= 0) return 0;
    if (day < diary.fullDays) return 1;
    const usual = diary.usualMinutes[weekdayOf(today + day)] ?? 0;
    return usual <= 0 ? 1 : Math.min(1, minutes / usual);
  });
}

/** The part of a day's bookings that says what it uses of an item: without a shade nobody knows. */
function told({ groups, diary }: BookedFacts, itemId: string, day: number): number {
  const minutes = diary?.bookedMinutes[day] ?? 0;
  if (minutes <= 0) return 1;
  const silent = groups
    .filter((each) => each.day === day && each.shadeUnknown && !each.needs.has(itemId))
    .reduce((sum, each) => sum + each.minutes * each.toCome, 0);
  return Math.max(0, 1 - silent / minutes);
}

function expectedUse(facts: BookedFacts, itemId: string): Omit<BookedUse, 'coverage'> {
  const { groups, keptShare, diary } = facts;
  const taken = takenFor(facts.experience.get(itemId));
  const extra = diary === null ? NOTHING : extraOf(facts, itemId);
  const quantities: bigint[] = [];
  const variances: number[] = [];
  for (const { day, toCome, needs } of groups) {
    const need = needs.get(itemId);
    const beside = 1 - (need?.share ?? 0);
    const planned = need === undefined ? 0 : Number(need.mean) / 1_000_000;
    const mean = taken.factor * planned + beside * extra.mean;
    const square = taken.square * (need?.meanSquare ?? 0) + beside * extra.square;
    const expected = toCome * keptShare * mean;
    // The plan itself stays exact where nothing else is known.
    const exact =
      taken.factor === 1 && extra.mean === 0 && need !== undefined
        ? kept(need.mean * BigInt(toCome), keptShare)
        : BigInt(Math.round(expected * 1_000_000));
    quantities[day] = (quantities[day] ?? 0n) + exact;
    const variance = toCome * Math.max(0, keptShare * square - (keptShare * mean) ** 2);
    variances[day] = (variances[day] ?? 0) + variance;
  }
  return {
    quantities: Array.from(quantities, (quantity) => quantity ?? 0n),
    variances: Array.from(variances, (variance) => variance ?? 0),
  };
}

function kept(quantity: bigint, share: number): bigint {
  const millionths = BigInt(Math.round(share * 1_000_000));
  return (quantity * millionths + 500_000n) / 1_000_000n;
}

const NOTHING = { mean: 0, square: 0 };

/** What was taken for each unit planned: on average, and of the square. */
function takenFor(experience: Experience | undefined): { factor: number; square: number } {
  const sums = experience?.planned;
  if (sums === undefined || sums.visits < FEW_VISITS || sums.planned <= 0) {
    return { factor: 1, square: 1 };
  }
  const { planned, used, plannedSquare, plannedUsed, usedSquare } = sums;
  const factor = used / planned;
  const rest = usedSquare - 2 * factor * plannedUsed + factor * factor * plannedSquare;
  return { factor, square: factor * factor + Math.max(0, rest) / plannedSquare };
}

function extraOf({ experience, visits }: BookedFacts, itemId: string): typeof NOTHING {
  const known = experience.get(itemId);
  const beside = visits - (known?.planned.visits ?? 0);
  if (known === undefined || visits < FEW_VISITS || beside <= 0) return NOTHING;
  return { mean: known.extra.used / beside, square: known.extra.usedSquare / beside };
}
