import {
  type EpochDay,
  nextOpenDay,
  openDaysBetween,
  type WorkCalendar,
} from '../forecast/calendar.js';

/** A line of an order with what came of it. */
export interface LineOutcome {
  /** Packs ordered, less those that will not come. */
  readonly packs: number;
  readonly parts: readonly { readonly day: EpochDay; readonly packs: number }[];
}

/** An order that was sent. */
export interface OrderOutcome {
  readonly orderedOn: EpochDay;
  /** The day it was promised or reckoned for; null when nobody said. */
  readonly expectedOn: EpochDay | null;
  readonly lines: readonly LineOutcome[];
}

/** How a supplier delivers, over the orders that are known. */
export interface SupplierRecord {
  readonly orders: number;
  /** Orders that are not complete yet. */
  readonly open: number;
  /** Working days of the supplier until an order was complete; null without any. */
  readonly medianDays: number | null;
  readonly p90Days: number | null;
  readonly fastestDays: number | null;
  readonly slowestDays: number | null;
  readonly complete: number;
  /** Complete with the first delivery. */
  readonly atOnce: number;
  /** Orders whose day has come or that are complete, and how many of them were complete by then. */
  readonly due: number;
  readonly inTime: number;
}

/** Orders of which nothing is to come any more say nothing. The calendar is the supplier's. */
export function supplierRecord(
  orders: readonly OrderOutcome[],
  calendar: WorkCalendar,
  today: EpochDay,
): SupplierRecord {
  const found = orders.filter((order) => order.lines.some((line) => line.packs > 0));
  const judged = found.map((order) => judge(order, calendar));
  const days = judged.flatMap(({ workingDays }) => workingDays ?? []).sort((a, b) => a - b);
  const due = judged.filter(
    ({ expectedOn, completeOn }) =>
      expectedOn !== null && (completeOn !== null || expectedOn < today),
  );
  const count = (test: (order: Judged) => boolean) => judged.filter(test).length;
  return {
    orders: found.length,
    open: count(({ completeOn }) => completeOn === null),
    medianDays: rank(days, 0.5),
    p90Days: rank(days, 0.9),
    fastestDays: days[0] ?? null,
    slowestDays: days.at(-1) ?? null,
    complete: days.length,
    atOnce: count(({ atOnce }) => atOnce),
    due: due.length,
    inTime: due.filter(
      ({ completeOn, expectedOn }) => completeOn !== null && completeOn <= (expectedOn ?? 0),
    ).length,
  };
}

interface Judged {
  readonly expectedOn: EpochDay | null;
  readonly completeOn: EpochDay | null;
  readonly workingDays: number | null;
  readonly atOnce: boolean;
}

function judge(order: OrderOutcome, calendar: WorkCalendar): Judged {
  const { orderedOn, expectedOn } = order;
  const completed = order.lines.filter((line) => line.packs > 0).map(completeOnOf);
  const arrivals = order.lines.flatMap((line) => line.parts.map((part) => part.day));
  if (completed.some((day) => day === null)) {
    return { expectedOn, completeOn: null, workingDays: null, atOnce: false };
  }
  const completeOn = Math.max(...completed.map((day) => day ?? 0));
  const from = nextOpenDay(calendar, orderedOn);
  return {
    expectedOn,
    completeOn,
    workingDays: openDaysBetween(calendar, from, completeOn),
    atOnce: arrivals.every((day) => day >= completeOn),
  };
}

/** The day on which all packs of a line had come; null when they have not. */
function completeOnOf({ packs, parts }: LineOutcome): EpochDay | null {
  let missing = packs;
  for (const part of [...parts].sort((a, b) => a.day - b.day)) {
    missing -= part.packs;
    if (missing <= 0) return part.day;
  }
  return null;
}

/** Nearest rank: the smallest value that at least this share does not pass. */
function rank(sorted: readonly number[], share: number): number | null {
  return sorted[Math.ceil(share * sorted.length - 1e-9) - 1] ?? null;
}
