import type { ToothNotation } from '#lib/dentition';
import { refuse } from '#lib/platform';
import {
  type RestorationInput,
  type RestorationProblem,
  readRestoration,
  type TemplateOf,
} from '../domain/read-restoration.js';
import type { PlannedRestoration } from '../domain/template.js';
import { refuseProcedure } from '../procedures.refusals.js';

/** Reads all restorations of a request and refuses it with every field that is wrong. */
export function readRestorations(
  inputs: readonly RestorationInput[],
  notation: ToothNotation,
  templateOf: TemplateOf,
): PlannedRestoration[] {
  const restorations: PlannedRestoration[] = [];
  const problems: RestorationProblem[] = [];
  inputs.forEach((input, index) => {
    const read = readRestoration(input, index, notation, templateOf);
    if (read.ok) restorations.push(read.restoration);
    else problems.push(...read.problems);
  });
  if (problems.length === 0) return restorations;
  const fields = problems.map(({ field, message }) => ({ field, message }));
  const [first] = fields;
  const detail = first ? `${first.field} ${first.message}.` : '';
  throw problems.some((problem) => problem.unknown)
    ? refuse('unknown_reference', detail, fields)
    : refuseProcedure('restoration_does_not_fit', detail, fields);
}
