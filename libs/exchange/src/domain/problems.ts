/**
 * What may be wrong with a cell or a row, by a code that stays, with what an English sentence says of it
 * after "this cell" or "this row". {0}, {1} are filled with the values of the problem.
 */
export const PROBLEMS = {
  // What a cell holds.
  'formula-cell': 'holds a formula; write its value instead',
  'formula-text': "begins like a formula; write the value, or a ' before it",
  'error-cell': 'holds the error {0}',
  'cell-too-long': 'holds more than {0} characters',
  'date-out-of-reach': 'holds a date out of reach ({0})',
  'time-of-day': 'holds a time of day; write the date only',
  'number-unreadable': 'holds a number that cannot be read ({0})',
  'too-many-digits':
    'is a number of more than 15 digits, which spreadsheets round; format it as text',
  'is-a-date': 'is a date ({0}); format the column as text and type it again',
  'is-a-flag': 'is a yes-or-no cell; write a value',
  'no-such-day': 'names a day that does not exist ({0})',
  'date-as-text':
    'is text ({0}), which can be read in several ways; write 2026-12-31 or use a date cell',
  'date-is-number': 'is a number ({0}), not a date; write 2026-12-31',
  'date-is-flag': 'is a yes-or-no cell, not a date; write 2026-12-31',
  'yes-or-no': 'must be yes or no',
  'text-too-long': 'is longer than {0} characters',
  'control-character': 'holds a line break or another control character',
  'not-a-choice': 'must be one of: {0}',
  'not-all-choices': 'has {0}, which is none of: {1}',
  'whole-number': 'must be a whole number from {0} to {1}',
  'too-many-decimals': 'must have at most {0} digits after the point',
  'below-nothing': 'must not be below 0',
  'not-more-than-nothing': 'must be more than 0',
  'too-much': 'must be at most {0}',
  'grouped-digits': 'groups its digits; write {0}',
  'two-readings': 'could be {0} or {1}; write {1} or {0}0',
  'not-a-number': 'is not a number; write digits with one decimal point or comma',
  // What is missing, or said twice.
  'name-blank': 'is blank; every row needs a name',
  'consumable-blank': 'is blank; every row needs a consumable',
  'supplier-blank': 'is blank; every row needs a supplier',
  'pack-needed': 'is blank; every row needs a pack',
  'template-blank': 'is blank; every row needs the name of its template',
  'needed-when-new': 'is needed for what is not in the book yet',
  blank: 'is blank',
  contradicts: 'contradicts row {0}, which says {1}',
  'contradicts-in-template': 'contradicts row {0} of the same template, which says {1}',
  'contradicts-in-visit': 'contradicts row {0} of the same visit, which says {1}',
  'contradicts-in-visit-blank': 'contradicts row {0} of the same visit, which says nothing',
  'same-as-row': 'says the same as row {0}; if both are there, tell them apart by a row key',
  'other-than-row': 'contradicts row {0}; if both are there, tell them apart by a row key',
  'other-row-of-list': 'belongs to a list with errors in another row',
  'other-row-of-template': 'belongs to a template with errors in another row',
  'other-row-of-visit': 'belongs to a visit with errors in another row',
  // What the book does not have, or cannot hold.
  'several-of-name': 'names several ({0})',
  'no-consumable': 'names no consumable of the book ({0})',
  'no-consumable-yet': 'names no consumable of the book ({0}); bring it in first',
  'no-supplier': 'names no supplier of the book ({0})',
  'no-supplier-yet': 'names no supplier of the book ({0}); bring the suppliers in first',
  'no-location': 'names no location of the book ({0})',
  'no-location-in-use': 'names no location in use of the book ({0})',
  'no-location-anywhere': 'names no location ({0}), neither in the book nor in this file',
  'no-template-in-use': 'names no procedure template in use of the book ({0})',
  'no-dentist': 'names no dentist of the book ({0})',
  'no-pack': 'names no pack of this consumable ({0})',
  'location-retired': 'is no longer in use ({0})',
  'location-holds-stock': 'cannot be no while the location holds stock',
  'location-in-itself': 'would make a location lie inside itself',
  'too-many-levels': 'would make more than {0} levels',
  'pack-blank': 'is blank, but other columns of the row are about a pack',
  'which-pack': 'is blank; which of: {0}?',
  'no-pack-in-use': 'is blank, and the consumable has no pack in use',
  'life-unit-blank': 'is blank: day or month?',
  'life-blank': 'is blank beside its unit',
  'order-at-blank': 'is needed beside an amount to order up to',
  'not-below': 'must not be below {0}',
  'fixed-by-receipt': 'is fixed as {0}, because goods were received already',
  'whole-content': 'must be a whole number, because stock is kept in whole {0}s',
  'by-piece-unit': 'cannot be by-piece for a consumable that is kept in {0}',
  // Opening stock.
  'location-blank': 'is blank; where does it lie?',
  'nobody-delivers': 'is blank, and the pack has no supplier either',
  'quantity-or-packs': 'does not go with the number of packs; give one of them',
  'no-quantity': 'is blank, and so are the packs',
  'whole-quantity': 'must be whole, because stock is kept in {0}s',
  'cannot-be-open': 'does not go with a pack for {0} use',
  'more-than-a-container': 'is more than one opened container holds; use a row for each',
  'no-price': 'is blank, and the pack has no list price; write 0 if it was free',
  'more-than-the-book': 'is more than the book can hold',
  'worth-too-much': 'is too much for so little',
  'other-expiry': 'differs from the book, which has {0} for this lot',
  'other-expiry-none': 'differs from the book, which has no expiry date for this lot',
  'other-status': 'differs from the book, where this lot is {0}',
  'row-expiry': 'contradicts row {0}, which has {1} for this lot',
  'row-expiry-none': 'contradicts row {0}, which has no expiry date for this lot',
  'row-status': 'contradicts row {0}, where this lot is {1}',
  'after-today': 'must not be after today, {0}',
  'opened-before-received': 'is before it was received, {0}',
  'use-by-not-opened': 'goes with an opened container only; when was it opened?',
  'use-by-after-expiry': "must not be after the label's expiry, {0}",
  'said-otherwise-then':
    'was brought in on {0} and said something else then; correct it by a count',
  // Templates and visits.
  'too-many-lines': 'is line {0}; a template has {1}',
  'day-blank': 'is blank; on which day?',
  'plan-blank': 'is blank; what is planned?',
  // Ordering.
  'price-from-one': 'must be 1 for the first price of a pack',
  'price-not-lower': 'must be lower than {0}, the price from {1} packs on',
  'too-many-prices': 'would make more than {0} prices of one pack',
  'day-before-first': 'must not be before the first day, {0}',
  'closure-overlaps': 'lies in another closure of this supplier',
  'closed-too-long': 'closes the supplier for more than 120 days',
  'too-many-closures': 'would make more than {0} closures of one supplier',
  'measure-and-level': 'is needed beside the other: measure and level go together',
  'own-content': "is the pack's own content already",
  'shares-over-all': 'makes shares of more than 100 % together',
  'too-many-parts': 'would make more than {0} parts of one pack',
  'itself-as-stand-in': 'must be another consumable',
  'pair-note': 'differs from the book, which says "{0}"; take that pair back first',
  'stand-in-unit': 'is counted in another unit, so its figures could not be compared',
  /** What another part of the service says; in English only. */
  other: '{0}',
} as const satisfies Readonly<Record<string, string>>;

