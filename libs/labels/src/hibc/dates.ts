import { daysInMonth, isoDay, isoDayOfYear, isoMonth, yearOf } from '../dates.js';
import { firstForeign } from '../gs1/character-sets.js';
import { failed, type Result } from '../problem.js';

export type HibcDateFormat =
  | 'MMDDYY'
  | 'MMYY'
  | 'YYJJJ'
  | 'YYJJJHH'
  | 'YYMMDD'
  | 'YYMMDDHH'
  | 'YYYYMMDD';

/** An expiry as the label states it; a month without a day has no `date`. */
export interface HibcExpiry {
  readonly format: HibcDateFormat;
  readonly date: string | null;
  readonly month: string;
  readonly hour: number | null;
}

/** The digit behind `$$` that says how the date behind it is written. */
export const FORMAT_DIGITS: Readonly<Record<string, HibcDateFormat>> = {
  '2': 'MMDDYY',
  '3': 'YYMMDD',
  '4': 'YYMMDDHH',
  '5': 'YYJJJ',
  '6': 'YYJJJHH',
};

/** Reads a date at a position of a symbol. */
export function readHibcDate(
  text: string,
  at: number,
  format: HibcDateFormat,
  currentYear: number,
): Result<{ readonly expiry: HibcExpiry }> {
  const digits = text.slice(at, at + format.length);
  const foreign = firstForeign(digits, 'N');
  if (foreign >= 0) {
    const sentence = `A date written ${format} has digits only.`;
    return failed('non_digit_character', at + foreign, sentence, { identifier: format });
  }
  if (digits.length < format.length) {
    const sentence = `A date written ${format} has ${format.length} digits, not ${digits.length}.`;
    return failed('incorrect_length', at + digits.length, sentence, { identifier: format });
  }
  const hour = format.endsWith('HH') ? Number(digits.slice(-2)) : null;
  if (hour !== null && hour > 23) {
    const sentence = `There is no hour ${digits.slice(-2)}.`;
    return failed('illegal_hour', at + format.indexOf('HH'), sentence, { identifier: format });
  }
  const year = format.includes('YYYY')
    ? Number(digits.slice(0, 4))
    : yearOf(Number(field(digits, format, 'YY')), currentYear);
  return format.includes('JJJ')
    ? dayOfYear({ digits, at, format, year, hour })
    : dayOfMonth({ digits, at, format, year, hour });
}

interface Parsed {
  readonly digits: string;
  readonly at: number;
  readonly format: HibcDateFormat;
  readonly year: number;
  readonly hour: number | null;
}

function field(digits: string, format: HibcDateFormat, name: string): string {
  const at = format.indexOf(name);
  return digits.slice(at, at + name.length);
}

function dayOfYear({ digits, at, format, year, hour }: Parsed): Result<{ expiry: HibcExpiry }> {
  const number = Number(field(digits, format, 'JJJ'));
  const date = isoDayOfYear(year, number);
  if (date === undefined) {
    const sentence = `${year} has no day number ${number}.`;
    return failed('illegal_day', at + format.indexOf('JJJ'), sentence, { identifier: format });
  }
  return { ok: true, expiry: { format, date, month: date.slice(0, 7), hour } };
}

function dayOfMonth({ digits, at, format, year, hour }: Parsed): Result<{ expiry: HibcExpiry }> {
  const month = Number(field(digits, format, 'MM'));
  if (month < 1 || month > 12) {
    const sentence = `There is no month ${field(digits, format, 'MM')}.`;
    return failed('illegal_month', at + format.indexOf('MM'), sentence, { identifier: format });
  }
  if (!format.includes('DD')) {
    return { ok: true, expiry: { format, date: null, month: isoMonth(year, month), hour } };
  }
  const day = Number(field(digits, format, 'DD'));
  const last = daysInMonth(year, month);
  if (day < 1 || day > last) {
    const sentence = `There is no day ${day} in month ${month} of ${year}; it has ${last} days.`;
    return failed('illegal_day', at + format.indexOf('DD'), sentence, { identifier: format });
  }
  return {
    ok: true,
    expiry: { format, date: isoDay(year, month, day), month: isoMonth(year, month), hour },
  };
}
