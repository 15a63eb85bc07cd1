import type { FieldError } from '#lib/platform';
import { FATES, type RowFate } from '../domain/fate.js';
import { columnsOf, type Kind } from '../domain/kinds.js';
import type { CheckedImportDto, CheckedSheetDto, RowFateDto } from '../http/imports.dto.js';
import type { Outcome, SheetOutcome } from './bring-in.js';

/** The answer of a check, with the first rows of each fate. */
export function checkedView(outcome: Outcome, shown: number): CheckedImportDto {
  return {
    ready: outcome.ready,
    sheetsLeftOut: [...outcome.leftOut],
    sheets: outcome.sheets.map((sheet) => sheetView(sheet, shown)),
  };
}

function sheetView(outcome: SheetOutcome, shown: number): CheckedSheetDto {
  const { kind, sheet, matched, problems, counts, fates } = outcome;
  return {
    kind,
    sheet,
    problems: problems.map((each) => each.sentence),
    causes: problems.map(({ code, values }) => ({ code, values: [...values] })),
    columns: matched.columns.map(({ letters, heading, as, leftOut, sample }) => ({
      column: letters,
      heading,
      as,
      leftOut,
      sample,
    })),
    missing: [...matched.missing],
    newRows: counts.new,
    changedRows: counts.changed,
    sameRows: counts.same,
    errorRows: counts.error,
    rows: FATES.flatMap((fate) => fates.filter((each) => each.fate === fate).slice(0, shown))
      .sort((a, b) => a.row - b.row)
      .map((fate) => rowView(outcome, fate)),
  };
}

function rowView(outcome: SheetOutcome, fate: RowFate): RowFateDto {
  return {
    row: fate.row,
    fate: fate.fate,
    title: fate.title,
    changes: fate.changes.map(({ column, from, to }) => ({
      column,
      heading: headingOf(outcome.kind, column),
      from,
      to,
    })),
    problems: fate.problems.map(({ column, code, values, message }) => {
      const letters = column === null ? null : lettersOf(outcome, column);
      const heading = column === null ? null : headingOf(outcome.kind, column);
      return {
        key: column,
        column: letters,
        heading,
        code,
        values: [...values],
        message,
        sentence: sentenceOf(outcome, fate.row, { column, message }),
      };
    }),
  };
}

function lettersOf({ matched }: SheetOutcome, key: string): string | null {
  return matched.columns.find((column) => column.as === key)?.letters ?? null;
}

function headingOf(kind: Kind, key: string): string {
  return columnsOf(kind).find((column) => column.key === key)?.heading.en ?? key;
}

function sentenceOf(
  outcome: SheetOutcome,
  row: number,
  { column, message }: { readonly column: string | null; readonly message: string },
): string {
  const at = `Sheet "${outcome.sheet}", row ${row}`;
  if (column === null) return `${at}: this row ${message}.`;
  const letters = lettersOf(outcome, column);
  const where = letters === null ? '' : `, column ${letters}`;
  return `${at}${where} (${headingOf(outcome.kind, column)}): this cell ${message}.`;
}

const MOST_FIELDS = 50;

/** What is wrong with a file that was to be brought in, as fields of a refusal. */
export function wrongFields(outcome: Outcome): FieldError[] {
  const fields = outcome.sheets.flatMap((sheet) => [
    ...sheet.problems.map(({ sentence }) => ({ field: sheet.sheet, message: sentence })),
    ...sheet.fates.flatMap((fate) =>
      fate.problems.map((each) => ({
        field: `${sheet.sheet}!${lettersOf(sheet, each.column ?? '') ?? ''}${fate.row}`,
        message: sentenceOf(sheet, fate.row, each),
      })),
    ),
  ]);
  return fields.slice(0, MOST_FIELDS);
}
