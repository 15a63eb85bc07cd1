import { tooLong } from '../domain/csv.js';
import { fault } from '../domain/problems.js';
import {
  columnIndex,
  LIMITS,
  type RawCell,
  type RawRow,
  type RawSheet,
  tooManyColumns,
  tooManyRows,
  UnreadableFile,
} from '../domain/sheet.js';
import { dateCell, numberCell } from '../domain/spreadsheet-values.js';
import { type Attributes, type Contents, parsePart, readContents } from './xlsx-parts.js';
import { ZipParts } from './zip.js';

const MOST_SHEETS = 40;

/** The visible sheets of a workbook, values only. Formulas and merged cells are kept as what they are. */
export async function readXlsx(file: Buffer): Promise<RawSheet[]> {
  const zip = new ZipParts(file);
  const contents = await readContents(zip);
  if (contents.sheets.length > MOST_SHEETS) {
    throw new UnreadableFile(`The workbook has more than ${MOST_SHEETS} sheets.`);
  }
  const sheets: RawSheet[] = [];
  for (const { name, part } of contents.sheets) {
    const reader = new SheetReader(name, contents);
    await parsePart(zip, part, {
      open: (tag, attributes) => reader.open(tag, attributes),
      text: (text) => reader.text(text),
      close: (tag) => reader.close(tag),
    });
    sheets.push({ name, rows: reader.rows, merged: reader.merged });
  }
  return sheets;
}

interface OpenCell {
  readonly column: number;
  readonly type: string;
  readonly style: number;
  value: string;
  formula: boolean;
}

/** Collects the rows of one sheet while its XML passes by (ECMA-376 part 1, 18.3.1). */
class SheetReader {
  readonly rows: RawRow[] = [];
  readonly merged: string[] = [];
  private rowNumber = 0;
  private cells: (RawCell | undefined)[] = [];
  private nextColumn = 0;
  private cell: OpenCell | undefined;
  private inValue = false;
  private inPhonetic = false;

  constructor(
    private readonly name: string,
    private readonly contents: Contents,
  ) {}

  open(tag: string, attributes: Attributes): void {
    if (tag === 'row') this.openRow(attributes);
    else if (tag === 'c') this.openCell(attributes);
    else if (tag === 'f' && this.cell) this.cell.formula = true;
    else if (tag === 'v' || tag === 't') this.inValue = true;
    else if (tag === 'rPh') this.inPhonetic = true;
    else if (tag === 'mergeCell' && this.merged.length < 100) {
      this.merged.push(attributes.ref ?? '');
    }
  }

  text(text: string): void {
    const { cell } = this;
    if (!cell || !this.inValue || this.inPhonetic) return;
    if (cell.value.length <= LIMITS.cellCharacters) {
      cell.value += text.slice(0, LIMITS.cellCharacters + 1);
    }
  }

  close(tag: string): void {
    if (tag === 'v' || tag === 't') this.inValue = false;
    else if (tag === 'rPh') this.inPhonetic = false;
    else if (tag === 'c') this.closeCell();
    else if (tag === 'row') this.closeRow();
  }

  private openRow(attributes: Attributes): void {
    const said = Number(attributes.r ?? this.rowNumber + 1);
    this.rowNumber = Number.isInteger(said) && said > 0 ? said : this.rowNumber + 1;
    this.cells = [];
    this.nextColumn = 0;
  }

  private openCell(attributes: Attributes): void {
    const letters = /^[A-Z]+/.exec(attributes.r ?? '')?.[0];
    const column = letters === undefined ? this.nextColumn : columnIndex(letters);
    if (column === undefined) throw tooManyColumns(this.name, this.rowNumber);
    this.nextColumn = column + 1;
    const { t: type = 'n', s: style = '0' } = attributes;
    this.cell = { column, type, style: Number(style), value: '', formula: false };
  }

  private closeCell(): void {
    const { cell } = this;
    this.cell = undefined;
    if (!cell) return;
    const value = this.valueOf(cell);
    if (!value) return;
    if (cell.column >= LIMITS.columns) throw tooManyColumns(this.name, this.rowNumber);
    this.cells[cell.column] = value;
  }

  private closeRow(): void {
    if (this.cells.length === 0) return;
    if (this.rows.length > LIMITS.rows) throw tooManyRows(this.name);
    this.rows.push({ number: this.rowNumber, cells: this.cells });
  }

  private valueOf(cell: OpenCell): RawCell | undefined {
    if (cell.formula) {
      return { kind: 'wrong', fault: fault('formula-cell') };
    }
    if (cell.type === 's') return textCell(this.contents.sharedTexts[Number(cell.value)] ?? '');
    if (cell.type === 'inlineStr' || cell.type === 'str') return textCell(cell.value);
    if (cell.value === '') return undefined;
    if (cell.type === 'b') return { kind: 'flag', value: cell.value === '1' };
    if (cell.type === 'e') {
      return { kind: 'wrong', fault: fault('error-cell', cell.value.slice(0, 20)) };
    }
    if (cell.type === 'd') return { kind: 'date', text: cell.value.slice(0, 10) };
    if (this.contents.dateStyles[cell.style] === true) {
      return dateCell(cell.value, this.contents.date1904);
    }
    return numberCell(cell.value);
  }
}

function textCell(text: string): RawCell | undefined {
  const value = text.trim();
  if (value === '') return undefined;
  return value.length > LIMITS.cellCharacters ? tooLong() : { kind: 'text', text: value };
}
