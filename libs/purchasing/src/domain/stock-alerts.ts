import {
  type Alert,
  type AlertAction,
  type AlertConsumable,
  type AlertKind,
  type AlertLot,
  type AlertPlace,
  alertId,
  amount,
  type Figure,
  nameOf,
  severityOf,
} from './alert.js';

/** Something on a shelf, as of a day. */
export interface ShelfFacts {
  readonly holdingId: string;
  readonly consumable: AlertConsumable;
  readonly lot: AlertLot;
  readonly location: AlertPlace;
  readonly onHand: string;
  readonly openedOn: string | null;
  /** The last day of use: label, or life after opening. */
  readonly lastDay: string | null;
  /** Days from today to the last day; negative when it has passed. */
  readonly daysLeft: number | null;
}

/** Why something on a shelf needs somebody; undefined when it does not (yet). */
export function kindOnShelf(facts: ShelfFacts, withinDays: number): AlertKind | undefined {
  if (facts.lot.status !== 'released') return 'recalled lot on hand';
  if (facts.daysLeft === null || facts.daysLeft > withinDays) return undefined;
  if (facts.daysLeft >= 0) return 'expires within N days';
  const label = facts.lot.labelExpiry;
  const labelPassed = label !== null && facts.lastDay !== null && label <= facts.lastDay;
  return labelPassed || facts.openedOn === null ? 'expired on shelf' : 'opened too long';
}

/** The alert for something on a shelf; undefined when nothing has to be done. */
export function shelfAlert(facts: ShelfFacts, withinDays: number): Alert | undefined {
  const kind = kindOnShelf(facts, withinDays);
  if (!kind) return undefined;
  return {
    id: alertId(kind, facts.holdingId),
    kind,
    severity: severityOf(kind),
    consumable: facts.consumable,
    lot: facts.lot,
    location: facts.location,
    holdingId: facts.holdingId,
    figures: figuresOf(facts),
    sentence: sentenceOf(kind, facts),
    action: actionOf(kind, facts),
    urgency: facts.lastDay ?? '9999-12-31',
  };
}

function figuresOf({ onHand, consumable, daysLeft }: ShelfFacts): Figure[] {
  const figures = [{ name: 'on hand', value: onHand, unit: consumable.unit }];
  if (daysLeft === null) return figures;
  return [...figures, { name: 'days left', value: String(daysLeft), unit: 'days' }];
}

function sentenceOf(kind: AlertKind, facts: ShelfFacts): string {
  const { consumable, lot, location, onHand, openedOn, lastDay, daysLeft } = facts;
  const lotWords = lot.lotNumber === null ? 'lot not stated' : `lot ${lot.lotNumber}`;
  const what = `${amount(onHand, consumable.unit)} of ${nameOf(consumable)} (${lotWords})`;
  if (kind === 'recalled lot on hand') {
    return `${what} in ${location.name}: the lot is ${lot.status}. Nobody may use it.`;
  }
  if (kind === 'opened too long') {
    return `${what} in ${location.name} was opened on ${openedOn} and was usable until ${lastDay}.`;
  }
  if (kind === 'expired on shelf') {
    return `${what} in ${location.name} expired on ${lastDay}. Nobody may use it.`;
  }
  const left = daysLeft === 0 ? 'today' : daysLeft === 1 ? 'tomorrow' : `in ${daysLeft} days`;
  return `${what} in ${location.name} can be used until ${lastDay}: its last day is ${left}.`;
}

function actionOf(kind: AlertKind, { lot, holdingId }: ShelfFacts): AlertAction {
  switch (kind) {
    case 'recalled lot on hand':
      return lot.status === 'recalled'
        ? { label: 'Send it back', method: 'POST', href: '/api/stock/returns' }
        : { label: 'Release or recall the lot', method: 'PUT', href: `/api/lots/${lot.id}/status` };
    case 'expired on shelf':
      return { label: 'Write it off: expired', method: 'POST', href: '/api/stock/write-offs' };
    case 'opened too long':
      return {
        label: 'Write it off: after-opening limit',
        method: 'POST',
        href: '/api/stock/write-offs',
      };
    case 'expires within N days':
      return { label: 'Move it to where it is used', method: 'POST', href: '/api/stock/moves' };
    default:
      throw new Error(`${kind} is not about holding ${holdingId}`);
  }
}
