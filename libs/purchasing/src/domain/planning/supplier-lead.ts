import { type EpochDay, epochDay, type WorkCalendar } from '../forecast/calendar.js';
import type { Lattice } from '../forecast/lattice.js';
import { type LinesOutcome, leadTime, observeShares, onCalendar } from '../forecast/lead-time.js';
import type { LeadTime } from '../policy/index.js';
import { type SupplyTerms, WEEKDAYS } from './planning-settings.js';

/** Lead times less likely than this, all together negligible, are not followed. */
const NEGLIGIBLE = 1e-6;

/** An order that was sent, with what came of each line so far. */
export type SentOrder = Omit<LinesOutcome, 'seenUntil'>;

/** How long a supplier takes, and how that is known. */
export interface SupplierLead {
  readonly calendar: WorkCalendar;
  /** Working days of the supplier until the goods are here. */
  readonly workingDays: Lattice;
  readonly statedDays: number;
  /** Whose word that is: the terms of the supplier or the setting of the practice. */
  readonly statedBy: 'supplier' | 'practice';
  /** Orders from which it was seen, and how many of them have not come in full. */
  readonly orders: number;
  readonly open: number;
  /** How much of it is the stated time rather than what was seen, 0 to 1. */
  readonly assumed: number;
}

/**
 * The lead time of a supplier from its own orders, mixed with the stated working days as long as
 * they are few; closed weekdays and closures of the supplier count as no working days.
 */
export function supplierLead(
  terms: SupplyTerms,
  statedByPractice: number,
  sent: readonly SentOrder[],
  today: EpochDay,
): SupplierLead {
  const calendar = supplierCalendar(terms);
  const observed = sent.map((order) => observeShares({ ...order, seenUntil: today }, calendar));
  const seen = observed.filter((shares) => shares.length > 0);
  const statedDays = terms.leadDays ?? statedByPractice;
  const { days, assumed } = leadTime(seen.flat(), { statedDays });
  return {
    calendar,
    workingDays: days,
    statedDays,
    statedBy: terms.leadDays === null ? 'practice' : 'supplier',
    orders: seen.length,
    open: seen.filter((shares) => shares.some((share) => !share.arrived)).length,
    assumed,
  };
}

export function supplierCalendar(terms: SupplyTerms): WorkCalendar {
  const closedDays = new Set<EpochDay>();
  for (const { firstDay, lastDay } of terms.closures) {
    for (let day = epochDay(firstDay); day <= epochDay(lastDay); day += 1) closedDays.add(day);
  }
  return { openWeekdays: WEEKDAYS.map((day) => terms.workingDays.includes(day)), closedDays };
}

/** Calendar days until an order placed on a day is here. */
export function leadFrom(lead: SupplierLead, orderedOn: EpochDay): LeadTime {
  return chancesOf(onCalendar(lead.workingDays, lead.calendar, orderedOn).weights);
}

/** Beyond all that was expected: tomorrow or later, each day as unlikely as the last. */
const LATE_DAYS = 40;

/**
 * Days from today until an order that is on its way is here: as its supplier usually takes, around
 * the day on which it is expected, and knowing that it has not come yet.
 */
export function arrivalOf(
  lead: SupplierLead,
  order: { readonly orderedOn: EpochDay; readonly expectedOn: EpochDay },
  today: EpochDay,
): LeadTime {
  const usual = onCalendar(lead.workingDays, lead.calendar, order.orderedOn);
  const shift = order.expectedOn - usual.quantile(0.5) - today;
  const length = Math.max(usual.weights.length + shift, 0);
  const weights = Float64Array.from({ length }, (_, day) => usual.weights[day - shift] ?? 0);
  const left = weights.reduce((sum, weight) => sum + weight, 0);
  if (left > NEGLIGIBLE) return chancesOf(weights.map((weight) => weight / left));
  return chancesOf(Float64Array.from({ length: LATE_DAYS }, (_, day) => day && 0.8 ** day / 4));
}

function chancesOf(weights: Float64Array): LeadTime {
  const chances = Array.from(weights, (probability, days) => ({ days, probability })).filter(
    (chance) => chance.probability > NEGLIGIBLE,
  );
  const total = chances.reduce((sum, chance) => sum + chance.probability, 0);
  return chances.map((chance) => ({ ...chance, probability: chance.probability / total }));
}
