import { refuseCatalogue } from '../catalogue.refusals.js';
import type { FieldProblem } from '../domain/field-problem.js';

/** Refuses figures that do not fit together, naming each. */
export function refuseMisfits(problems: readonly FieldProblem[]): void {
  if (problems.length === 0) return;
  const detail = problems.map(({ field, message }) => `${field} ${message}`).join('; ');
  throw refuseCatalogue('figures_do_not_fit', `${detail}.`, problems);
}
