import type { IsoDate } from '#lib/platform';
import type { LineState, LockedDelivery } from '../db/delivery-lines.js';
import type { CorrectLineDto } from '../http/delivery-changes.dto.js';

/** What is being corrected: the delivery and its wrong line, and how it should have been. */
export interface Correction {
  readonly delivery: LockedDelivery;
  readonly wrong: LineState;
  readonly right: CorrectLineDto;
  readonly lotNumber: string | null;
  readonly expiresOn: IsoDate | null;
  readonly day: IsoDate;
}
