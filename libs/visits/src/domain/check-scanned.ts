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
  const whyLot = whyNotLot(lot, of, context.day);
  const why = whyLot ?? (holding ? blockedOn(holding, context.day) : whyNone(of, context.day));
  if (why === undefined) return undefined;
  const field = holding && whyLot === undefined ? 'holdingId' : 'lotId';
  const message = `is ${why} on ${context.day} and may not be used`;
  return { code: 'lot_not_usable', error: { field: `${path}.${field}`, message } };
}

/** The stock was read under a lock, after the lot was: a hold placed in between shows only there. */
function whyNotLot(lot: ScannedLot, of: readonly Candidate[], day: IsoDate): string | undefined {
  const held = [lot.status, ...of.map((c) => c.lotStatus)].find((s) => s !== 'released');
  if (held !== undefined) return held;
  if (lot.expires_on !== null && lot.expires_on < day) return 'expired';
  return lot.received_on === null || lot.received_on > day ? 'not yet received' : undefined;
}

/**
 * Why a good lot may not be used after all: whatever is left of it was opened too long ago. What was
 * received or opened after the day only means that the book has nothing left of it on that day.
 */
function whyNone(of: readonly Candidate[], day: IsoDate): string | undefined {
  const reasons = of.map((c) => blockedOn(c, day));
  return reasons.length > 0 && reasons.every((why) => why === 'expired') ? 'expired' : undefined;
}
