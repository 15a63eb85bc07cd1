export type CsvCell = string | number | null;

const PLAIN_NUMBER = /^-?\d+(\.\d+)?$/;
const FORMULA_START = /^[=+\-@\t\r]/;
const NEEDS_QUOTES = /[",\r\n]/;

/**
 * A table as RFC 4180 has it: a header row, CRLF after each row. A text that a spreadsheet would
 * take for a formula is given a leading apostrophe; a negative number stays a number.
 */
export function toCsv(header: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return [header, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: CsvCell): string {
  if (value === null) return '';
  const text = String(value);
  const harmless = FORMULA_START.test(text) && !PLAIN_NUMBER.test(text) ? `'${text}` : text;
  return NEEDS_QUOTES.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
