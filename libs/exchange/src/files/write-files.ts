import { csvLine, guarded } from '#lib/platform';
import { ABOUT_SHEET } from '../domain/choose-sheets.js';
import type { Column, Language } from '../domain/column.js';
import type { Kind } from '../domain/kinds.js';
import { aboutRows, type ListTable } from '../domain/list-table.js';
import { type CellKind, writeXlsx } from './xlsx-write.js';

/** Begins the file so that spreadsheets know it is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF';

/** A list as CSV (RFC 4180, UTF-8). Text that a spreadsheet would calculate gets a quote before it. */
export function listCsv(table: ListTable): Buffer {
  const lines = table.rows.map((row) =>
    csvLine(row.map((cell, i) => cellOf(cell, table.columns[i]))),
  );
  return Buffer.from([BYTE_ORDER_MARK, csvLine(table.headings), ...lines].join(''), 'utf8');
}

function cellOf(cell: string | null, column: Column | undefined): string {
  if (cell === null) return '';
  return column?.type.is === 'text' ? guarded(cell) : cell;
}

const [NARROWEST, WIDEST] = [9, 44];

/** Lists as a workbook, each on its own sheet, and a sheet that explains the columns. */
export function listsXlsx(
  tables: readonly ListTable[],
  kinds: readonly Kind[],
  language: Language,
): Promise<Buffer> {
  const lists = tables.map((table) => ({
    name: table.title,
    kinds: table.columns.map(kindOf),
    widths: table.headings.map((_, i) => widthOf(table, i)),
    heading: true,
    rows: [table.headings, ...table.rows],
  }));
  const about = {
    name: ABOUT_SHEET[language],
    kinds: [],
    widths: [30, 9, 90],
    heading: false,
    rows: aboutRows(kinds, language),
  };
  return writeXlsx([...lists, about]);
}

function kindOf({ type }: Column): CellKind {
  return type.is === 'date' || type.is === 'decimal' || type.is === 'whole' ? type.is : 'text';
}

function widthOf({ headings, rows }: ListTable, at: number): number {
  const longest = rows
    .slice(0, 200)
    .reduce(
      (most, row) => Math.max(most, (row[at] ?? '').length + 2),
      (headings[at] ?? '').length + 3,
    );
  return Math.max(NARROWEST, Math.min(WIDEST, longest));
}
