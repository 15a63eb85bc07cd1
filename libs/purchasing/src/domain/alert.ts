import type { ServiceMeasure } from './policy/index.js';
import type { LevelKind } from './reorder-level.js';

/** The reasons to act, the most urgent first; the place in this list is the severity. */
export const ALERT_KINDS = [
  'recalled lot on hand',
  'expired on shelf',
  'opened too long',
  'open shortfall',
  'runs out before delivery',
  'overdue order',
  'below reorder point',
  'expires within N days',
] as const;
export type AlertKind = (typeof ALERT_KINDS)[number];

export interface AlertConsumable {
  readonly id: string;
  readonly name: string;
  readonly category: string;
  readonly shade: string | null;
  readonly size: string | null;
  readonly grit: string | null;
  readonly unit: string;
}

export interface AlertLot {
  readonly id: string;
  readonly lotNumber: string | null;
  readonly labelExpiry: string | null;
  readonly status: string;
}

export interface AlertPlace {
  readonly id: string;
  readonly name: string;
}

/** The order that an alert is about. */
export interface AlertOrder {
  readonly id: string;
  readonly number: number;
  readonly supplier: string;
}

/** A booked visit that may go without. */
export interface AlertBookedVisit {
  readonly id: string;
  readonly day: string;
  readonly chartReference: string | null;
  /** So many alike visits are still to come. */
  readonly toCome: number;
  /** What each is planned to use. */
  readonly need: string;
}

/** What planning computed beside an alert about a reorder point, or for it. */
export interface AlertComputedLevel {
  /** The day it was computed on. */
  readonly on: string;
  readonly reorderPoint: string;
  /** Whether planning orders what is there now by it. */
  readonly orders: boolean;
  /** Expected in so many days: until goods ordered at the next look are here. */
  readonly expectedUse: string;
  readonly days: number;
  readonly serviceMeasure: ServiceMeasure;
  readonly serviceLevel: string;
}

/** The reorder point that an alert goes by. */
export interface AlertLevel {
  readonly kind: LevelKind;
  readonly at: string;
  /** A limit set in planning allows no pack. */
  readonly heldBack: boolean;
  readonly computed: AlertComputedLevel | null;
}

/** One number behind an alert; the unit is a stock unit, a currency, days, packs, % or empty. */
export interface Figure {
  readonly name: string;
  readonly value: string;
  readonly unit: string;
}

export interface AlertAction {
  readonly label: string;
  readonly method: 'GET' | 'POST' | 'PUT';
  readonly href: string;
}

export interface Alert {
  /** The same reason has the same id tomorrow. */
  readonly id: string;
  readonly kind: AlertKind;
  readonly severity: number;
  readonly consumable: AlertConsumable;
  readonly lot: AlertLot | null;
  readonly location: AlertPlace | null;
  readonly holdingId: string | null;
  readonly order?: AlertOrder;
  readonly bookedVisits?: readonly AlertBookedVisit[];
  readonly level?: AlertLevel;
  readonly figures: readonly Figure[];
  readonly sentence: string;
  readonly action: AlertAction;
  /** Orders alerts of one kind: the smaller, the sooner. */
  readonly urgency: string;
}

export function severityOf(kind: AlertKind): number {
  return ALERT_KINDS.indexOf(kind) + 1;
}

export function alertId(kind: AlertKind, subjectId: string): string {
  return `${kind.toLowerCase().replaceAll(' ', '-')}:${subjectId}`;
}

/** Most urgent first, and always in the same order. */
export function inOrderOfUrgency(alerts: readonly Alert[]): Alert[] {
  const key = (a: Alert) => [a.urgency, a.consumable.name, a.id];
  return [...alerts].sort((a, b) => a.severity - b.severity || compareTexts(key(a), key(b)));
}

function compareTexts(a: readonly string[], b: readonly string[]): number {
  for (const [i, text] of a.entries()) {
    const other = b[i] ?? '';
    if (text !== other) return text < other ? -1 : 1;
  }
  return 0;
}

/** 'Paste, Body 2': how a sentence names a consumable. */
export function nameOf(c: AlertConsumable): string {
  return [c.name, c.shade, c.size, c.grit].filter((part) => part !== null).join(', ');
}

/** '0.4 g', '1 piece', '3 pieces'. */
export function amount(value: string, unit: string): string {
  const plural = value !== '1' && (unit === 'piece' || unit === 'use') ? `${unit}s` : unit;
  return `${value} ${plural}`;
}
