import { formatQuantity, quantityFromMicro } from '#lib/measure';
import {
  type Alert,
  type AlertConsumable,
  alertId,
  amount,
  type Figure,
  nameOf,
  severityOf,
} from './alert.js';
import { ARRIVED_SHARE } from './arrival-day.js';
import { combineBooked } from './forecast/booked-visits.js';
import { type EpochDay, isoDay, weekdayOf } from './forecast/calendar.js';
import { countWith } from './forecast/counts.js';
import type { BookedUse } from './forecast/shelf-forecast.js';

/** From this chance on of running out before a delivery can be here, somebody is told. */
export const RUNS_OUT_CHANCE = 0.2;

/** Mean and variance of use, in stock units. */
export interface UseMoments {
  readonly mean: number;
  readonly variance: number;
}

/** A booked visit that needs the item. */
export interface VisitAtRisk {
  readonly id: string;
  readonly day: string;
  readonly chartReference: string | null;
  /** So many alike visits are still to come. */
  readonly toCome: number;
  /** What each is planned to use, in millionths. */
  readonly need: bigint;
}

export interface RunOutFacts {
  readonly consumable: AlertConsumable;
  readonly today: EpochDay;
  /** In millionths, as is all that is owed to visits. */
  readonly usable: bigint;
  readonly owed: bigint;
  /** What sent orders still have to bring, with the day on which it is expected. */
  readonly coming: readonly { readonly expectedOn: EpochDay; readonly quantity: bigint }[];
  /** Use of a day, Monday first, as in the last weeks. */
  readonly usual: readonly UseMoments[];
  readonly booked: BookedUse | undefined;
  readonly visits: readonly VisitAtRisk[];
  /** The day on which goods ordered today can be here. */
  readonly deliveryOn: EpochDay;
  readonly supplierName: string | null;
  /** Orders from which that day was seen; null: it is the stated time. */
  readonly ordersSeen: number | null;
}

export interface Outlook {
  /** Expected until the day before the delivery, in stock units. */
  readonly use: number;
  readonly booked: number;
  /** The chance that it runs out on some day before the delivery. */
  readonly chance: number;
  /** The first day on which the chance reaches what is told; null: none. */
  readonly day: EpochDay | null;
}

/**
 * Follows stock and use day by day until goods ordered today can be here. Use is what the weekdays
 * of the last weeks used, with what is booked put over it; days are taken to be independent. An
 * order on its way counts from the day on which it is expected; one that is late counts for nothing.
 */
export function outlook(facts: RunOutFacts): Outlook {
  const { today, usual, booked } = facts;
  const length = Math.max(0, facts.deliveryOn - today);
  const days = Array.from({ length }, (_, i) => usual[weekdayOf(today + i)] ?? NO_USE);
  const expected = days.map((each) => each.mean);
  const own = expected.map((_, i) => Number(booked?.quantities[i] ?? 0n) / 1_000_000);
  const coverage = booked?.coverage ? expected.map((_, i) => booked.coverage?.[i] ?? 0) : null;
  const { restShare, expected: total } = combineBooked(expected, { booked: own, coverage });
  const step = isCounted(facts.consumable.unit) ? 1 : 0.01;
  const sum = { use: 0, variance: 0, booked: 0 };
  const found = { chance: 0, day: null as EpochDay | null };
  for (let i = 0; i < length; i += 1) {
    sum.use += total[i] ?? 0;
    sum.booked += own[i] ?? 0;
    const spread = booked?.variances?.[i] ?? own[i] ?? 0;
    sum.variance += spread + (restShare[i] ?? 0) * (days[i]?.variance ?? 0);
    const chance = beyond(sum, Number(supplyOn(facts, today + i)) / 1_000_000, step);
    if (chance >= RUNS_OUT_CHANCE) found.day ??= today + i;
    found.chance = Math.max(found.chance, chance);
  }
  return { use: sum.use, booked: sum.booked, ...found };
}

const NO_USE: UseMoments = { mean: 0, variance: 0 };

function isCounted(unit: string): boolean {
  return unit === 'piece' || unit === 'use';
}

/** What is there on a day without being used before, less what is owed, in millionths. */
function supplyOn({ usable, owed, coming, today }: RunOutFacts, day: EpochDay): bigint {
  return coming
    .filter(({ expectedOn }) => expectedOn >= today && expectedOn <= day)
    .reduce((sum, each) => sum + each.quantity, usable - owed);
}