export type ProblemCode = keyof typeof PROBLEMS;
export const PROBLEM_CODES = Object.keys(PROBLEMS) as ProblemCode[];

/** What is wrong, before it is known where. */
export interface Fault {
  readonly code: ProblemCode;
  readonly values: readonly string[];
  /** The English sentence, which goes on after "this cell" or "this row". */
  readonly message: string;
}

/** Something wrong in a row, in one of its columns where it is in one. */
export interface CellProblem extends Fault {
  /** The key of the column; null when it is the row as a whole. */
  readonly column: string | null;
}

function filled(words: string, values: readonly string[]): string {
  return words.replace(/\{(\d)\}/g, (_, at: string) => values[Number(at)] ?? '');
}

export function fault(code: ProblemCode, ...values: readonly (string | number)[]): Fault {
  const texts = values.map(String);
  return { code, values: texts, message: filled(PROBLEMS[code], texts) };
}

export function problem(
  column: string | null,
  code: ProblemCode,
  ...values: readonly (string | number)[]
): CellProblem {
  return { column, ...fault(code, ...values) };
}

/** Why a sheet as a whole cannot be read as a list yet; {0} is its name. */
export const SHEET_PROBLEMS = {
  empty: 'Sheet "{0}" is empty.',
  'no-rows': 'Sheet "{0}" has no rows below its headings.',
  merged: 'Sheet "{0}" has the merged cells {1}. Split them; each row needs its own.',
  'column-missing':
    'Sheet "{0}" has no column "{1}" ("{2}"). Name it in the first row, or say which it is.',
  // {4} is the heading in German.
  'column-twice': 'Sheet "{0}", columns {1} and {2}, would both be "{3}". Leave one out.',
  'columns-unknown':
    'Sheet "{0}" has columns that are not known: {1}. Say what they are, or that they may be left out.',
  'columns-unknown-more':
    'Sheet "{0}" has columns that are not known: {1}, and {2} more. Say what they are, or that they may be left out.',
  'too-many-rows': 'Sheet "{0}" has more than {1} rows.',
} as const satisfies Readonly<Record<string, string>>;

export type SheetProblemCode = keyof typeof SHEET_PROBLEMS;
export const SHEET_PROBLEM_CODES = Object.keys(SHEET_PROBLEMS) as SheetProblemCode[];

export interface SheetProblem {
  readonly code: SheetProblemCode;
  readonly values: readonly string[];
  /** The English sentence. */
  readonly sentence: string;
}

export function sheetProblem(
  code: SheetProblemCode,
  ...values: readonly (string | number)[]
): SheetProblem {
  const texts = values.map(String);
  return { code, values: texts, sentence: filled(SHEET_PROBLEMS[code], texts) };
}
