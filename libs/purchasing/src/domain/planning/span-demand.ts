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
import type { DemandHistory } from '../forecast/usage-history.js';
import { type Demand, remembered } from '../policy/demand.js';

/**
 * A forecast as the policy asks it: use from day `from` to day `to`, counted from the day after the
 * history. A count of the policy is a grid step of the forecast. Each span is worked out once.
 * Throws RangeError for a span that is none.
 */
export function spanDemand(item: ItemForecast, history: DemandHistory): Demand {
  const profile = weekdayProfile(history);
  const today = history.firstDay + history.demand.length;
  const over = (first: EpochDay, length: number) =>
    item.over(windowFrom(history.calendar, profile, first, length));
  const use = item.method.name === 'resampling' ? resampledUse(over) : over;
  return remembered({
    use: (from, to) => {
      const length = to - from;
      if (!Number.isInteger(length) || length < 0) {
        throw new RangeError(`a span of use has whole days, at least 0, not ${length}`);
      }
      return length === 0 ? certain(0) : use(today + from, length);
    },
  });
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
