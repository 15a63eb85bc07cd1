import type { DraftLine } from './template-draft.js';

/** What one can do with the lines of a draft; a line goes by its key. */
export interface LineActions {
  readonly change: (key: string, part: Partial<DraftLine>) => void;
  readonly move: (key: string, by: 1 | -1) => void;
  readonly remove: (key: string) => void;
  readonly errorOf: (key: string, field: string) => string | undefined;
}
