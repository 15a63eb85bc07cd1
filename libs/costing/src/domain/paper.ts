import {
  formatMoney,
  formatQuantity,
  money,
  moneyFromMicro,
  type Quantity,
  quantity,
  quantityFromMicro,
  roundTo,
} from '#lib/measure';
import type { CsvCell } from '#lib/platform';
import type { Column, ColumnKind, Table } from './table.js';
import { FILE_WORDS, type FileLanguage, germanColumn } from './table-words.js';

/** A table as it is printed: every cell is the text that stands there. */
export interface Paper {
  readonly title: string;
  readonly facts: readonly string[];
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
  readonly totals: readonly string[] | undefined;
  readonly language: FileLanguage;
}

const CURRENCY: readonly string[] = ['currency', germanColumn('currency')];
const DECIMAL = /^-?\d+(\.\d{1,6})?$/;

/** Without what only programs want, and the currency said once, above. */
export function paperOf(table: Table): Paper {
  const { language = 'en' } = table;
  const at = table.columns.findIndex(({ name }) => CURRENCY.includes(name));
  const currencies = new Set(table.rows.map((row) => row[at]));
  const [currency] = currencies;
  const said = at >= 0 && currencies.size === 1;
  const kept = table.columns.flatMap((column, i) =>
    column.offPaper || (said && i === at) ? [] : [i],
  );
  const only = <T>(list: readonly T[]) => kept.flatMap((i) => list.slice(i, i + 1));
  const columns = only(table.columns).map((each) => ({ ...each, name: capital(each.name) }));
  const printed = (row: readonly CsvCell[]) =>
    only(row).map((cell, i) => cellText(cell, columns[i]?.kind ?? 'text', language));
  return {
    title: table.title,
    facts: [
      ...(table.facts ?? []),
      ...(said ? [FILE_WORDS[language].amountsIn(String(currency))] : []),
    ],
    columns,
    rows: table.rows.map(printed),
    totals: table.totals && printed(table.totals),
    language,
  };
}

function capital(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}

const HELD = /^-?\d{1,12}(\.\d{1,6})?$/;

/** '1234.5' of an amount -> '1,234.50'; a cell that is no decimal stays as it is. */
export function cellText(cell: CsvCell, kind: ColumnKind, language: FileLanguage = 'en'): string {
  const text = String(cell ?? '');
  if (kind === 'date' && language === 'de') return germanDay(text);
  if (kind === 'text' || kind === 'date' || !DECIMAL.test(text)) return text;
  const english = decimalText(text, kind);
  if (language === 'en') return english;
  return english.replace(/[.,]/g, (mark) => (mark === '.' ? ',' : '.'));
}

function decimalText(text: string, kind: ColumnKind): string {
  // More than any book holds: nothing is rounded away, the sender reads what there is.
  if (!HELD.test(text)) return grouped(text);
  if (kind === 'money') return grouped(formatMoney(money(text), 2));
  if (kind === 'price') return grouped(formatMoney(money(text)));
  if (kind === 'share') return `${percent(text)} %`;
  return grouped(formatQuantity(shortened(quantity(text))));
}

/** '2026-05-04' -> '04.05.2026'. */
export function germanDay(iso: string): string {
  return iso.replace(/^(\d{4})-(\d{2})-(\d{2})$/, '$3.$2.$1');
}

/** From 0.01 on three digits after the point are enough on paper. */
function shortened(value: Quantity): Quantity {
  const size = value < 0n ? -value : value;
  return size < 10_000n ? value : quantityFromMicro(roundTo(value, 1000n, 'half-up'));
}

/** '0.3412' -> '34.1'. */
function percent(share: string): string {
  return formatMoney(moneyFromMicro(money(share) * 100n), 1);
}

function grouped(decimal: string): string {
  const [whole = '', fraction] = decimal.split('.');
  const thousands = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return fraction === undefined ? thousands : `${thousands}.${fraction}`;
}
