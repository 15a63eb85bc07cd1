import { type CsvCell, toCsv } from './csv.js';

/**
 * What the cells of a column are; decimals come as text, and become numbers in a workbook. 'money' is
 * an amount, shown to the cent on paper; 'price' is that of one stock unit, shown with all its digits.
 */
export type ColumnKind = 'text' | 'whole' | 'decimal' | 'money' | 'price' | 'share' | 'date';

export interface Column {
  readonly name: string;
  readonly kind: ColumnKind;
  /** Only in files that are read by programs: there is no room for it across a page. */
  readonly offPaper?: boolean;
}

/** A report as a table: what goes into a file for a spreadsheet or onto paper. */
export interface Table {
  /** Name of the file, without its ending. */
  readonly name: string;
  readonly title: string;
  /** What it was made for, in sentences: period, choice. */
  readonly facts?: readonly string[];
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly CsvCell[])[];
  /** On paper below the rows. A spreadsheet adds up by itself, and would count a total twice. */
  readonly totals?: readonly CsvCell[];
}

export function column(name: string, kind: ColumnKind = 'text'): Column {
  return { name, kind };
}

/** Columns of one kind. */
export function columns(kind: ColumnKind, ...names: readonly string[]): Column[] {
  return names.map((name) => column(name, kind));
}

/** The same columns, but not on paper. */
export function offPaper(list: readonly Column[]): Column[] {
  return list.map((each) => ({ ...each, offPaper: true }));
}

export function tableCsv(table: Table): string {
  return toCsv(
    table.columns.map((each) => each.name),
    table.rows,
  );
}
