/** A day as the number of days since 1970-01-01; no time zone, no clock. */
export type EpochDay = number;

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;
const MS_PER_DAY = 86_400_000;

/** Reads '2026-11-27'. Throws RangeError on anything that is no day. */
export function epochDay(iso: string): EpochDay {
  const ms = ISO_DAY.test(iso) ? Date.parse(`${iso}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(ms) || new Date(ms).toISOString().slice(0, 10) !== iso) {
    throw new RangeError(`not a day: ${JSON.stringify(iso.slice(0, 40))}`);
  }
  return Math.round(ms / MS_PER_DAY);
}

export function isoDay(day: EpochDay): string {
  return new Date(day * MS_PER_DAY).toISOString().slice(0, 10);
}

/** 0 is Monday, 6 is Sunday (ISO 8601 counts 1 to 7). */
export function weekdayOf(day: EpochDay): number {
  return (((day + 3) % 7) + 7) % 7;
}

/** 0 is January. */
export function monthOf(day: EpochDay): number {
  return new Date(day * MS_PER_DAY).getUTCMonth();
}

/** On which days somebody works: a practice's opening days, a supplier's delivery days. */
export interface WorkCalendar {
  /** Seven entries, Monday first. */
  readonly openWeekdays: readonly boolean[];
  readonly closedDays: ReadonlySet<EpochDay>;
}

export const EVERY_DAY: WorkCalendar = {
  openWeekdays: [true, true, true, true, true, true, true],
  closedDays: new Set(),
};

export function isOpen(calendar: WorkCalendar, day: EpochDay): boolean {
  return calendar.openWeekdays[weekdayOf(day)] === true && !calendar.closedDays.has(day);
}

const LONGEST_CLOSURE = 370;

/** The day itself or the next one open. Throws RangeError when a year passes without one. */
export function nextOpenDay(calendar: WorkCalendar, day: EpochDay): EpochDay {
  for (let d = day; d < day + LONGEST_CLOSURE; d += 1) if (isOpen(calendar, d)) return d;
  throw new RangeError('the calendar has no open day within a year');
}

/** So many open days after a day; 0 gives the day itself or the next one open. */
export function addOpenDays(calendar: WorkCalendar, day: EpochDay, count: number): EpochDay {
  if (!Number.isInteger(count) || count < 0) throw new RangeError('days must be whole, at least 0');
  let at = nextOpenDay(calendar, day);
  for (let left = count; left > 0; left -= 1) at = nextOpenDay(calendar, at + 1);
  return at;
}

/** How many open days lie in (from, to]: what `addOpenDays` undoes when both are open. */
export function openDaysBetween(calendar: WorkCalendar, from: EpochDay, to: EpochDay): number {
  let count = 0;
  for (let d = from + 1; d <= to; d += 1) if (isOpen(calendar, d)) count += 1;
  return count;
}

/**
 * Weekdays on which the practice as a whole works: those that had any use at all in at least a
 * tenth of the weeks. Without any use every weekday counts as open. The first day is given; one
 * entry for each day.
 */
export function workedWeekdays(firstDay: EpochDay, usedThatDay: readonly boolean[]): boolean[] {
  const used = new Array<number>(7).fill(0);
  const seen = new Array<number>(7).fill(0);
  for (const [i, any] of usedThatDay.entries()) {
    const weekday = weekdayOf(firstDay + i);
    seen[weekday] = (seen[weekday] ?? 0) + 1;
    if (any) used[weekday] = (used[weekday] ?? 0) + 1;
  }
  const open = used.map((count, i) => count > 0 && count >= 0.1 * (seen[i] ?? 0));
  return open.includes(true) ? open : open.map(() => true);
}
