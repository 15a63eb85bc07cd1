import {
  ChoiceField,
  IdField,
  OutChoice,
  OutFlag,
  OutId,
  OutInstant,
  OutList,
  OutText,
  OutTexts,
  OutWhole,
  TextField,
  WholeQuery,
} from '#lib/platform';
import { FATES, type Fate } from '../domain/fate.js';
import { IMPORT_KINDS, type ImportKind, KINDS, type Kind } from '../domain/kinds.js';
import {
  PROBLEM_CODES,
  type ProblemCode,
  SHEET_PROBLEM_CODES,
  type SheetProblemCode,
} from '../domain/problems.js';

class ImportQueryDto {
  @ChoiceField(IMPORT_KINDS, { description: 'What the file lists; book: a sheet for each kind.' })
  kind: ImportKind;

  @TextField(200, { optional: true, description: 'The name of the file.', example: 'list.csv' })
  name?: string;

  @TextField(4000, {
    optional: true,
    description:
      'What columns are, by their letters, where their headings do not say it; "-" leaves one out.',
    example: 'A:name,C:email,D:-',
  })
  columns?: string;

  @ChoiceField(['true', 'false'], {
    optional: true,
    description: 'Whether columns that are not known are left out.',
  })
  ignoreUnknown?: 'true' | 'false';
}

export class CheckImportQueryDto extends ImportQueryDto {
  @WholeQuery(0, 20_000, { description: 'How many rows of each fate are listed; 200 if not said.' })
  rows?: string;
}

export class RunImportQueryDto extends ImportQueryDto {
  @IdField({ optional: true, description: 'Made by the sender, to ask how far the import is.' })
  id?: string;
}

class ColumnMatchDto {
  @OutText({ example: 'A' })
  column: string;

  @OutText()
  heading: string;

  @OutText({ nullable: true, description: 'The key of the column it is taken for.' })
  as: string | null;

  @OutFlag({ description: 'Left out by hand.' })
  leftOut: boolean;

  @OutText({ nullable: true, description: 'The first value below.' })
  sample: string | null;
}

class CellChangeDto {
  @OutText()
  column: string;

  @OutText()
  heading: string;

  @OutText({ nullable: true })
  from: string | null;

  @OutText({ nullable: true })
  to: string | null;
}

class CellProblemDto {
  @OutText({ nullable: true, description: 'The key of the column; null: the row as a whole.' })
  key: string | null;

  @OutText({ nullable: true, description: 'Letters of the column; null: the row as a whole.' })
  column: string | null;

  @OutText({ nullable: true })
  heading: string | null;

  @OutChoice(PROBLEM_CODES, { description: 'What is wrong; stays the same whatever the words.' })
  code: ProblemCode;

  @OutTexts({ description: 'What the words are about, in the order of the code.' })
  values: string[];

  @OutText({ description: 'Goes on after "this cell", or "this row".' })
  message: string;

  @OutText({ description: 'The same with sheet, row and column.' })
  sentence: string;
}

export class RowFateDto {
  @OutWhole({ description: 'As the spreadsheet counts it.' })
  row: number;

  @OutChoice(FATES)
  fate: Fate;

  @OutText()
  title: string;

  @OutList(() => CellChangeDto)
  changes: CellChangeDto[];

  @OutList(() => CellProblemDto)
  problems: CellProblemDto[];
}

class SheetProblemDto {
  @OutChoice(SHEET_PROBLEM_CODES, { description: 'Stays the same whatever the words.' })
  code: SheetProblemCode;

  @OutTexts({ description: 'What the words are about, in the order of the code.' })
  values: string[];
}

export class CheckedSheetDto {
  @OutChoice(KINDS)
  kind: Kind;

  @OutText()
  sheet: string;

  @OutTexts({ description: 'Why the sheet cannot be read as a list yet.' })
  problems: string[];

  @OutList(() => SheetProblemDto, { description: 'The same, for words in another language.' })
  causes: SheetProblemDto[];

  @OutList(() => ColumnMatchDto)
  columns: ColumnMatchDto[];

  @OutTexts({ description: 'Keys of columns that are needed and not there.' })
  missing: string[];

  @OutWhole()
  newRows: number;

  @OutWhole()
  changedRows: number;

  @OutWhole()
  sameRows: number;

  @OutWhole()
  errorRows: number;

  @OutList(() => RowFateDto, { description: 'The first of each fate, in the order of the file.' })
  rows: RowFateDto[];
}

export class CheckedImportDto {
  @OutFlag({ description: 'Nothing stands in the way of bringing it in.' })
  ready: boolean;

  @OutTexts()
  sheetsLeftOut: string[];

  @OutList(() => CheckedSheetDto)
  sheets: CheckedSheetDto[];
}

const STATES = ['running', 'done', 'refused', 'broken off'] as const;

export class ImportRunDto {
  @OutId()
  id: string;

  @OutChoice(IMPORT_KINDS)
  kind: string;

  @OutText()
  fileName: string;

  @OutChoice(STATES)
  state: string;

  @OutWhole()
  rowsTotal: number;

  @OutWhole()
  rowsDone: number;

  @OutWhole()
  newRows: number;

  @OutWhole()
  changedRows: number;

  @OutWhole()
  sameRows: number;

  @OutText({ nullable: true, description: 'Why it was refused.' })
  reason: string | null;

  @OutText()
  importedBy: string;

  @OutInstant()
  startedAt: string;
}

export class ImportRunsDto {
  @OutList(() => ImportRunDto)
  items: ImportRunDto[];
}

class KindColumnDto {
  @OutText()
  key: string;

  @OutText()
  headingEn: string;

  @OutText()
  headingDe: string;

  @OutText()
  helpEn: string;

  @OutText()
  helpDe: string;

  @OutFlag()
  required: boolean;
}

class ImportKindDto {
  @OutChoice(KINDS)
  kind: Kind;

  @OutList(() => KindColumnDto)
  columns: KindColumnDto[];
}

export class ImportKindsDto {
  @OutList(() => ImportKindDto)
  items: ImportKindDto[];
}
