import { addDays, addMonths, type IsoDate } from '#lib/platform';

export interface Days {
  readonly first: IsoDate;
  readonly last: IsoDate;
}

export interface SplitPeriod {
  /** First days of the first and last whole month; null: no limit on that side. */
  readonly months: { readonly first: IsoDate | null; readonly last: IsoDate | null };
  /** The days before and after the whole months. */
  readonly edges: readonly Days[];
}

const NO_MONTH = { first: '2200-01-01', last: '1899-12-01' } as const;

/** Takes a period apart into whole months and the days that are left at its two ends. */
export function splitPeriod(from: IsoDate | null, to: IsoDate | null): SplitPeriod {
  if (from !== null && to !== null && from > to) return { months: NO_MONTH, edges: [] };
  const first = from === null ? null : isFirst(from) ? from : addMonths(monthOf(from), 1);
  const last =
    to === null ? null : isFirst(addDays(to, 1)) ? monthOf(to) : addMonths(monthOf(to), -1);
  if (from !== null && to !== null && first !== null && last !== null && first > last) {
    return { months: NO_MONTH, edges: edgesWithin(from, to) };
  }
  const edges: Days[] = [];
  if (from !== null && first !== null && from < first) {
    edges.push({ first: from, last: addDays(first, -1) });
  }
  if (to !== null && last !== null && monthOf(to) > last)
    edges.push({ first: monthOf(to), last: to });
  return { months: { first, last }, edges };
}

/** The days of a whole month. */
export function daysOf(month: IsoDate): Days {
  return { first: month, last: addDays(addMonths(month, 1), -1) };
}

function edgesWithin(from: IsoDate, to: IsoDate): Days[] {
  if (monthOf(from) === monthOf(to)) return [{ first: from, last: to }];
  return [
    { first: from, last: addDays(addMonths(monthOf(from), 1), -1) },
    { first: monthOf(to), last: to },
  ];
}

function isFirst(day: IsoDate): boolean {
  return day.endsWith('-01');
}

function monthOf(day: IsoDate): IsoDate {
  return `${day.slice(0, 7)}-01`;
}
