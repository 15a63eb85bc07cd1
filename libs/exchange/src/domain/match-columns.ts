import type { Column } from './column.js';
import { columnLetters, type RawCell, type RawRow } from './sheet.js';

/** A column of a sheet and what it was taken for. */
export interface MatchedColumn {
  /** From 0. */
  readonly index: number;
  readonly letters: string;
  readonly heading: string;
  /** The key of the column it is; null when it is none we know or was left out by hand. */
  readonly as: string | null;
  readonly leftOut: boolean;
  /** The first value below the heading, so that people recognise it. */
  readonly sample: string | null;
}

export interface Matched {
  readonly columns: readonly MatchedColumn[];
  /** Columns that were not recognised and not left out by hand. */
  readonly unknown: readonly MatchedColumn[];
  /** Keys of required columns that are not there. */
  readonly missing: readonly string[];
  /** Two columns that would be the same, each pair once. */
  readonly twice: readonly (readonly [MatchedColumn, MatchedColumn])[];
}

/** What a person said about columns: letters of the column -> key, or null to leave it out. */
export type ByHand = ReadonlyMap<string, string | null>;

/** A heading without case, blanks, marks and what stands in brackets: "Preis je Packung (EUR)". */
export function headingKey(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/\([^)]*\)|\[[^\]]*\]/g, '')
    .replace(/[^\p{L}\p{N}]/gu, '');
}

export function cellWords(cell: RawCell | undefined): string {
  if (!cell) return '';
  if (cell.kind === 'flag') return String(cell.value);
  return cell.kind === 'wrong' ? '' : cell.text;
}

/**
 * Finds out which column is which by the words of the first row, in English or German and their usual
 * variants. What a person said goes first. The heading's own word beats a variant of another.
 */
export function matchColumns(
  known: readonly Column[],
  header: RawRow,
  rows: readonly RawRow[],
  byHand: ByHand,
): Matched {
  const exact = new Map<string, string>();
  const variants = new Map<string, string>();
  for (const { key, heading, also = [] } of known) {
    for (const words of [heading.en, heading.de, key]) exact.set(headingKey(words), key);
    for (const words of also) {
      if (!variants.has(headingKey(words))) variants.set(headingKey(words), key);
    }
  }
  const own = new Set(header.cells.flatMap((cell) => exact.get(headingKey(cellWords(cell))) ?? []));
  const columns: MatchedColumn[] = [];
  const width = rows.reduce((most, row) => Math.max(most, row.cells.length), header.cells.length);
  for (let index = 0; index < width; index += 1) {
    const heading = cellWords(header.cells[index]);
    const first = rows.find((row) => row.cells[index]);
    if (heading === '' && !first) continue;
    const letters = columnLetters(index);
    const said = byHand.get(letters);
    const name = headingKey(heading);
    const variant = variants.get(name);
    const found = exact.get(name) ?? (variant !== undefined && !own.has(variant) ? variant : null);
    columns.push({
      index,
      letters,
      heading,
      as: said === undefined ? (name === '' ? null : found) : said,
      leftOut: said === null,
      sample: cellWords(first?.cells[index]).slice(0, 60) || null,
    });
  }
  return judged(known, columns);
}

function judged(known: readonly Column[], columns: readonly MatchedColumn[]): Matched {
  const taken = new Map<string, MatchedColumn>();
  const twice: [MatchedColumn, MatchedColumn][] = [];
  for (const column of columns) {
    if (column.as === null) continue;
    const other = taken.get(column.as);
    if (other) twice.push([other, column]);
    else taken.set(column.as, column);
  }
  return {
    columns,
    unknown: columns.filter((column) => column.as === null && !column.leftOut),
    missing: known.flatMap(({ key, required }) => (required && !taken.has(key) ? [key] : [])),
    twice,
  };
}
