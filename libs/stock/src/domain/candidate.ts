import type { Money, Quantity } from '#lib/measure';

/** A calendar day as YYYY-MM-DD; such texts compare in the order of the days. */
export type Day = string;

export type Dispensing = 'multi-use' | 'single-dose' | 'by-piece';
export type LotStatus = 'released' | 'quarantined' | 'recalled';
export const LOT_STATUSES = ['released', 'quarantined', 'recalled'] as const;

/** How sure the book is that this lot was used. */
export type Sureness = 'scanned' | 'open container' | 'assumed' | 'not stated';

/** What a layer has given so far; see layerCost for what the next part of it costs. */
export interface LayerState {
  readonly layerId: string;
  readonly received: Quantity;
  readonly landedCost: Money;
  readonly outQuantity: Quantity;
  readonly outCost: Money;
}

/** A holding from which stock may be taken, with all that the choice depends on. */
export interface Candidate extends LayerState {
  readonly holdingId: string;
  readonly consumableId: string;
  readonly lotId: string;
  readonly lotNumber: string | null;
  readonly lotStatus: LotStatus;
  readonly locationId: string;
  /** Steps from the place of use up its parents; null for a scanned lot kept elsewhere. */
  readonly distance: number | null;
  readonly receivedOn: Day;
  readonly labelExpiry: Day | null;
  readonly openedOn: Day | null;
  /** Effective expiry of an opened container. */
  readonly useBy: Day | null;
  readonly dispensing: Dispensing;
  readonly content: Quantity;
  readonly onHand: Quantity;
}

export function effectiveExpiryOf(c: Candidate): Day | null {
  return c.openedOn === null ? c.labelExpiry : c.useBy;
}

export type Blocked = 'recalled' | 'quarantined' | 'expired' | 'not yet received' | 'opened later';

/** Rule 4, as of a day: why a candidate may not be issued, or undefined when it may. */
export function blockedOn(c: Candidate, day: Day): Blocked | undefined {
  if (c.lotStatus !== 'released') return c.lotStatus;
  const expiry = effectiveExpiryOf(c);
  if (expiry !== null && expiry < day) return 'expired';
  if (c.labelExpiry !== null && c.labelExpiry < day) return 'expired';
  if (c.receivedOn > day) return 'not yet received';
  if (c.openedOn !== null && c.openedOn > day) return 'opened later';
  return undefined;
}
