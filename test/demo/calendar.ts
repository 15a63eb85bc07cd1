import { addDays, addMonths, type IsoDate } from '#lib/platform';

const MONTHS_OF_BOOK = 18;

/** 1 is Monday, 7 is Sunday. */
export function weekdayOf(day: IsoDate): number {
  return new Date(`${day}T00:00:00Z`).getUTCDay() || 7;
}

/** The practice works on weekdays, but not from Christmas Eve to New Year nor in mid-August. */
export function isWorkday(day: IsoDate): boolean {
  if (weekdayOf(day) > 5) return false;
  const inYear = day.slice(5);
  if (inYear >= '12-24' || inYear === '01-01') return false;
  return inYear < '08-10' || inYear > '08-16';
}

export function nextWorkday(day: IsoDate): IsoDate {
  let found = day;
  while (!isWorkday(found)) found = addDays(found, 1);
  return found;
}

/** Every day the practice was open in the months up to today. */
export function workdaysUpTo(today: IsoDate): IsoDate[] {
  const days: IsoDate[] = [];
  const first = addMonths(today, -MONTHS_OF_BOOK);
  for (let day = first; day <= today; day = addDays(day, 1)) {
    if (isWorkday(day)) days.push(day);
  }
  return days;
}
