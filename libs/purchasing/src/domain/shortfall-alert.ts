import { formatMoney, formatQuantity, moneyFromMicro, quantityFromMicro } from '#lib/measure';
import { type Alert, type AlertConsumable, alertId, amount, nameOf, severityOf } from './alert.js';

export interface ShortfallFacts {
  readonly consumable: AlertConsumable;
  readonly open: bigint;
  readonly visits: number;
  readonly oldest: string;
  readonly estimatedCost: bigint;
}

export function shortfallAlert(facts: ShortfallFacts, currency: string): Alert {
  const kind = 'open shortfall';
  const { consumable, visits } = facts;
  const open = quantityText(facts.open);
  const of = visits === 1 ? 'A visit' : `${visits} visits`;
  return {
    id: alertId(kind, consumable.id),
    kind,
    severity: severityOf(kind),
    consumable,
    lot: null,
    location: null,
    holdingId: null,
    figures: [
      { name: 'open shortfall', value: open, unit: consumable.unit },
      { name: 'visits', value: String(visits), unit: '' },
      { name: 'estimated cost', value: moneyText(facts.estimatedCost), unit: currency },
    ],
    sentence: [
      `${of} used ${amount(open, consumable.unit)} of ${nameOf(consumable)}`,
      `that the book has no stock for, first on ${facts.oldest}.`,
      'Book the delivery it came with, or count.',
    ].join(' '),
    action: { label: 'Book the delivery', method: 'POST', href: '/api/deliveries' },
    urgency: facts.oldest,
  };
}

function quantityText(micro: bigint): string {
  return formatQuantity(quantityFromMicro(micro));
}

function moneyText(micro: bigint): string {
  return formatMoney(moneyFromMicro(micro));
}
