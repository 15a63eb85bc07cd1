/**
 * The year of two digits, by the sliding window of the GS1 General Specifications (section 7.12):
 * 51 to 99 years ahead means the century before, 50 to 99 years back the one after. The HIBC standard
 * states no rule; the same window is used there.
 */
export function yearOf(twoDigits: number, currentYear: number): number {
  const ahead = twoDigits - (currentYear % 100);
  const century = currentYear - (currentYear % 100);
  if (ahead >= 51) return century - 100 + twoDigits;
  if (ahead <= -50) return century + 100 + twoDigits;
  return century + twoDigits;
}

export function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeap(year) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

function isLeap(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

export function isoDay(year: number, month: number, day: number): string {
  return `${isoMonth(year, month)}-${two(day)}`;
}

export function isoMonth(year: number, month: number): string {
  return `${String(year).padStart(4, '0')}-${two(month)}`;
}

/** The day of a year that is the `dayOfYear`-th, from 1. */
export function isoDayOfYear(year: number, dayOfYear: number): string | undefined {
  if (dayOfYear < 1 || dayOfYear > (isLeap(year) ? 366 : 365)) return undefined;
  let left = dayOfYear;
  let month = 1;
  while (left > daysInMonth(year, month)) {
    left -= daysInMonth(year, month);
    month += 1;
  }
  return isoDay(year, month, left);
}

/** YYMMDD as a day; 00 stands for the last day of the month. The digits are already checked. */
export function dayOfSixDigits(digits: string, currentYear: number): string {
  const year = yearOf(Number(digits.slice(0, 2)), currentYear);
  const month = Number(digits.slice(2, 4));
  const day = Number(digits.slice(4, 6));
  return isoDay(year, month, day === 0 ? daysInMonth(year, month) : day);
}

const PRINTED = /^(\d{4})-(\d\d)-(\d\d)$/;

/** Whether a date is printed as 21 CFR 801.18(a) wants it on a device: 2014-01-02, a day that exists. */
export function isPrintedDate(text: string): boolean {
  const parts = PRINTED.exec(text);
  if (!parts) return false;
  const [year, month, day] = parts.slice(1).map(Number) as [number, number, number];
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
}

function two(number: number): string {
  return number < 10 ? `0${number}` : String(number);
}
