import {
  type EpochDay,
  isOpen,
  monthOf,
  type WorkCalendar,
  weekdayOf,
} from '../forecast/calendar.js';
import { countWith } from '../forecast/counts.js';
import { certain, type Distribution } from '../forecast/distribution.js';
import type { ItemForecast } from '../forecast/item-forecast.js';
import { weekdayProfile } from '../forecast/period-series.js';
import type { Window } from '../forecast/predict.js';
import { type BookedUse, bookedInSteps } from '../forecast/shelf-forecast.js';
import type { DemandHistory } from '../forecast/usage-history.js';
import { type Demand, remembered } from '../policy/demand.js';

/**
 * A forecast as the policy asks it: use from day `from` to day `to`, counted from the day after the
 * history. A count of the policy is a grid step of the forecast. Each span is worked out once. What
 * visits are booked to use replaces the usual use that it covers; days without any are as they would
 * be without bookings. Throws RangeError for a span that is none.
 */
export function spanDemand(item: ItemForecast, history: DemandHistory, booked?: BookedUse): Demand {
  const profile = weekdayProfile(history);
  const today = history.firstDay + history.demand.length;
  const windowOf = (first: EpochDay, length: number) =>
    windowFrom(history.calendar, profile, first, length);
  const resampling = item.method.name === 'resampling';
  const over: UseOver = (first, length) => item.over(windowOf(first, length));
  const usual = resampling ? resampledUse(over) : over;
  const until = booked === undefined ? 0 : daysBooked(booked);
  const use = (from: number, length: number): Distribution => {
    if (booked === undefined || from >= until) return usual(today + from, length);
    // Drawing every day of a year takes long: what comes after the bookings is told by blocks.
    const here = resampling && length > BLOCK_DAYS ? Math.min(length, until - from) : length;
    const days = bookedInSteps(booked, { from, days: here }, history.step);
    const known = item.over(windowOf(today + from, here), days);
    if (here === length) return known;
    const rest = usual(today + from + here, length - here);
    return countWith(known.mean + rest.mean, known.variance + rest.variance);
  };
  return remembered({
    use: (from, to) => {
      const length = to - from;
      if (!Number.isInteger(length) || length < 0) {
        throw new RangeError(`a span of use has whole days, at least 0, not ${length}`);
      }
      return length === 0 ? certain(0) : use(from, length);
    },
  });
}

/** Up to and with the last day on which anything is booked or covered. */
function daysBooked({ quantities, coverage }: BookedUse): number {
  const used = quantities.findLastIndex((quantity) => quantity > 0n);
  const covered = coverage?.findLastIndex((share) => share > 0) ?? -1;
  return Math.max(used, covered) + 1;
}

type UseOver = (first: EpochDay, length: number) => Distribution;

/** Sums of more days than this are as well told by a count with the same mean and variance. */
const BLOCK_DAYS = 56;

/**
 * Days are drawn independently, each from those of its weekday. So a span depends on the weekday
 * that it starts on and its length only, and mean and variance of a long one are those of blocks of
 * whole weeks added up: drawing every day of a year would take long and say the same.
 */
function resampledUse(over: UseOver): UseOver {
  const known = new Map<string, Distribution>();
  const short: UseOver = (first, length) => {
    const key = `${weekdayOf(first)} ${length}`;
    const found = known.get(key) ?? over(first, length);
    known.set(key, found);
    return found;
  };
  return (first, length) => {
    if (length <= BLOCK_DAYS) return short(first, length);
    const block = short(first, BLOCK_DAYS);
    const blocks = Math.floor(length / BLOCK_DAYS);
    const rest = short(first, length - blocks * BLOCK_DAYS);
    const mean = blocks * block.mean + rest.mean;
    return countWith(mean, blocks * block.variance + rest.variance);
  };
}

function windowFrom(
  calendar: WorkCalendar,
  profile: readonly number[],
  first: EpochDay,
  length: number,
): Window {
  const kind = Uint8Array.from({ length }, (_, t) => weekdayOf(first + t));
  const weight = Float64Array.from({ length }, (_, t) =>
    isOpen(calendar, first + t) ? (profile[kind[t] ?? 0] ?? 0) : 0,
  );
  const season = Uint8Array.from({ length }, (_, t) => monthOf(first + t));
  return { weight, kind, season };
}
