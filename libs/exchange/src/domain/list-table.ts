import { type Column, EXAMPLE_REMARK, type Language, REMARK } from './column.js';
import { KIND_FACTS, type Kind } from './kinds.js';
import type { Values } from './plan/merge.js';

/** A list as it is written into a file: one sheet. */
export interface ListTable {
  readonly title: string;
  readonly columns: readonly Column[];
  readonly headings: readonly string[];
  readonly rows: readonly (readonly (string | null)[])[];
}

/** Rows of the book under the headings of a language. */
export function listTable(kind: Kind, rows: readonly Values[], language: Language): ListTable {
  const { columns, sheet } = KIND_FACTS[kind];
  return {
    title: sheet[language],
    columns,
    headings: columns.map((column) => column.heading[language]),
    rows: rows.map((values) => columns.map(({ key }) => values[key] ?? null)),
  };
}

/** An empty list to fill in, with one row that shows how and is not read. */
export function templateTable(kind: Kind, language: Language): ListTable {
  const { columns, sheet } = KIND_FACTS[kind];
  const all = [...columns, REMARK];
  const example = columns.map((column) => column.example ?? null);
  return {
    title: sheet[language],
    columns: all,
    headings: all.map((column) => column.heading[language]),
    rows: [[...example, EXAMPLE_REMARK[language]]],
  };
}

const RULES: Readonly<Record<Language, readonly string[]>> = {
  en: [
    'Values only: no formulas, no merged cells. Dates are date cells or text like 2026-12-31.',
    'Numbers have a decimal point, or a comma where it cannot be mistaken: 12,5 or 0,125, not 1,234.',
    'A blank cell leaves what the book has; what is in the book is known again by its name.',
    'Figures are planning aids. Instructions for use, local rules and licensed practice come first.',
  ],
  de: [
    'Nur Werte: keine Formeln, keine verbundenen Zellen. Datum als Datumszelle oder wie 2026-12-31.',
    'Zahlen mit Punkt, oder mit Komma, wo es eindeutig ist: 12,5 oder 0,125, nicht 1,234.',
    'Eine leere Zelle lässt, was im Buch steht; was im Buch steht, wird am Namen wiedererkannt.',
    'Zahlen sind Planungshilfen. Gebrauchsanweisung, örtliche Regeln und Berufsausübung gehen vor.',
  ],
};

/** The rows of the sheet of explanations: rules first, then each column of each kind. */
export function aboutRows(kinds: readonly Kind[], language: Language): string[][] {
  const needed = { en: 'needed', de: 'nötig' }[language];
  return [
    ...RULES[language].map((rule) => [rule]),
    ...kinds.flatMap((kind) => [
      [],
      [KIND_FACTS[kind].sheet[language]],
      ...KIND_FACTS[kind].columns.map((column) => [
        column.heading[language],
        column.required ? needed : '',
        column.help[language],
      ]),
    ]),
  ];
}
