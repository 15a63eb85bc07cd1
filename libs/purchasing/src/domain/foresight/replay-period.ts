import type { EpochDay } from '../forecast/calendar.js';

/** So many days of history are learnt from before anything is replayed. */
const LEARNT_DAYS = 56;
/** Fewer days say nothing. */
const LEAST_DAYS = 28;
const USUAL_DAYS = 365;

export type ReplayPeriod =
  | { readonly ok: true; readonly firstDay: EpochDay }
  | { readonly ok: false; readonly reason: 'history too short' }
  | {
      readonly ok: false;
      readonly reason: 'outside the history';
      readonly earliest: EpochDay;
      readonly latest: EpochDay;
    };

/** From when on to replay: a year, or what the book has after eight weeks to learn from. */
export function replayPeriod(
  asked: EpochDay | null,
  firstVisit: EpochDay | null,
  today: EpochDay,
): ReplayPeriod {
  const earliest = firstVisit === null ? today : firstVisit + LEARNT_DAYS;
  const latest = today - LEAST_DAYS;
  if (earliest > latest) return { ok: false, reason: 'history too short' };
  if (asked === null) return { ok: true, firstDay: Math.max(earliest, today - USUAL_DAYS) };
  if (asked < earliest || asked > latest) {
    return { ok: false, reason: 'outside the history', earliest, latest };
  }
  return { ok: true, firstDay: asked };
}
