export const PERIODS = ['this-month', 'last-month', 'three-months', 'twelve-months'] as const;
export type Period = (typeof PERIODS)[number];

interface Days {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

const isoOf = (year: number, month: number, day: number) =>
  new Date(Date.UTC(year, month, day)).toISOString().slice(0, 10);

/** '2026-02' -> '2026-02-28'. */
export function lastDayOf(month: string): string {
  return isoOf(Number(month.slice(0, 4)), Number(month.slice(5, 7)), 0);
}

/** Whole months, up to the practice's today. */
export function daysOf(period: Period, today: string): Required<Days> {
  const [year, month] = [Number(today.slice(0, 4)), Number(today.slice(5, 7)) - 1];
  if (period === 'this-month') return { from: isoOf(year, month, 1), to: today };
  if (period === 'last-month')
    return { from: isoOf(year, month - 1, 1), to: isoOf(year, month, 0) };
  const back = period === 'three-months' ? 2 : 11;
  return { from: isoOf(year, month - back, 1), to: today };
}

/** The period that these days are, if it has a name. */
export function periodOf({ from, to }: Days, today: string): Period | undefined {
  return PERIODS.find((period) => {
    const days = daysOf(period, today);
    return days.from === from && days.to === to;
  });
}
