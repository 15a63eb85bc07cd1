import { nameOf } from './alert-words.js';
import type { Alert } from './api/list-alerts.js';
import { ALERT_KINDS, type AlertKind } from './kinds.js';

export interface AlertFilter {
  readonly kind?: AlertKind | undefined;
  readonly category?: string | undefined;
  readonly q?: string | undefined;
}

function contains(alert: Alert, q: string): boolean {
  const { consumable, lot, location, order } = alert;
  const about = order === null ? [] : [String(order.number), order.supplier];
  const words = [nameOf(consumable), lot?.lotNumber ?? '', location?.name ?? '', ...about];
  return words.join(' ').toLowerCase().includes(q.toLowerCase());
}

/** Those of a filter, in the order in which they came: the most urgent first. */
export function filterAlerts(alerts: readonly Alert[], filter: AlertFilter): Alert[] {
  return alerts.filter(
    (alert) =>
      (filter.kind === undefined || alert.kind === filter.kind) &&
      (filter.category === undefined || alert.consumable.category === filter.category) &&
      (filter.q === undefined || contains(alert, filter.q)),
  );
}

export interface AlertGroup {
  readonly kind: AlertKind;
  readonly alerts: readonly Alert[];
}

/** The kinds that there are, the most urgent first. */
export function groupByKind(alerts: readonly Alert[]): AlertGroup[] {
  return ALERT_KINDS.map((kind) => ({
    kind,
    alerts: alerts.filter((alert) => alert.kind === kind),
  })).filter((group) => group.alerts.length > 0);
}

export function categoriesOf(alerts: readonly Alert[]): string[] {
  return [...new Set(alerts.map((alert) => alert.consumable.category))].sort();
}
