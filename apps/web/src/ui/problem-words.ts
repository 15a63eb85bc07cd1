import { ProblemError, Unreachable } from '../api/problem.js';
import type { Text } from '../text/text.js';

/** What went wrong, in a sentence for a person; undefined for a bug of ours. */
export function problemWords(t: Text, error: unknown): string | undefined {
  if (error instanceof Unreachable) return t.problems.unreachable;
  if (!(error instanceof ProblemError)) return undefined;
  const { code, detail } = error.problem;
  const known: Readonly<Record<string, string>> = t.problems.codes;
  return known[code] ?? detail;
}
