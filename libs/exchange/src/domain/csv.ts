import { CSV_SEPARATORS, type CsvSeparator, unguarded } from '#lib/platform';
import { fault } from './problems.js';
import {
  LIMITS,
  type RawCell,
  type RawRow,
  type RawSheet,
  tooManyColumns,
  tooManyRows,
  UnreadableFile,
} from './sheet.js';

/**
 * Reads CSV (RFC 4180) whose separator is a comma, a semicolon or a tab, whichever its first line has
 * most of outside quotes; a first line "sep=;" says it. Lines may end in CRLF, LF or CR.
 */
export function readCsv(text: string, name: string): RawSheet {
  const said = /^sep=([,;\t])(\r\n|\n|\r|$)/.exec(text);
  const separator = (said?.[1] as CsvSeparator | undefined) ?? separatorOf(text);
  const reader = new CsvReader(text, name, separator);
  if (said) reader.skip(said[0].length);
  return { name, rows: reader.rows(), merged: [] };
}

/** By the first line that holds anything. A list with one column has none, so that any mark is text. */
function separatorOf(text: string): CsvSeparator {
  const counts = new Map<string, number>(CSV_SEPARATORS.map((each) => [each, 0]));
  let quoted = false;
  let begun = false;
  for (const character of text) {
    if (character === '"') quoted = !quoted;
    if (quoted) continue;
    if (character === '\n' || character === '\r') {
      if (begun) break;
      continue;
    }
    begun = true;
    const count = counts.get(character);
    if (count !== undefined) counts.set(character, count + 1);
  }
  const best = Math.max(...counts.values());
  if (best === 0) return '\t';
  return CSV_SEPARATORS.find((each) => counts.get(each) === best) ?? ',';
}

class CsvReader {
  private at = 0;
  private line = 1;

  constructor(
    private readonly text: string,
    private readonly name: string,
    private readonly separator: string,
  ) {}

  skip(characters: number): void {
    this.at = characters;
    this.line = 2;
  }

  rows(): RawRow[] {
    const rows: RawRow[] = [];
    while (this.at < this.text.length) {
      const number = this.line;
      const cells = this.record(number);
      if (cells.every((cell) => cell === undefined)) continue;
      if (rows.length > LIMITS.rows) throw tooManyRows(this.name);
      rows.push({ number, cells });
    }
    return rows;
  }

  private record(number: number): (RawCell | undefined)[] {
    const cells: (RawCell | undefined)[] = [];
    for (;;) {
      if (cells.length === LIMITS.columns) throw tooManyColumns(this.name, number);
      cells.push(cellOf(this.text[this.at] === '"' ? this.quoted() : this.plain()));
      const next = this.text[this.at];
      if (next !== this.separator) {
        this.endLine(next);
        return cells;
      }
      this.at += 1;
    }
  }

  private plain(): string {
    const from = this.at;
    while (this.at < this.text.length) {
      const character = this.text[this.at];
      if (character === this.separator || character === '\n' || character === '\r') break;
      this.at += 1;
    }
    return this.text.slice(from, this.at);
  }

  private quoted(): string {
    const began = this.line;
    let value = '';
    for (;;) {
      const end = this.text.indexOf('"', this.at + 1);
      if (end < 0) {
        throw new UnreadableFile(
          `The quote that opens in line ${began} is never closed. Close it, or remove it.`,
        );
      }
      const part = this.text.slice(this.at + 1, end);
      this.line += part.split(/\r\n|\n|\r/).length - 1;
      value += part;
      this.at = end + 1;
      if (this.text[this.at] !== '"') break;
      value += '"';
    }
    const next = this.text[this.at];
    if (next !== undefined && next !== this.separator && next !== '\n' && next !== '\r') {
      throw new UnreadableFile(
        `Line ${this.line} goes on after a closing quote. Write a quote inside text twice.`,
      );
    }
    return value;
  }

  private endLine(next: string | undefined): void {
    if (next === undefined) return;
    this.at += next === '\r' && this.text[this.at + 1] === '\n' ? 2 : 1;
    this.line += 1;
  }
}

function cellOf(text: string): RawCell | undefined {
  const value = text.trim();
  if (value === '') return undefined;
  if (value.length > LIMITS.cellCharacters) return tooLong();
  if (value.startsWith('=')) {
    return { kind: 'wrong', fault: fault('formula-text') };
  }
  return { kind: 'text', text: unguarded(value) };
}

export function tooLong(): RawCell {
  return { kind: 'wrong', fault: fault('cell-too-long', LIMITS.cellCharacters) };
}
