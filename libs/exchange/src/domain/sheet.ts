import type { Fault } from './problems.js';

/** What a cell of a file holds. What cannot be taken as a value says why. */
export type RawCell =
  | { readonly kind: 'text'; readonly text: string }
  /** A number as a spreadsheet stores it, written out: no exponent, a point, no grouping. */
  | { readonly kind: 'number'; readonly text: string }
  | { readonly kind: 'date'; readonly text: string }
  | { readonly kind: 'flag'; readonly value: boolean }
  | { readonly kind: 'wrong'; readonly fault: Fault };

export interface RawRow {
  /** As the spreadsheet or editor shows it: from 1, blank lines counted. */
  readonly number: number;
  /** By column, from 0; what is empty is undefined. */
  readonly cells: readonly (RawCell | undefined)[];
}

export interface RawSheet {
  readonly name: string;
  /** Rows that hold anything, in order. */
  readonly rows: readonly RawRow[];
  /** Ranges like "A3:B4" that were merged into one cell. */
  readonly merged: readonly string[];
}

export interface RawFile {
  readonly format: 'csv' | 'xlsx';
  readonly sheets: readonly RawSheet[];
}

/** How much of a file is read at all. What is larger is refused before memory is spent on it. */
export const LIMITS = {
  fileBytes: 10 * 1_048_576,
  rows: 20_000,
  columns: 100,
  cellCharacters: 2_000,
} as const;

/** A file that cannot be read at all; the sentence says what to do. */
export class UnreadableFile extends Error {
  override readonly name = 'UnreadableFile';
}

/** The letters over a column: 0 is A, 26 is AA. */
export function columnLetters(index: number): string {
  let left = index;
  let letters = '';
  do {
    letters = String.fromCharCode(65 + (left % 26)) + letters;
    left = Math.floor(left / 26) - 1;
  } while (left >= 0);
  return letters;
}

/** The column of letters like "AB", from 0; undefined when they are none. */
export function columnIndex(letters: string): number | undefined {
  if (!/^[A-Z]{1,4}$/.test(letters)) return undefined;
  let index = 0;
  for (const letter of letters) index = index * 26 + (letter.charCodeAt(0) - 64);
  return index - 1;
}

export const tooManyRows = (sheet: string) =>
  new UnreadableFile(
    `Sheet "${sheet}" has more than ${LIMITS.rows} rows. Split it into several files.`,
  );

export const tooManyColumns = (sheet: string, row: number) =>
  new UnreadableFile(
    `Sheet "${sheet}", row ${row}, has more than ${LIMITS.columns} columns. Delete what is not needed.`,
  );