/** The chance that use is more than what is there. */
function beyond(sum: { use: number; variance: number }, supply: number, step: number): number {
  if (!(sum.use > 0)) return 0;
  if (supply < 0) return 1;
  const count = countWith(sum.use / step, sum.variance / (step * step));
  return count.exceed(Math.floor(supply / step + 1e-9));
}

/** The alert for what may run out before a delivery can be here; undefined when that is unlikely. */
export function runOutAlert(facts: RunOutFacts): Alert | undefined {
  const kind = 'runs out before delivery';
  const { consumable, usable, owed, deliveryOn, today } = facts;
  const seen = outlook(facts);
  if (seen.day === null) return undefined;
  const day = isoDay(seen.day);
  const visits = facts.visits.filter((each) => each.day >= day && each.day < isoDay(deliveryOn));
  const coming = facts.coming.reduce((sum, each) => sum + each.quantity, 0n);
  const { unit } = consumable;
  return {
    id: alertId(kind, consumable.id),
    kind,
    severity: severityOf(kind),
    consumable,
    lot: null,
    location: null,
    holdingId: null,
    bookedVisits: visits.map(({ need, ...visit }) => ({ ...visit, need: text(need) })),
    figures: [
      { name: 'usable', value: text(usable), unit },
      ...(owed === 0n ? [] : [{ name: 'open shortfall', value: text(owed), unit }]),
      ...(coming === 0n ? [] : [{ name: 'on order', value: text(coming), unit }]),
      { name: 'use until delivery', value: rounded(seen.use), unit },
      ...(seen.booked > 0 ? [{ name: 'booked use', value: rounded(seen.booked), unit }] : []),
      { name: 'days until delivery', value: String(deliveryOn - today), unit: 'days' },
      ...seenFigures(facts),
      { name: 'chance', value: String(percentOf(seen)), unit: '%' },
    ],
    sentence: sentenceOf(facts, seen, visits),
    action: { label: 'See what to order', method: 'GET', href: '/api/reorder/proposals' },
    urgency: `${day} ${String(1000 - Math.round(seen.chance * 1000)).padStart(4, '0')}`,
  };
}

/** By which share of deliveries the day is told, and from how many orders that is known. */
function seenFigures({ ordersSeen }: RunOutFacts): Figure[] {
  if (ordersSeen === null) return [];
  return [
    { name: 'deliveries by then', value: String(ARRIVED_SHARE * 100), unit: '%' },
    { name: 'orders seen', value: String(ordersSeen), unit: '' },
  ];
}

/** Names no chart: the sentence leaves the house by mail. */
function sentenceOf(facts: RunOutFacts, seen: Outlook, visits: readonly VisitAtRisk[]): string {
  const { consumable, deliveryOn, supplierName } = facts;
  const { unit } = consumable;
  const from = supplierName === null ? '' : ` from ${supplierName}`;
  const booked = seen.booked > 0 ? `, ${amount(rounded(seen.booked), unit)} of it booked` : '';
  const count = visits.reduce((sum, each) => sum + each.toCome, 0);
  const [first] = visits;
  const hit = first
    ? ` ${count === 1 ? 'A booked visit' : `${count} booked visits`} may go without, first on ${first.day}.`
    : '';
  const name = nameOf(consumable);
  const left =
    facts.usable > 0n
      ? `${amount(text(facts.usable), unit)} of ${name} may not last until a delivery`
      : `No ${name} is usable, and a delivery`;
  const owed = facts.owed === 0n ? '' : ` ${amount(text(facts.owed), unit)} are owed to visits.`;
  const here =
    facts.ordersSeen === null
      ? `can be here on ${isoDay(deliveryOn)}, as is stated`
      : `is here by ${isoDay(deliveryOn)} in ${ARRIVED_SHARE * 100} of 100 cases, as in its ` +
        `${facts.ordersSeen} orders seen`;
  return [
    `${left} ordered today${from} ${here}:`,
    `${amount(rounded(seen.use), unit)} are expected to be used before${booked}, as in the last`,
    `eight weeks; the chance of running out is ${percentOf(seen)} %.${owed}${hit}`,
  ].join(' ');
}

/** Nothing that is still to come is certain. */
function percentOf({ chance }: Outlook): number {
  return Math.min(99, Math.round(chance * 100));
}

/** Three digits: an expectation, not an amount of the book. */
function rounded(value: number): string {
  return String(value >= 100 ? Math.round(value) : Number(value.toPrecision(3)));
}

function text(micro: bigint): string {
  return formatQuantity(quantityFromMicro(micro));
}
