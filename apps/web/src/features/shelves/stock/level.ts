import { isZero, quantity, subtract } from '#lib/measure';
import type { SummaryRow } from '../api/list-summary.js';

export interface Level {
  /** At or below the order point, counting what was used and is not in the book; null without one. */
  readonly low: boolean | null;
  readonly owes: boolean;
}

export function levelOf(row: Pick<SummaryRow, 'usable' | 'openShortfall' | 'reorderAt'>): Level {
  const owed = quantity(row.openShortfall);
  const position = subtract(quantity(row.usable), owed);
  const low = row.reorderAt === null ? null : position <= quantity(row.reorderAt);
  return { low, owes: !isZero(owed) };
}
