import type { FieldError, IsoDate } from '#lib/platform';
import { blockedOn, type Candidate } from '#lib/stock';

export interface ScannedEntry {
  readonly lotId: string;
  readonly holdingId?: string | null;
}

/** What the book knows of a scanned lot, whether or not any of it is left. */
export interface ScannedLot {
  readonly id: string;
  readonly consumable_id: string;
  readonly status: string;
  readonly expires_on: IsoDate | null;
  readonly received_on: IsoDate | null;
}

interface Context {
  readonly day: IsoDate;
  readonly lots: ReadonlyMap<string, ScannedLot>;
  readonly candidates: readonly Candidate[];
  /** Consumables of which this visit takes something. */
  readonly used: ReadonlySet<string>;
}

export type ScanProblem =
  | { readonly code: 'unknown_lot' | 'unknown_holding'; readonly field: string }
  | { readonly code: 'lot_not_needed' | 'lot_not_usable'; readonly error: FieldError };

/**
 * Rule 4 for what was scanned: a lot or container that may not be used on the day is refused, never
 * silently replaced by another. A good lot of which the book has nothing left is no problem here: it
 * becomes a shortfall.
 */
export function checkScanned(
  entries: readonly ScannedEntry[],
  context: Context,
): ScanProblem | undefined {
  for (const [i, entry] of entries.entries()) {
    const problem = checkOne(entry, `scanned[${i}]`, context);
    if (problem) return problem;
  }
  return undefined;
}

function checkOne(entry: ScannedEntry, path: string, context: Context): ScanProblem | undefined {
  const lot = context.lots.get(entry.lotId);
  if (!lot) return { code: 'unknown_lot', field: `${path}.lotId` };
  const of = context.candidates.filter((c) => c.lotId === entry.lotId);
  const holding = of.find((c) => c.holdingId === entry.holdingId);
  if (entry.holdingId && !holding) {
    return { code: 'unknown_holding', field: `${path}.holdingId` };
  }
  if (!context.used.has(lot.consumable_id)) {
    const message = 'is a lot of something that this visit does not use';
    return { code: 'lot_not_needed', error: { field: `${path}.lotId`, message } };
  }
  const why = whyNotLot(lot, context.day) ?? (holding && blockedOn(holding, context.day));
  const late = of.find((c) => blockedOn(c, context.day) === 'recalled');
  if (why === undefined && !late) return undefined;
  const field = holding && whyNotLot(lot, context.day) === undefined ? 'holdingId' : 'lotId';
  const message = `is ${why ?? 'recalled'} on ${context.day} and may not be used`;
  return { code: 'lot_not_usable', error: { field: `${path}.${field}`, message } };
}

function whyNotLot(lot: ScannedLot, day: IsoDate): string | undefined {
  if (lot.status !== 'released') return lot.status;
  if (lot.expires_on !== null && lot.expires_on < day) return 'expired';
  return lot.received_on === null || lot.received_on > day ? 'not yet received' : undefined;
}
