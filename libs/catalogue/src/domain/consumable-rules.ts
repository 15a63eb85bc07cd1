import type { Quantity } from '#lib/measure';
import type { FieldProblem } from './field-problem.js';

export interface ReorderFigures {
  readonly reorderAt: Quantity | null;
  readonly reorderUpTo: Quantity | null;
}

/** What of a consumable's reorder figures does not fit together. */
export function reorderProblems({ reorderAt, reorderUpTo }: ReorderFigures): FieldProblem[] {
  if (reorderUpTo === null) return [];
  if (reorderAt === null) {
    return [{ field: 'reorderAt', message: 'must be given together with reorderUpTo' }];
  }
  if (reorderUpTo >= reorderAt) return [];
  return [{ field: 'reorderUpTo', message: 'must not be below reorderAt' }];
}
