import { type EpochDay, isOpen, isoDay, nextOpenDay, type WorkCalendar } from './calendar.js';
import { gridStep, toSteps } from './quantity-grid.js';

/** What one day used of an item, in millionths; every amount at least 0. */
export interface DayUse {
  readonly day: EpochDay;
  /** Issued from stock. Returns and count corrections are no use and stay out. */
  readonly issued: bigint;
  /** Used though the book had none: demand all the same. */
  readonly shortfall?: bigint;
  /** The part of issued and shortfall that retakes took. */
  readonly retakes?: bigint;
  /** The part that a person marked as a one-off event; never demand. */
  readonly oneOff?: bigint;
}

export interface HistoryOptions {
  readonly firstDay: EpochDay;
  /** The last complete day. */
  readonly lastDay: EpochDay;
  readonly calendar: WorkCalendar;
  /** Retakes are demand unless this is true. */
  readonly leaveOutRetakes?: boolean;
  /** Days on which nobody could use the item and nobody recorded a shortfall: not evidence. */
  readonly unknownDays?: ReadonlySet<EpochDay>;
}

/** Daily demand of one item, in steps of its grid. */
export interface DemandHistory {
  readonly firstDay: EpochDay;
  readonly calendar: WorkCalendar;
  /** Millionths of a stock unit in a step. */
  readonly step: bigint;
  /** One entry for each day, in steps; a closed or unknown day has 0. */
  readonly demand: Float64Array;
  /** 1 where the day is evidence: open and known. */
  readonly counts: Uint8Array;
  /** What was left out, and what the book had none of, in millionths. */
  readonly leftOut: bigint;
  readonly shortfall: bigint;
}

/**
 * Demand by day: issued + shortfall less one-off events (and retakes, if asked). Use on a closed
 * day moves to the next open one, so that no use is lost. Throws RangeError naming day and field.
 */
export function demandHistory(uses: readonly DayUse[], options: HistoryOptions): DemandHistory {
  const { firstDay, lastDay, calendar } = options;
  if (lastDay < firstDay) throw new RangeError('lastDay must not be before firstDay');
  const byDay = new Map<EpochDay, bigint>();
  let leftOut = 0n;
  let shortfall = 0n;
  for (const use of uses) {
    if (use.day < firstDay || use.day > lastDay) {
      throw new RangeError(`day ${isoDay(use.day)} is outside the history`);
    }
    const { demand, dropped } = demandOf(use, options.leaveOutRetakes === true);
    leftOut += dropped;
    shortfall += use.shortfall ?? 0n;
    const day = Math.min(lastDay, nextOpenDay(calendar, use.day));
    byDay.set(day, (byDay.get(day) ?? 0n) + demand);
  }
  const step = gridStep([...byDay.values()]);
  const length = lastDay - firstDay + 1;
  const counts = new Uint8Array(length);
  for (let i = 0; i < length; i += 1) {
    const unknown = options.unknownDays?.has(firstDay + i) === true;
    const used = (byDay.get(firstDay + i) ?? 0n) > 0n;
    counts[i] = used || (isOpen(calendar, firstDay + i) && !unknown) ? 1 : 0;
  }
  const demand = new Float64Array(length);
  for (const [day, amount] of byDay) demand[day - firstDay] = toSteps(amount, step);
  return { firstDay, calendar, step, demand, counts, leftOut, shortfall };
}

function demandOf(use: DayUse, leaveOutRetakes: boolean): { demand: bigint; dropped: bigint } {
  const { issued, shortfall = 0n, retakes = 0n, oneOff = 0n } = use;
  for (const [field, amount] of Object.entries({ issued, shortfall, retakes, oneOff })) {
    if (amount < 0n) throw new RangeError(`${field} of ${isoDay(use.day)} must not be negative`);
  }
  const all = issued + shortfall;
  if (retakes > all) throw new RangeError(`retakes of ${isoDay(use.day)} exceed the use`);
  if (oneOff > all) throw new RangeError(`oneOff of ${isoDay(use.day)} exceeds the use`);
  const wanted = oneOff + (leaveOutRetakes ? retakes : 0n);
  // A retake within a one-off event is left out once.
  const dropped = wanted > all ? all : wanted;
  return { demand: all - dropped, dropped };
}
