import type { ImportKind } from './kinds.js';
import { KIND_FACTS, KINDS, type Kind, kindOfSheet } from './kinds.js';
import { type RawFile, type RawSheet, UnreadableFile } from './sheet.js';

export interface ChosenSheet {
  readonly kind: Kind;
  readonly sheet: RawSheet;
}

export interface ChosenSheets {
  readonly chosen: readonly ChosenSheet[];
  /** Names of sheets that are not read. */
  readonly leftOut: readonly string[];
}

/** The sheet of explanations that comes with templates and exports. */
export const ABOUT_SHEET = { en: 'Explanations', de: 'Erläuterungen' } as const;

/**
 * Which sheets of a file are read as what: for one kind the sheet of its name, else the first; for the
 * whole book every sheet that has the name of a kind, in the order in which one needs the other.
 */
export function chooseSheets(file: RawFile, kind: ImportKind): ChosenSheets {
  const about: readonly string[] = Object.values(ABOUT_SHEET);
  const sheets = file.sheets.filter((sheet) => !about.includes(sheet.name));
  if (kind === 'book') return wholeBook(sheets);
  const sheet = sheets.find((each) => kindOfSheet(each.name) === kind) ?? sheets[0];
  if (!sheet) throw new UnreadableFile('The workbook has no sheet to read.');
  const leftOut = sheets.filter((each) => each !== sheet).map((each) => each.name);
  return { chosen: [{ kind, sheet }], leftOut };
}

function wholeBook(sheets: readonly RawSheet[]): ChosenSheets {
  const named = new Map<Kind, RawSheet>();
  const leftOut: string[] = [];
  for (const sheet of sheets) {
    const kind = kindOfSheet(sheet.name);
    if (kind && !named.has(kind)) named.set(kind, sheet);
    else leftOut.push(sheet.name);
  }
  if (named.size === 0) {
    const names = KINDS.map((each) => KIND_FACTS[each].sheet.en).join(', ');
    throw new UnreadableFile(`The workbook has none of the sheets of a book: ${names}.`);
  }
  const chosen = KINDS.flatMap((each) => {
    const sheet = named.get(each);
    return sheet ? [{ kind: each, sheet }] : [];
  });
  return { chosen, leftOut };
}
