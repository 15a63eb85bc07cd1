import { micro } from '../../ui/drawn.js';
import type { ItemForecast } from './api/planned-items.js';

export interface ShownWeek {
  readonly monday: string;
  /** What the forecast learns from, in millionths of the stock unit. */
  readonly demand: bigint;
  /** Left out as a one-off event, likewise. */
  readonly oneOff: bigint;
  /** Days on which something was used that the book had none of. */
  readonly shortDays: number;
}

const MOST_WEEKS = 53;
const DAY = 86_400_000;

/** The last year by week, with what was left out and the days on which the book had none. */
export function shownWeeks({ weeks, days }: ItemForecast['history']): ShownWeek[] {
  const oneOff = new Map<string, bigint>();
  const short = new Map<string, number>();
  for (const each of days) {
    const monday = mondayOf(each.day);
    const used = micro(each.issued) + micro(each.shortfall);
    if (each.oneOff) oneOff.set(monday, (oneOff.get(monday) ?? 0n) + used);
    if (micro(each.shortfall) > 0n) short.set(monday, (short.get(monday) ?? 0) + 1);
  }
  return weeks.slice(-MOST_WEEKS).map(({ monday, demand }) => ({
    ...{ monday, demand: micro(demand) },
    oneOff: oneOff.get(monday) ?? 0n,
    shortDays: short.get(monday) ?? 0,
  }));
}

/** The Monday of the week of a day. */
export function mondayOf(day: string): string {
  const at = Date.parse(`${day}T00:00:00Z`);
  const back = (new Date(at).getUTCDay() + 6) % 7;
  return new Date(at - back * DAY).toISOString().slice(0, 10);
}
