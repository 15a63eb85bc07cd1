import { type CsvCell, toCsv } from '#lib/platform';
import {
  type ColumnName,
  type FileLanguage,
  germanCell,
  germanColumn,
  germanTotal,
} from './table-words.js';

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
  /** Of title, facts, names and cells; English when left out. */
  readonly language?: FileLanguage;
}

export function column(name: ColumnName, kind: ColumnKind = 'text'): Column {
  return { name, kind };
}

/** Columns of one kind. */
export function columns(kind: ColumnKind, ...names: readonly ColumnName[]): Column[] {
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

interface German {
  readonly title: string;
  /** Where a column means something else here than elsewhere. */
  readonly columns?: Readonly<Record<string, string>>;
}

/**
 * A table in the language that was asked for. Its facts are in it already; names and what the book
 * says in cells are put into German here, numbers and what people wrote stay as they are.
 */
export function inLanguage(
  table: Table,
  language: FileLanguage | undefined,
  german: German,
): Table {
  if (language !== 'de') return table;
  const put = (row: readonly CsvCell[], words: (column: string, cell: string) => string) =>
    row.map((cell, i) => {
      const of = table.columns[i];
      return typeof cell === 'string' && of?.kind === 'text' ? words(of.name, cell) : cell;
    });
  return {
    ...table,
    language,
    title: german.title,
    columns: table.columns.map((each) => ({
      ...each,
      name: german.columns?.[each.name] ?? germanColumn(each.name),
    })),
    rows: table.rows.map((row) => put(row, germanCell)),
    ...(table.totals === undefined ? {} : { totals: put(table.totals, germanTotal) }),
  };
}
