import type { Visit } from '../api/get-visit.js';
import type { Charge } from './api/list-charges.js';
import type { Fee } from './api/list-fees.js';

export interface ChargesOfVisit {
  readonly visit: Visit;
  /** The latest first, with those that were replaced. */
  readonly records: readonly Charge[];
  readonly fees: readonly Fee[];
}
