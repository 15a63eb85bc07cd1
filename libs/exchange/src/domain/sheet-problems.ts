import type { Column } from './column.js';
import type { Matched } from './match-columns.js';
import { LIMITS, type RawSheet } from './sheet.js';

/** Why a sheet cannot be read as a list yet, each in a sentence that names what to do. */
export function sheetProblems(
  sheet: RawSheet,
  matched: Matched,
  asked: { readonly known: readonly Column[]; readonly ignoreUnknown: boolean },
): string[] {
  const at = `Sheet "${sheet.name}"`;
  const problems = sheet.merged
    .slice(0, 5)
    .map((range) => `${at} has the merged cells ${range}. Split them; each row needs its own.`);
  const headingOf = (key: string) => asked.known.find((column) => column.key === key)?.heading;
  for (const key of matched.missing) {
    const heading = headingOf(key);
    problems.push(
      `${at} has no column "${heading?.en}" ("${heading?.de}"). Name it in the first row, or say which it is.`,
    );
  }
  for (const [one, other] of matched.twice) {
    const name = headingOf(one.as ?? '')?.en ?? '';
    problems.push(
      `${at}, columns ${one.letters} and ${other.letters}, would both be "${name}". Leave one out.`,
    );
  }
  if (!asked.ignoreUnknown && matched.unknown.length > 0) {
    const named = matched.unknown.slice(0, 8).map((c) => `${c.letters} ("${c.heading}")`);
    const more = matched.unknown.length > 8 ? `, and ${matched.unknown.length - 8} more` : '';
    problems.push(
      `${at} has columns that are not known: ${named.join(', ')}${more}. Say what they are, or that they may be left out.`,
    );
  }
  if (sheet.rows.length > LIMITS.rows) problems.push(`${at} has more than ${LIMITS.rows} rows.`);
  return problems;
}
