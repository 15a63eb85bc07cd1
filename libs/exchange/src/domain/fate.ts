import type { CellProblem } from './problems.js';

export const FATES = ['new', 'changed', 'same', 'error'] as const;
export type Fate = (typeof FATES)[number];

export interface Change {
  /** The key of the column. */
  readonly column: string;
  readonly from: string | null;
  readonly to: string | null;
}

/** What becomes of a row. */
export interface RowFate {
  readonly row: number;
  readonly fate: Fate;
  /** What it is about, in words that people know it by. */
  readonly title: string;
  readonly changes: readonly Change[];
  readonly problems: readonly CellProblem[];
}

export function failed(row: number, title: string, problems: readonly CellProblem[]): RowFate {
  return { row, fate: 'error', title, changes: [], problems };
}
