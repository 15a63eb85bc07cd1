import { addOpenDays, type EpochDay } from './forecast/calendar.js';
import { arrivesBy } from './forecast/lead-time.js';
import type { SupplierLead } from './planning/supplier-lead.js';

/** Goods are said to be here by the day by which this share of deliveries is; our choice, no source. */
export const ARRIVED_SHARE = 0.8;

/** As soon as so little of a lead time is the stated one, at four orders that came, it is believed. */
const MOST_ASSUMED = 0.5;

/** The day by which goods ordered on a day are here, and how that is known. */
export interface ArrivalDay {
  readonly day: EpochDay;
  /** Orders of the supplier from which it was seen; null: it is the stated time. */
  readonly ordersSeen: number | null;
}

/**
 * The day by which four deliveries in five are here, where the supplier's own orders say enough, in its
 * working days; and otherwise the stated time.
 */
export function arrivalDay(lead: SupplierLead, orderedOn: EpochDay): ArrivalDay {
  const { calendar, workingDays, statedDays } = lead;
  if (lead.assumed > MOST_ASSUMED) {
    return { day: addOpenDays(calendar, orderedOn, statedDays), ordersSeen: null };
  }
  const day = arrivesBy(workingDays, calendar, orderedOn, ARRIVED_SHARE);
  return { day, ordersSeen: lead.orders };
}
