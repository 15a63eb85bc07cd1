import { Injectable } from '@nestjs/common';

/** A calendar day as YYYY-MM-DD (ISO 8601). */
export type IsoDate = string;

/** The only place that asks what time it is, so that every rule can be tested at any date. */
@Injectable()
export class Clock {
  now(): Date {
    return new Date();
  }

  /** The calendar day it is now in a practice's time zone. */
  today(timeZone: string): IsoDate {
    return dayIn(timeZone, this.now());
  }
}

const formatters = new Map<string, Intl.DateTimeFormat>();

export function dayIn(timeZone: string, instant: Date): IsoDate {
  let format = formatters.get(timeZone);
  if (!format) {
    format = new Intl.DateTimeFormat('en-CA', {
      timeZone,
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
    });
    formatters.set(timeZone, format);
  }
  return format.format(instant);
}

export function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

/** Whether the text is a day that exists (no 2026-02-30), between 1900 and 2199. */
export function isIsoDate(text: string): boolean {
  if (!/^(19|20|21)\d\d-\d\d-\d\d$/.test(text)) return false;
  const time = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().slice(0, 10) === text;
}

export function addDays(day: IsoDate, days: number): IsoDate {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

/** The same day of a later month, or that month's last day where it has no such day. */
export function addMonths(day: IsoDate, months: number): IsoDate {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  const lastOfTarget = new Date(Date.UTC(year, month - 1 + months + 1, 0));
  const wanted = Math.min(date, lastOfTarget.getUTCDate());
  return new Date(Date.UTC(lastOfTarget.getUTCFullYear(), lastOfTarget.getUTCMonth(), wanted))
    .toISOString()
    .slice(0, 10);
}

/** Days from one day to another; negative when the second is earlier. */
export function daysBetween(from: IsoDate, to: IsoDate): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
}
