import { type EpochDay, type WorkCalendar, workedWeekdays } from '../forecast/calendar.js';
import { type DayUse, type DemandHistory, demandHistory } from '../forecast/usage-history.js';

/** Days, both included, on which the use of a consumable was a one-off event. */
export interface OneOffSpan {
  readonly first: EpochDay;
  readonly last: EpochDay;
}

export interface PracticeDays {
  /** The weekdays on which the practice usually works. */
  readonly calendar: WorkCalendar;
  /** Days in the past on which no visit took place: holidays, or a time before the book. */
  readonly silent: ReadonlySet<EpochDay>;
}

/** When a practice works, by its visits. Days in any order; without any, every weekday counts. */
export function practiceDays(visitDays: readonly EpochDay[], today: EpochDay): PracticeDays {
  const visited = new Set(visitDays);
  const first = visitDays.reduce((a, b) => Math.min(a, b), today);
  const days = Array.from({ length: today - first }, (_, i) => first + i);
  const openWeekdays = workedWeekdays(
    first,
    days.map((day) => visited.has(day)),
  );
  return {
    calendar: { openWeekdays, closedDays: new Set() },
    silent: new Set(days.filter((day) => !visited.has(day))),
  };
}

export interface HistoryFacts {
  /** Use by day, all before today. */
  readonly uses: readonly DayUse[];
  readonly oneOffs: readonly OneOffSpan[];
  readonly practice: PracticeDays;
  readonly today: EpochDay;
  /** When the first of it was received; null when the book never had any. */
  readonly stockedSince: EpochDay | null;
  readonly leaveOutRetakes: boolean;
}

/**
 * The demand of one consumable from its first use to yesterday; of what was never used, from its
 * first delivery. Days without any visit are no evidence, nor are those marked as a one-off, whose
 * use is left out.
 */
export function itemHistory(facts: HistoryFacts): DemandHistory {
  const { oneOffs, today, stockedSince, leaveOutRetakes } = facts;
  const { calendar, silent } = facts.practice;
  const lastDay = today - 1;
  const marked = (day: EpochDay) => oneOffs.some((span) => day >= span.first && day <= span.last);
  const uses = facts.uses.map((use) =>
    marked(use.day) ? { ...use, oneOff: use.issued + (use.shortfall ?? 0n) } : use,
  );
  const since = uses.reduce((day, use) => Math.min(day, use.day), Number.POSITIVE_INFINITY);
  const firstDay = Math.min(Number.isFinite(since) ? since : (stockedSince ?? lastDay), lastDay);
  const unknownDays = new Set(silent);
  for (const span of oneOffs) {
    for (let day = Math.max(span.first, firstDay); day <= Math.min(span.last, lastDay); day += 1) {
      unknownDays.add(day);
    }
  }
  return demandHistory(uses, { firstDay, lastDay, calendar, leaveOutRetakes, unknownDays });
}

export interface WeekUse {
  /** The Monday it starts on. */
  readonly monday: EpochDay;
  /** In grid steps. */
  readonly steps: number;
}

/** The demand by week, weeks without any included. */
export function weeklyDemand(history: DemandHistory): WeekUse[] {
  const weeks: { monday: EpochDay; steps: number }[] = [];
  for (const [i, steps] of history.demand.entries()) {
    const day = history.firstDay + i;
    const monday = day - ((((day + 3) % 7) + 7) % 7);
    const last = weeks.at(-1);
    if (last?.monday === monday) last.steps += steps;
    else weeks.push({ monday, steps });
  }
  return weeks;
}
