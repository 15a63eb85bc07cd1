import { daysInMonth, yearOf } from '../dates.js';
import type { LabelProblemCode } from '../problem.js';
import { firstForeign } from './character-sets.js';

/** What a check finds wrong inside a part, counted from its first character. */
export interface Finding {
  readonly code: LabelProblemCode;
  readonly at: number;
  readonly sentence: string;
  readonly expected?: string;
}

export type Check = (text: string, currentYear: number) => Finding | undefined;

export interface DateRules {
  /** Two digits of the year, or four. */
  readonly yearDigits: 2 | 4;
  readonly day00: boolean;
}

/** A date of digits; the length is checked, because not every caller knows it. */
export function dateFinding(
  text: string,
  { yearDigits, day00 }: DateRules,
  currentYear: number,
): Finding | undefined {
  const length = yearDigits + 4;
  const wrong = digitsFinding(text, length, 'A date');
  if (wrong) return wrong;
  const written = Number(text.slice(0, yearDigits));
  const year = yearDigits === 4 ? written : yearOf(written, currentYear);
  const month = Number(text.slice(yearDigits, yearDigits + 2));
  const day = Number(text.slice(yearDigits + 2));
  if (month < 1 || month > 12) {
    return found('illegal_month', yearDigits, `There is no month ${text.slice(-4, -2)}.`);
  }
  const last = daysInMonth(year, month);
  if (day > last) {
    const sentence = `There is no day ${day} in month ${month} of ${year}; it has ${last} days.`;
    return found('illegal_day', yearDigits + 2, sentence);
  }
  if (day === 0 && !day00) {
    return found(
      'illegal_day',
      yearDigits + 2,
      'Day 00 is not allowed here: a real day is needed.',
    );
  }
  return undefined;
}

/** Hours and minutes; minutes may be left out where only hours are written. */
export function timeFinding(text: string): Finding | undefined {
  return (
    digitsFinding(text, 4, 'A time') ??
    upTo(text.slice(0, 2), 23, 'illegal_hour', 'hour') ??
    later(upTo(text.slice(2), 59, 'illegal_minute', 'minute'), 2)
  );
}

export const DATE_CHECKS: Readonly<Record<string, Check>> = {
  yymmd0: (text, year) => dateFinding(text, { yearDigits: 2, day00: true }, year),
  yymmdd: (text, year) => dateFinding(text, { yearDigits: 2, day00: false }, year),
  yyyymmdd: (text, year) => dateFinding(text, { yearDigits: 4, day00: false }, year),
  hhmi: timeFinding,
  hh: (text) => upTo(text, 23, 'illegal_hour', 'hour'),
  mi: (text) => upTo(text, 59, 'illegal_minute', 'minute'),
  ss: (text) => upTo(text, 59, 'illegal_second', 'second'),
};

export function found(code: LabelProblemCode, at: number, sentence: string): Finding {
  return { code, at, sentence };
}

function upTo(
  digits: string,
  most: number,
  code: LabelProblemCode,
  what: string,
): Finding | undefined {
  return Number(digits) > most ? found(code, 0, `There is no ${what} ${digits}.`) : undefined;
}

function later(finding: Finding | undefined, by: number): Finding | undefined {
  return finding && { ...finding, at: finding.at + by };
}

function digitsFinding(text: string, length: number, what: string): Finding | undefined {
  if (text.length < length) return found('too_short', 0, `${what} has ${length} digits here.`);
  if (text.length > length) return found('too_long', length, `${what} has ${length} digits here.`);
  const foreign = firstForeign(text, 'N');
  return foreign < 0
    ? undefined
    : found('non_digit_character', foreign, `${what} has digits only.`);
}
