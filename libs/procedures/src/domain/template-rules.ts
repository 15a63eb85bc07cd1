import { isWholeUnit, quantity } from '#lib/measure';
import { type Driver, isVisitDriver } from './template.js';

export interface LineFigures {
  readonly consumableId: string | null;
  readonly driver: Driver;
  readonly placed: string;
  readonly dispensed: string;
  readonly sharesDose?: boolean;
}

export interface LineProblem {
  readonly field: string;
  readonly message: string;
}

const ONE = 1_000_000n;

/**
 * What of a template's lines does not fit together, named `lines[i].field`. The unit is that of a
 * consumable's stock; undefined when it is not known.
 */
export function lineProblems(
  lines: readonly LineFigures[],
  unitOf: (consumableId: string) => string | undefined,
): LineProblem[] {
  return lines.flatMap((line, i) =>
    problemsOf(line, unitOf).map(({ field, message }) => ({
      field: `lines[${i}].${field}`,
      message,
    })),
  );
}

function problemsOf(
  line: LineFigures,
  unitOf: (consumableId: string) => string | undefined,
): LineProblem[] {
  const problems: LineProblem[] = [];
  if (line.consumableId === null && isVisitDriver(line.driver)) {
    const message = 'is shared by the visit, and shades are chosen for one restoration';
    problems.push({ field: 'driver', message });
  }
  if (line.sharesDose && isVisitDriver(line.driver)) {
    const message = 'does not fit what is counted by the visit: that is used once anyway';
    problems.push({ field: 'sharesDose', message });
  }
  if (quantity(line.placed) > quantity(line.dispensed)) {
    problems.push({ field: 'placed', message: 'must not be more than what is dispensed' });
  }
  const unit = line.consumableId === null ? undefined : unitOf(line.consumableId);
  if (unit === undefined || !isWholeUnit(unit)) return problems;
  if (line.sharesDose) {
    const message = `does not fit whole ${unit}s: count them by the visit, the region or the tooth`;
    problems.push({ field: 'sharesDose', message });
  }
  for (const field of ['placed', 'dispensed'] as const) {
    if (quantity(line[field]) % ONE === 0n) continue;
    const message = `must be a whole number, because stock is kept in whole ${unit}s`;
    problems.push({ field, message });
  }
  return problems;
}
