import { type Quantity, quantity, type StockUnit } from '#lib/measure';
import type { FieldProblem } from './field-problem.js';
import { type Dispensing, packingProblems } from './presentation-rules.js';

/** A further consumable in a pack: a part of a kit, or of a mixed box. */
export interface PartInput {
  readonly consumableId: string;
  readonly dispensing: Dispensing;
  readonly containersPerPack: number;
  readonly contentPerContainer: string;
  /** Of the price of the pack, with at most four digits after the point. */
  readonly sharePercent: string;
}

/** So many parts a pack has at most, besides its own content. */
export const MOST_PARTS = 49;

const HUNDRED = quantity('100');

/** What the shares of the parts leave of the price for the pack's own content, in percent. */
export function ownShare(parts: readonly PartInput[]): Quantity {
  return parts.reduce((rest, part) => (rest - quantity(part.sharePercent)) as Quantity, HUNDRED);
}

/**
 * What is wrong with the parts of a pack, by fields like `parts[1].dispensing`; `parts` where their
 * shares are more than the whole price.
 */
export function partProblems(
  of: { readonly ownConsumableId: string; readonly unitOf: (id: string) => StockUnit },
  parts: readonly PartInput[],
): FieldProblem[] {
  const problems = parts.flatMap((part, i): FieldProblem[] => {
    const at = `parts[${i}]`;
    if (part.consumableId === of.ownConsumableId) {
      return [{ field: `${at}.consumableId`, message: "is the pack's own content already" }];
    }
    if (parts.findIndex((one) => one.consumableId === part.consumableId) !== i) {
      return [{ field: `${at}.consumableId`, message: 'is named twice' }];
    }
    const contentPerContainer = quantity(part.contentPerContainer);
    const stockUnit = of.unitOf(part.consumableId);
    return packingProblems({ stockUnit, dispensing: part.dispensing, contentPerContainer }).map(
      (one) => ({ ...one, field: `${at}.${one.field}` }),
    );
  });
  if (ownShare(parts) < 0n) {
    problems.push({ field: 'parts', message: 'have shares of more than 100 % together' });
  }
  return problems;
}
