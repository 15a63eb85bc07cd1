export type CsvCell = string | number | null;

export const CSV_SEPARATORS = [',', ';', '\t'] as const;
export type CsvSeparator = (typeof CSV_SEPARATORS)[number];

/** What a spreadsheet may take for a formula at the beginning of a cell, with quotes before it or not. */
const RISKY = /^'*[=+\-@\t\r]/;
const PLAIN_NUMBER = /^-?\d+(\.\d+)?$/;

/**
 * Text as a cell of a CSV file: a quote before what a spreadsheet would calculate. `unguarded` takes it
 * away again, whatever the text was.
 */
export function guarded(text: string): string {
  return RISKY.test(text) ? `'${text}` : text;
}

/** The text that was guarded. */
export function unguarded(cell: string): string {
  return cell.startsWith("'") && RISKY.test(cell) ? cell.slice(1) : cell;
}

/**
 * One line of CSV (RFC 4180), with its line ending. A cell is put in quotes where it has to be: also for
 * a separator that others use, and for blanks at its ends.
 */
export function csvLine(cells: readonly string[], separator: CsvSeparator = ','): string {
  const quoted = cells.map((cell) =>
    /[",;\r\n]/.test(cell) || cell.includes(separator) || cell.trim() !== cell
      ? `"${cell.replaceAll('"', '""')}"`
      : cell,
  );
  return `${quoted.join(separator)}\r\n`;
}

/**
 * A table as RFC 4180 has it: a header row, CRLF after each row. A text that a spreadsheet would
 * take for a formula is given a leading apostrophe; a negative number stays a number.
 */
export function toCsv(header: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return [header, ...rows].map((row) => csvLine(row.map(harmless))).join('');
}

function harmless(value: CsvCell): string {
  if (value === null) return '';
  const text = String(value);
  return PLAIN_NUMBER.test(text) ? text : guarded(text);
}
