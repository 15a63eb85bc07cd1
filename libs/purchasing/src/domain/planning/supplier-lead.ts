import type { EpochDay, WorkCalendar } from '../forecast/calendar.js';
import { leadTime, onCalendar } from '../forecast/lead-time.js';
import type { LeadTime } from '../policy/index.js';
import { type SupplyTerms, WEEKDAYS } from './planning-settings.js';

/** Lead times less likely than this, all together negligible, are not followed. */
const NEGLIGIBLE = 1e-6;

/**
 * Calendar days until an order placed today is here: a spread around the stated working days of the
 * supplier, as long as no orders are on record from which it could be seen.
 */
export function statedLeadTime(
  terms: SupplyTerms,
  statedByPractice: number,
  today: EpochDay,
): LeadTime {
  const calendar: WorkCalendar = {
    openWeekdays: WEEKDAYS.map((day) => terms.workingDays.includes(day)),
    closedDays: new Set(),
  };
  const { days } = leadTime([], { statedDays: terms.leadDays ?? statedByPractice });
  const chances = Array.from(onCalendar(days, calendar, today).weights, (probability, d) => ({
    days: d,
    probability,
  })).filter((chance) => chance.probability > NEGLIGIBLE);
  const total = chances.reduce((sum, chance) => sum + chance.probability, 0);
  return chances.map((chance) => ({ ...chance, probability: chance.probability / total }));
}
