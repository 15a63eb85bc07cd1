import { addDays, addMonths, daysBetween, type IsoDate } from '#lib/platform';

export interface Period {
  readonly from: IsoDate;
  readonly to: IsoDate;
}

/** The days that are asked for; without an end: until today; without a beginning: twelve months. */
export function periodOf(
  asked: { readonly from?: IsoDate; readonly to?: IsoDate },
  today: IsoDate,
): Period {
  const to = asked.to ?? today;
  return { from: asked.from ?? addDays(addMonths(to, -12), 1), to };
}

export function daysIn({ from, to }: Period): number {
  return Math.max(0, daysBetween(from, to) + 1);
}
