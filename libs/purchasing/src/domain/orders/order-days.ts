import { addOpenDays, epochDay, isoDay, type WorkCalendar } from '../forecast/calendar.js';

/** The day on which goods ordered on a day should be here: so many working days of the supplier. */
export function expectedDay(orderedOn: string, leadDays: number, calendar: WorkCalendar): string {
  return isoDay(addOpenDays(calendar, epochDay(orderedOn), leadDays));
}

/**
 * Days since the goods should have been here, or null while the order is not late: it is, when more
 * than the days of grace have passed. Both are days as text, '2026-05-04'.
 */
export function daysLate(expectedOn: string, today: string, graceDays: number): number | null {
  const late = epochDay(today) - epochDay(expectedOn);
  return late > graceDays ? late : null;
}
