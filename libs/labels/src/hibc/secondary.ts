import { firstForeign } from '../gs1/character-sets.js';
import { failed, type Result } from '../problem.js';
import { FORMAT_DIGITS, type HibcExpiry, readHibcDate } from './dates.js';

/** What a secondary part and its supplements say. */
export interface HibcProduction {
  lot: string | null;
  serial: string | null;
  quantity: number | null;
  expiry: HibcExpiry | null;
  manufactured: string | null;
}

export function noProduction(): HibcProduction {
  return { lot: null, serial: null, quantity: null, expiry: null, manufactured: null };
}

export type Production = Result<{ readonly production: HibcProduction }>;

const MOST = 18;
const MOST_DIGITS = 9;

/**
 * Reads the parts between slashes: the secondary part, then supplements. `from` is where the text
 * stands in the symbol, `to` where it ends.
 */
export function readProduction(
  text: string,
  { from, to }: { readonly from: number; readonly to: number },
  currentYear: number,
): Production {
  const production = noProduction();
  let at = from;
  for (const segment of text.slice(from, to).split('/')) {
    const read = readSegment(segment, at === from, currentYear);
    const problem = read.ok ? mergeProduction(production, read.production) : read;
    if (problem) {
      return {
        ok: false,
        problem: { ...problem.problem, position: problem.problem.position + at },
      };
    }
    at += segment.length + 1;
  }
  return { ok: true, production };
}

type Found = Result<{ readonly production: Partial<HibcProduction> }>;

function readSegment(segment: string, first: boolean, currentYear: number): Found {
  if (segment === '') return failed('empty_value', 0, 'Nothing stands between two slashes.');
  if (segment.startsWith('$')) {
    return first
      ? readFlagged(segment, currentYear)
      : failed('unknown_format', 0, 'A part that begins with "$" comes right behind the product.');
  }
  if (segment.startsWith('14D') || segment.startsWith('16D'))
    return supplementDate(segment, currentYear);
  if (segment.startsWith('S')) return text(segment, 1, 'serial');
  if (segment.startsWith('Q')) return supplementQuantity(segment);
  if (first && /^\d{5}/.test(segment)) return readDatedLot(segment, currentYear);
  return failed('unknown_format', 0, `Nothing is known that begins with "${segment.slice(0, 3)}".`);
}

/** The first form of all: YYJJJ and the lot. */
function readDatedLot(segment: string, currentYear: number): Found {
  const date = readHibcDate(segment, 0, 'YYJJJ', currentYear);
  if (!date.ok) return date;
  return withExpiry(text(segment, 5, 'lot'), date.expiry, null);
}

/** `$` and `$+` hold a lot or a serial number; `$$` and `$$+` a quantity and a date before it. */
function readFlagged(segment: string, currentYear: number): Found {
  const dated = segment.startsWith('$$');
  let at = dated ? 2 : 1;
  const what = segment.charAt(at) === '+' ? 'serial' : 'lot';
  if (what === 'serial') at += 1;
  if (!dated) return text(segment, at, what);
  const counted = readQuantity(segment, at);
  if (!counted.ok) return counted;
  const { quantity } = counted;
  at = counted.end;
  const flag = segment.charAt(at);
  if (flag === '7') return withExpiry(text(segment, at + 1, what), null, quantity);
  if (flag === '0' || flag === '1') {
    const month = readHibcDate(segment, at, 'MMYY', currentYear);
    return month.ok ? withExpiry(text(segment, at + 4, what), month.expiry, quantity) : month;
  }
  const format = FORMAT_DIGITS[flag];
  if (format) {
    const date = readHibcDate(segment, at + 1, format, currentYear);
    if (!date.ok) return date;
    return withExpiry(text(segment, at + 1 + format.length, what), date.expiry, quantity);
  }
  if (quantity !== null && !/^\d/.test(flag)) {
    return withExpiry(text(segment, at, what), null, quantity);
  }
  const sentence = 'Behind "$$" comes a digit that says how the date is written: 0 to 9.';
  return failed('unknown_format', at, sentence);
}

type Counted = Result<{ readonly quantity: number | null; readonly end: number }>;

