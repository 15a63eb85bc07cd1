import { epochDay } from '../forecast/calendar.js';
import type { SupplyTerms } from './planning-settings.js';

/** So many closures a supplier has at most. */
export const MOST_CLOSURES = 60;

/** Closed for longer than this a supplier delivers nothing that could be planned. */
const LONGEST_CLOSURE_DAYS = 120;

/**
 * What is wrong with the closures of a supplier, by field; null when nothing is. They may be given
 * in any order, but not overlap; on none of the days between them the supplier stays closed for
 * more than 120 days on end, weekdays without work included.
 */
export function checkClosures(
  terms: SupplyTerms,
): { readonly field: string; readonly message: string } | null {
  const spans = terms.closures
    .map(({ firstDay, lastDay }, i) => ({ i, first: epochDay(firstDay), last: epochDay(lastDay) }))
    .sort((a, b) => a.first - b.first);
  let [openedAgain, closedSince] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { i, first, last } of spans) {
    const field = `closures[${i}]`;
    if (last < first) return { field: `${field}.lastDay`, message: 'must not be before firstDay' };
    if (first < openedAgain) {
      return { field: `${field}.firstDay`, message: 'lies in another closure' };
    }
    // A gap of less than a week may have no working day in it.
    if (first > openedAgain + 7) closedSince = first;
    openedAgain = last + 1;
    if (openedAgain - closedSince > LONGEST_CLOSURE_DAYS) {
      return { field: `${field}.lastDay`, message: 'closes it for more than 120 days' };
    }
  }
  return null;
}
