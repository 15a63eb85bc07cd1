import type { Column } from './column.js';
import type { Matched } from './match-columns.js';
import { type SheetProblem, sheetProblem } from './problems.js';
import { LIMITS, type RawSheet } from './sheet.js';

/** Why a sheet cannot be read as a list yet, each in a sentence that names what to do. */
export function sheetProblems(
  sheet: RawSheet,
  matched: Matched,
  asked: { readonly known: readonly Column[]; readonly ignoreUnknown: boolean },
): SheetProblem[] {
  const { name, rows } = sheet;
  const problems = sheet.merged.slice(0, 5).map((range) => sheetProblem('merged', name, range));
  const headingOf = (key: string) =>
    asked.known.find((column) => column.key === key)?.heading ?? { en: key, de: key };
  for (const key of matched.missing) {
    const { en, de } = headingOf(key);
    problems.push(sheetProblem('column-missing', name, en, de));
  }
  for (const [one, other] of matched.twice) {
    const { en, de } = headingOf(one.as ?? '');
    problems.push(sheetProblem('column-twice', name, one.letters, other.letters, en, de));
  }
  if (!asked.ignoreUnknown && matched.unknown.length > 0) {
    const shown = matched.unknown.slice(0, 8);
    const named = shown.map((c) => `${c.letters} ("${c.heading}")`).join(', ');
    const more = matched.unknown.length - shown.length;
    problems.push(
      more > 0
        ? sheetProblem('columns-unknown-more', name, named, more)
        : sheetProblem('columns-unknown', name, named),
    );
  }
  if (rows.length > LIMITS.rows) problems.push(sheetProblem('too-many-rows', name, LIMITS.rows));
  return problems;
}
