import { asDecimal } from '../../../ui/decimal-text.js';
import type { RestorationDraft, VisitDraft } from './draft.js';

export const SIDES = ['lengthMm', 'widthMm', 'depthMm'] as const;

export type Side = (typeof SIDES)[number];

export const isTyped = (text: string | undefined): text is string =>
  text !== undefined && text.trim() !== '';

/** A length above nothing as the service reads it; undefined while it is none. */
function lengthOf(typed: string | undefined): string | undefined {
  const decimal = isTyped(typed) ? asDecimal(typed) : undefined;
  return decimal === undefined || !/[1-9]/.test(decimal) || decimal.startsWith('-')
    ? undefined
    : decimal;
}

/** What was measured of the cavity: a depth alone, or all three sides for a volume. */
export function measuresOf(of: RestorationDraft): Partial<Record<Side, string>> {
  const [lengthMm, widthMm, depthMm] = SIDES.map((side) => lengthOf(of[side]));
  const depth = depthMm === undefined ? {} : { depthMm };
  const sides = lengthMm === undefined || widthMm === undefined || depthMm === undefined;
  return sides ? depth : { lengthMm, widthMm, depthMm };
}

/** Sides that are wrong, or missing beside the others. */
export function wrongSides(of: RestorationDraft): { unread: Side[]; missing: Side[] } {
  const unread = SIDES.filter((side) => isTyped(of[side]) && lengthOf(of[side]) === undefined);
  const isBox = isTyped(of.lengthMm) || isTyped(of.widthMm);
  return { unread, missing: isBox ? SIDES.filter((side) => !isTyped(of[side])) : [] };
}

export const TIMES = ['minutes', 'assistantMinutes'] as const;

export function isMinutes(typed: string): boolean {
  return /^\d{1,4}$/.test(typed.trim()) && Number(typed) <= 1440;
}

/** The minutes of the whole visit that were entered; what was not is as the templates plan. */
export function timesOf(draft: VisitDraft): { minutes?: number; assistantMinutes?: number } {
  return Object.fromEntries(
    TIMES.flatMap((time) => {
      const typed = draft[time];
      return isTyped(typed) && isMinutes(typed) ? [[time, Number(typed)]] : [];
    }),
  );
}
