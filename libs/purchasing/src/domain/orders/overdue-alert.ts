import { type Alert, type AlertConsumable, alertId, nameOf, severityOf } from '../alert.js';

export interface OverdueFacts {
  readonly orderId: string;
  readonly number: number;
  readonly supplier: string;
  readonly orderedOn: string;
  readonly expectedOn: string;
  readonly daysLate: number;
  /** Of the first line that is outstanding. */
  readonly consumable: AlertConsumable;
  readonly outstandingLines: number;
  readonly outstandingPacks: number;
}

/** The alert for an order whose goods should have been here; it names one of them. */
export function overdueAlert(facts: OverdueFacts): Alert {
  const kind = 'overdue order';
  const { orderId: id, number, supplier, consumable, daysLate, outstandingLines } = facts;
  const others = outstandingLines - 1;
  const more =
    others === 0 ? '' : ` and ${others === 1 ? 'one more line' : `${others} more lines`}`;
  return {
    id: alertId(kind, id),
    kind,
    severity: severityOf(kind),
    consumable,
    lot: null,
    location: null,
    holdingId: null,
    order: { id, number, supplier },
    figures: [
      { name: 'days late', value: String(daysLate), unit: 'days' },
      { name: 'outstanding lines', value: String(outstandingLines), unit: '' },
      { name: 'outstanding packs', value: String(facts.outstandingPacks), unit: 'packs' },
    ],
    sentence:
      `Order ${number} of ${facts.orderedOn} to ${supplier} was expected on ${facts.expectedOn}, ` +
      `${daysLate === 1 ? 'a day' : `${daysLate} days`} ago: ${nameOf(consumable)}${more} did not come.`,
    action: { label: 'Chase it', method: 'POST', href: `/api/orders/${id}/chasing` },
    urgency: String(99_999 - Math.min(daysLate, 99_999)).padStart(5, '0'),
  };
}
