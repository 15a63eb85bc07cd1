import { fault } from './problems.js';
import type { RawCell } from './sheet.js';

const DAY_MS = 86_400_000;
/** Day 0 of the two calendars of spreadsheets (ECMA-376 part 1, 18.17.4.1). */
const EPOCH_1900 = Date.UTC(1899, 11, 30);
const EPOCH_1904 = Date.UTC(1904, 0, 1);
/** Before 1 March 1900 the older calendar counts a 29 February that never was. */
const FIRST_SAFE_1900 = 61;
const LAST = 109_575; // 2199-12-31

/** A number of a spreadsheet that is shown as a date. */
export function dateCell(stored: string, date1904: boolean): RawCell {
  const serial = Number(stored);
  if (!Number.isFinite(serial) || serial > LAST || serial < (date1904 ? 0 : FIRST_SAFE_1900)) {
    return { kind: 'wrong', fault: fault('date-out-of-reach', stored) };
  }
  if (!Number.isInteger(serial)) {
    return { kind: 'wrong', fault: fault('time-of-day') };
  }
  const time = (date1904 ? EPOCH_1904 : EPOCH_1900) + serial * DAY_MS;
  return { kind: 'date', text: new Date(time).toISOString().slice(0, 10) };
}

/**
 * A number of a spreadsheet as people typed it. It is stored in binary with 15 digits that count, so
 * that 0.1 may stand as 0.10000000000000001; with more digits the spreadsheet has already changed it.
 */
export function numberCell(stored: string): RawCell {
  const value = Number(stored);
  if (stored.trim() === '' || !Number.isFinite(value)) {
    return { kind: 'wrong', fault: fault('number-unreadable', stored) };
  }
  if (Math.abs(value) >= 1e15) {
    return { kind: 'wrong', fault: fault('too-many-digits') };
  }
  return { kind: 'number', text: plainDecimal(Number(value.toPrecision(15))) };
}

/** Without an exponent: 1e-7 is 0.0000001. */
function plainDecimal(value: number): string {
  const text = String(value);
  const match = /^(-?)(\d)(?:\.(\d+))?e-(\d+)$/.exec(text);
  if (!match) return text;
  const [, sign, whole, decimals = '', exponent] = match;
  return `${sign}0.${'0'.repeat(Number(exponent) - 1)}${whole}${decimals}`;
}
