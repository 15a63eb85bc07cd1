import type { IsoDate } from '#lib/platform';
import { type Days, daysOf, splitPeriod } from './split-period.js';

export interface KnownMonths {
  /** Months that were folded and hold something. */
  readonly folded: readonly IsoDate[];
  /** Months in which something changed since. */
  readonly changed: readonly IsoDate[];
}

/** From where a report takes the days of its period. */
export interface Spans {
  /** First months of whole years. */
  readonly years: readonly IsoDate[];
  readonly months: readonly IsoDate[];
  /** Days to be read from the restorations themselves. */
  readonly live: readonly Days[];
}

interface Wanted {
  readonly from: IsoDate | null;
  readonly to: IsoDate | null;
  readonly byMonth: boolean;
}

/** Whole years where nothing changed, else whole months, else days; each day once. */
export function chooseSpans(known: KnownMonths, wanted: Wanted): Spans {
  const { months, edges } = splitPeriod(wanted.from, wanted.to);
  const within = (month: IsoDate) =>
    (months.first === null || month >= months.first) &&
    (months.last === null || month <= months.last);
  const changed = known.changed.filter(within);
  const ready = known.folded.filter((month) => within(month) && !known.changed.includes(month));
  const broken = new Set(
    [...known.folded, ...known.changed].filter((m) => !ready.includes(m)).map(yearOf),
  );
  const whole = (month: IsoDate) => !wanted.byMonth && !broken.has(yearOf(month));
  return {
    years: [...new Set(ready.filter(whole).map(yearOf))],
    months: ready.filter((month) => !whole(month)),
    live: [...edges, ...changed.map(daysOf)],
  };
}

function yearOf(month: IsoDate): IsoDate {
  return `${month.slice(0, 4)}-01-01`;
}
