import { addDays, addMonths, type IsoDate } from '#lib/platform';

export interface Days {
  readonly first: IsoDate;
  readonly last: IsoDate;
}

interface Period {
  readonly from: IsoDate | null;
  readonly to: IsoDate | null;
}

/**
 * The days of a period that are read from the restorations themselves, without overlap: those of
 * changed months, and those of months that the period cuts. All others are whole, folded months.
 */
export function liveDays({ from, to }: Period, changed: readonly IsoDate[]): Days[] {
  if (from !== null && to !== null && from > to) return [];
  const cut = [
    ...(from !== null && !from.endsWith('-01') ? [monthOf(from)] : []),
    ...(to !== null && !addDays(to, 1).endsWith('-01') ? [monthOf(to)] : []),
  ];
  const months = [...new Set([...cut, ...changed])].sort();
  return months
    .map((month) => ({ first: later(month, from), last: earlier(endOf(month), to) }))
    .filter(({ first, last }) => first <= last);
}

function monthOf(day: IsoDate): IsoDate {
  return `${day.slice(0, 7)}-01`;
}

function endOf(month: IsoDate): IsoDate {
  return addDays(addMonths(month, 1), -1);
}

function later(day: IsoDate, from: IsoDate | null): IsoDate {
  return from !== null && from > day ? from : day;
}

function earlier(day: IsoDate, to: IsoDate | null): IsoDate {
  return to !== null && to < day ? to : day;
}
