import type { Text } from './text.js';

export interface FormatOptions {
  readonly locale: string;
  readonly currency: string;
  readonly timeZone: string;
  readonly units: Text['units'];
}

/** Decimals travel as strings and are never made floats: Intl takes them as they are. */
type Decimal = Intl.StringNumericLiteral;

/** Keeps a number and its unit on one line. */
const FIXED_SPACE = '\u00a0';

/** Dates, numbers, amounts and money as one practice writes them in one language. */
export function makeFormat({ locale, currency, timeZone, units }: FormatOptions) {
  const number = new Intl.NumberFormat(locale, { maximumFractionDigits: 6 });
  const rough = new Intl.NumberFormat(locale, { maximumFractionDigits: 2 });
  const money = new Intl.NumberFormat(locale, { style: 'currency', currency });
  const percent = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 1 });
  const plural = new Intl.PluralRules(locale);
  // A day has no hour: it is written as it is, whatever the zone of this device.
  const day = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' });
  const dayShort = new Intl.DateTimeFormat(locale, {
    day: 'numeric',
    month: 'short',
    timeZone: 'UTC',
  });
  const weekday = new Intl.DateTimeFormat(locale, {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    timeZone: 'UTC',
  });
  const month = new Intl.DateTimeFormat(locale, {
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });
  const instant = new Intl.DateTimeFormat(locale, {
    dateStyle: 'medium',
    timeStyle: 'short',
    timeZone,
  });
  const unitName = (value: string, unit: string): string => {
    const known = (units as Readonly<Record<string, { one: string; other: string }>>)[unit];
    if (!known) return unit;
    return plural.select(Number(value)) === 'one' ? known.one : known.other;
  };
  const roughly = (value: string): string =>
    (/^-?0(\.|$)/.test(value) ? number : rough).format(value as Decimal);
  return {
    number: (value: string) => number.format(value as Decimal),
    /** For a glance: from 1 on two digits after the point are enough. */
    roughly,
    /** '0.4 g', '3 pieces'. */
    quantity: (value: string, unit: string) =>
      `${number.format(value as Decimal)}${FIXED_SPACE}${unitName(value, unit)}`,
    /** The same for a glance: '7.78 g'. */
    amount: (value: string, unit: string) =>
      `${roughly(value)}${FIXED_SPACE}${unitName(value, unit)}`,
    unitName,
    /** In the currency of the practice, to its smallest coin. */
    money: (value: string) => money.format(value as Decimal),
    /** A share such as '0.25'. */
    percent: (value: string) => percent.format(value as Decimal),
    /** '2026-05-04' -> '4 May 2026'. */
    day: (iso: string) => day.format(new Date(`${iso}T00:00:00Z`)),
    dayShort: (iso: string) => dayShort.format(new Date(`${iso}T00:00:00Z`)),
    /** '2026-05-04' -> 'Monday 4 May'. */
    weekday: (iso: string) => weekday.format(new Date(`${iso}T00:00:00Z`)),
    /** '2026-05' -> 'May 2026'. */
    month: (iso: string) => month.format(new Date(`${iso.slice(0, 7)}-01T00:00:00Z`)),
    /** A moment, in the zone of the practice. */
    instant: (iso: string) => instant.format(new Date(iso)),
    currency,
  };
}

export type Format = ReturnType<typeof makeFormat>;
