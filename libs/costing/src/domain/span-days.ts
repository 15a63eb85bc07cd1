import { addDays, addMonths, type IsoDate } from '#lib/platform';

/** What is packed into one row: days, thirds of a month (1-10, 11-20, the rest), months, years. */
export type Span = 'year' | 'month' | 'third' | 'day';

/** Spans that follow each other, by the first days of the first and the last one. */
export interface SpanRange {
  readonly span: Span;
  readonly first: IsoDate;
  readonly last: IsoDate;
}

const LEVELS: readonly Span[] = ['year', 'month', 'third', 'day'];
const BEGINNING = '1800-01-01';
const END = '2299-12-31';

interface Wanted {
  readonly from: IsoDate | null;
  readonly to: IsoDate | null;
  readonly byMonth: boolean;
}

/** The largest spans that make up a period, each day in one of them; nothing larger than a month if
 * months are to be told apart. */
export function spansOf({ from, to, byMonth }: Wanted): SpanRange[] {
  const [first, last] = [from ?? BEGINNING, to ?? END];
  return first > last ? [] : split(first, last, byMonth ? 1 : 0);
}

function split(from: IsoDate, to: IsoDate, level: number): SpanRange[] {
  const span = LEVELS[level];
  if (span === undefined || from > to) return [];
  const first = startOf(span, from) === from ? from : nextOf(span, from);
  const after = nextOf(span, to); // of the last whole span, unless it goes on after the period
  const end = addDays(after, -1) === to ? after : startOf(span, to);
  if (first >= end) return split(from, to, level + 1);
  return [
    ...split(from, addDays(first, -1), level + 1),
    { span, first, last: startOf(span, addDays(end, -1)) },
    ...split(end, to, level + 1),
  ];
}

/** The first day of the span that a day is in. */
export function startOf(span: Span, day: IsoDate): IsoDate {
  if (span === 'day') return day;
  if (span === 'year') return `${day.slice(0, 4)}-01-01`;
  const month = `${day.slice(0, 7)}-01`;
  if (span === 'month') return month;
  const thirds = Math.min(2, Math.floor((Number(day.slice(8)) - 1) / 10));
  return addDays(month, 10 * thirds);
}

function nextOf(span: Span, day: IsoDate): IsoDate {
  const start = startOf(span, day);
  if (span === 'day') return addDays(day, 1);
  if (span === 'year') return addMonths(start, 12);
  const month = addMonths(startOf('month', day), 1);
  if (span === 'month' || start.endsWith('-21')) return month;
  return addDays(start, 10);
}
