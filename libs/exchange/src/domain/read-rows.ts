import { parseDecimal } from '#lib/measure';
import { isIsoDate } from '#lib/platform';
import type { Column } from './column.js';
import { cellWords, type Matched } from './match-columns.js';
import { type DecimalHabit, decimalHabit, readNumber } from './numbers.js';
import { type CellProblem, type Fault, fault } from './problems.js';
import type { RawCell, RawRow } from './sheet.js';

/** A row of a list: what stands in its columns, by key, as plain text. Blank cells are not there. */
export interface ListRow {
  readonly number: number;
  readonly values: ReadonlyMap<string, string>;
  readonly problems: readonly CellProblem[];
}

type Read =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly fault: Fault };

const wrong = (...said: Parameters<typeof fault>): Read => ({ ok: false, fault: fault(...said) });

/** Reads the rows below the heading, without those that are marked as examples. */
export function readRows(
  known: readonly Column[],
  matched: Matched,
  rows: readonly RawRow[],
): ListRow[] {
  const byKey = new Map(known.map((column) => [column.key, column]));
  const wanted = matched.columns.flatMap(({ index, as }) => {
    const column = as === null ? undefined : byKey.get(as);
    return column ? [{ index, column }] : [];
  });
  const remark = wanted.find(({ column }) => column.key === 'remark')?.index ?? -1;
  const kept = rows.filter((row) => !/^(example|beispiel)/i.test(cellWords(row.cells[remark])));
  const habit = decimalHabit(decimalTexts(wanted, kept));
  return kept.flatMap((row) => {
    const values = new Map<string, string>();
    const problems: CellProblem[] = [];
    for (const { index, column } of wanted) {
      const cell = row.cells[index];
      if (!cell || column.key === 'remark') continue;
      const read = readCell(cell, column, habit);
      if (read.ok) values.set(column.key, read.text);
      else problems.push({ column: column.key, ...read.fault });
    }
    const empty = values.size === 0 && problems.length === 0;
    return empty ? [] : [{ number: row.number, values, problems }];
  });
}

function* decimalTexts(
  wanted: readonly { readonly index: number; readonly column: Column }[],
  rows: readonly RawRow[],
): Generator<string> {
  for (const { index, column } of wanted) {
    if (column.type.is !== 'decimal') continue;
    for (const row of rows) {
      const cell = row.cells[index];
      if (cell?.kind === 'text') yield cell.text.trim();
    }
  }
}

function readCell(cell: RawCell, column: Column, habit: DecimalHabit): Read {
  if (cell.kind === 'wrong') return { ok: false, fault: cell.fault };
  const { type } = column;
  if (type.is === 'date') return readDay(cell);
  if (cell.kind === 'date') {
    return wrong('is-a-date', cell.text);
  }
  if (type.is === 'flag') return readFlag(cell);
  if (cell.kind === 'flag') return wrong('is-a-flag');
  if (type.is === 'text') return readText(cell.text, type.max);
  if (type.is === 'choice') return readChoice(cell.text, type.words);
  if (type.is === 'choices') return readChoices(cell.text, type.words);
  const number =
    cell.kind === 'number' ? { ok: true as const, text: cell.text } : readNumber(cell.text, habit);
  if (!number.ok) return number;
  return type.is === 'whole' ? readWhole(number.text, type) : readDecimal(number.text, type);
}

function readDay(cell: RawCell): Read {
  if (cell.kind === 'date' || cell.kind === 'text') {
    if (isIsoDate(cell.text)) return { ok: true, text: cell.text };
    const shape = /^\d{4}-\d{2}-\d{2}$/.test(cell.text);
    return shape ? wrong('no-such-day', cell.text) : wrong('date-as-text', cell.text.slice(0, 30));
  }
  return cell.kind === 'number' ? wrong('date-is-number', cell.text) : wrong('date-is-flag');
}

const YES = ['yes', 'y', 'true', '1', 'x', 'ja', 'j', 'wahr'];
const NO = ['no', 'n', 'false', '0', 'nein', 'falsch'];

function readFlag(cell: Exclude<RawCell, { kind: 'wrong' }>): Read {
  const word = cell.kind === 'flag' ? String(cell.value) : cell.text.toLowerCase();
  if (YES.includes(word)) return { ok: true, text: 'yes' };
  if (NO.includes(word)) return { ok: true, text: 'no' };
  return wrong('yes-or-no');
}

function readText(text: string, max: number): Read {
  if (text.length > max) return wrong('text-too-long', max);
  // Control characters but those of U+0080 to U+009F, which old encodings leave behind.
  if (/(?![\u0080-\u009f])\p{Cc}|\p{Surrogate}/u.test(text)) {
    return wrong('control-character');
  }
  return { ok: true, text };
}

function readChoice(text: string, words: Readonly<Record<string, readonly string[]>>): Read {
  const wanted = text.toLowerCase();
  for (const [value, others] of Object.entries(words)) {
    if (value.toLowerCase() === wanted || others.includes(wanted)) return { ok: true, text: value };
  }
  return wrong('not-a-choice', Object.keys(words).join(', '));
}

function readChoices(text: string, words: Readonly<Record<string, readonly string[]>>): Read {
  const said = text.split(/[;,]/).map((word) => word.trim());
  const found = new Set<string>();
  for (const word of said.filter((each) => each !== '')) {
    const read = readChoice(word, words);
    if (!read.ok) return wrong('not-all-choices', word.slice(0, 40), Object.keys(words).join(', '));
    found.add(read.text);
  }
  const kept = Object.keys(words).filter((value) => found.has(value));
  if (kept.length === 0) return wrong('not-a-choice', Object.keys(words).join(', '));
  return { ok: true, text: kept.join(SEVERAL) };
}

/** What stands between several choices in one cell. */
export const SEVERAL = '; ';

function readWhole(text: string, limits: { readonly min: number; readonly max: number }): Read {
  const value = Number(text);
  if (/^\d{1,9}$/.test(text) && value >= limits.min && value <= limits.max) {
    return { ok: true, text: String(value) };
  }
  return wrong('whole-number', limits.min, limits.max);
}

const SCALE = 6;

function readDecimal(
  text: string,
  limits: { readonly above?: string; readonly max: string; readonly scale?: number },
): Read {
  const parsed = parseDecimal(text, SCALE);
  const digits = limits.scale ?? SCALE;
  const short = shortest(text);
  if (!parsed.ok || (short.split('.')[1] ?? '').length > digits) {
    return wrong('too-many-decimals', digits);
  }
  const bound = (limit: string) => {
    const read = parseDecimal(limit, SCALE);
    if (!read.ok) throw new Error(`${limit} is no limit`);
    return read.value;
  };
  const tooLow =
    limits.above === undefined ? parsed.value < 0n : parsed.value <= bound(limits.above);
  if (tooLow) {
    return wrong(limits.above === undefined ? 'below-nothing' : 'not-more-than-nothing');
  }
  if (parsed.value > bound(limits.max)) return wrong('too-much', limits.max);
  return { ok: true, text: short };
}

/** In the shortest form, so that 72.00 and 72 are the same. */
export function shortest(text: string): string {
  const short = text.includes('.') ? text.replace(/0+$/, '').replace(/\.$/, '') : text;
  return short.replace(/^0+(?=\d)/, '');
}
