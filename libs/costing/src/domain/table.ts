import { type CsvCell, toCsv } from './csv.js';

/** What the cells of a column are; decimals come as text, and become numbers in a workbook. */
export type ColumnKind = 'text' | 'whole' | 'decimal' | 'money' | 'share' | 'date';

export interface Column {
  readonly name: string;
  readonly kind: ColumnKind;
}

/** A report as a table: what goes into a file for a spreadsheet or onto paper. */
export interface Table {
  /** Name of the file, without its ending. */
  readonly name: string;
  readonly title: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly CsvCell[])[];
}

export function column(name: string, kind: ColumnKind = 'text'): Column {
  return { name, kind };
}

/** Columns of one kind. */
export function columns(kind: ColumnKind, ...names: readonly string[]): Column[] {
  return names.map((name) => column(name, kind));
}

export function tableCsv(table: Table): string {
  return toCsv(
    table.columns.map((each) => each.name),
    table.rows,
  );
}
