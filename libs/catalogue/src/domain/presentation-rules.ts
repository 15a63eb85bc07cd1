import { isWholeUnit, type Quantity, type StockUnit } from '#lib/measure';
import type { FieldProblem } from './field-problem.js';

/**
 * How a container is used up: multi-use is opened once and used many times (syringe, bottle);
 * single-dose is charged whole once opened (capsule, cartridge); by-piece is taken piece by piece
 * from a box that is not followed itself (wedges, strips).
 */
export const DISPENSINGS = ['multi-use', 'single-dose', 'by-piece'] as const;
export type Dispensing = (typeof DISPENSINGS)[number];

export interface Packing {
  readonly stockUnit: StockUnit;
  readonly dispensing: Dispensing;
  readonly contentPerContainer: Quantity;
}

const ONE = 1_000_000n;

/** What of a presentation does not fit the unit in which its consumable is kept. */
export function packingProblems(packing: Packing): FieldProblem[] {
  const { stockUnit, dispensing, contentPerContainer } = packing;
  const problems: FieldProblem[] = [];
  if (isWholeUnit(stockUnit) && contentPerContainer % ONE !== 0n) {
    const message = `must be a whole number, because stock is kept in whole ${stockUnit}s`;
    problems.push({ field: 'contentPerContainer', message });
  }
  if (dispensing === 'by-piece' && !isWholeUnit(stockUnit)) {
    const message = `cannot be by-piece for a consumable that is kept in ${stockUnit}`;
    problems.push({ field: 'dispensing', message });
  }
  return problems;
}