/** 8 and two digits, or 9 and five digits. */
function readQuantity(segment: string, at: number): Counted {
  const flag = segment.charAt(at);
  if (flag !== '8' && flag !== '9') return { ok: true, quantity: null, end: at };
  const end = at + (flag === '8' ? 3 : 6);
  const digits = segment.slice(at + 1, end);
  const foreign = firstForeign(digits, 'N');
  if (foreign >= 0) {
    const sentence = 'A quantity has digits only.';
    return failed('non_digit_character', at + 1 + foreign, sentence, { identifier: 'quantity' });
  }
  if (digits.length < end - at - 1) {
    const sentence = `Behind ${flag} the quantity has ${end - at - 1} digits.`;
    return failed('incorrect_length', segment.length, sentence, { identifier: 'quantity' });
  }
  return { ok: true, quantity: Number(digits), end };
}

function withExpiry(found: Found, expiry: HibcExpiry | null, quantity: number | null): Found {
  return found.ok ? { ok: true, production: { ...found.production, expiry, quantity } } : found;
}

/** A lot or serial number that goes to the end of its part; a lot may be left out. */
function text(segment: string, at: number, what: 'lot' | 'serial'): Found {
  const value = segment.slice(at);
  const about = { identifier: what };
  const foreign = value.search(/[^A-Z0-9.-]/);
  if (foreign >= 0) {
    const sentence = `A ${what} number has A-Z, 0-9, "-" and "." only.`;
    return failed('illegal_character', at + foreign, sentence, about);
  }
  if (value.length > MOST) {
    const sentence = `A ${what} number has at most ${MOST} characters, not ${value.length}.`;
    return failed('too_long', at + MOST, sentence, about);
  }
  if (value === '' && what === 'serial') {
    return failed('empty_value', at, 'The serial number is missing.', about);
  }
  return { ok: true, production: { [what]: value === '' ? null : value } };
}

function supplementDate(segment: string, currentYear: number): Found {
  const read = readHibcDate(segment, 3, 'YYYYMMDD', currentYear);
  if (!read.ok) return read;
  if (segment.length > 11) {
    return failed('too_long', 11, 'Behind 14D and 16D stand eight digits.', { identifier: 'date' });
  }
  return segment.startsWith('14D')
    ? { ok: true, production: { expiry: read.expiry } }
    : { ok: true, production: { manufactured: read.expiry.date } };
}

function supplementQuantity(segment: string): Found {
  const digits = segment.slice(1);
  const about = { identifier: 'quantity' };
  if (digits === '') return failed('empty_value', 1, 'The quantity is missing.', about);
  const foreign = firstForeign(digits, 'N');
  if (foreign >= 0) {
    return failed('non_digit_character', 1 + foreign, 'A quantity has digits only.', about);
  }
  if (digits.length > MOST_DIGITS) {
    const sentence = `A quantity has at most ${MOST_DIGITS} digits.`;
    return failed('too_long', 1 + MOST_DIGITS, sentence, about);
  }
  return { ok: true, production: { quantity: Number(digits) } };
}

const NAMES = {
  lot: 'lot number',
  serial: 'serial number',
  quantity: 'quantity',
  expiry: 'expiry',
  manufactured: 'date of manufacture',
} as const;

/** Takes over what a part says; a part may repeat what another said, but not contradict it. */
export function mergeProduction(into: HibcProduction, more: Partial<HibcProduction>) {
  for (const name of Object.keys(NAMES) as (keyof HibcProduction)[]) {
    const said = more[name];
    if (said === null || said === undefined) continue;
    const before = into[name];
    if (before !== null && !same(before, said)) {
      const sentence = `The ${NAMES[name]} is there twice with different values.`;
      return failed('repeated_ai_different_value', 0, sentence, { identifier: name });
    }
  }
  const { lot, serial, quantity, expiry, manufactured } = more;
  into.lot = lot ?? into.lot;
  into.serial = serial ?? into.serial;
  into.quantity = quantity ?? into.quantity;
  into.expiry = expiry?.date === null ? (into.expiry ?? expiry) : (expiry ?? into.expiry);
  into.manufactured = manufactured ?? into.manufactured;
  return undefined;
}

function same(one: string | number | HibcExpiry, other: string | number | HibcExpiry): boolean {
  if (typeof one !== 'object' || typeof other !== 'object') return one === other;
  return one.date === null || other.date === null
    ? one.month === other.month
    : one.date === other.date;
}
