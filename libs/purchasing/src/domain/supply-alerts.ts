import { formatMoney, formatQuantity, moneyFromMicro, quantityFromMicro } from '#lib/measure';
import {
  type Alert,
  type AlertConsumable,
  alertId,
  amount,
  type Figure,
  nameOf,
  severityOf,
} from './alert.js';
import {
  isBelow,
  type Offer,
  type ReorderLevels,
  type SuggestedOrder,
  suggestOrder,
} from './suggest-order.js';

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

export interface SupplyFacts {
  readonly consumable: AlertConsumable;
  readonly usable: bigint;
  readonly openShortfall: bigint;
  /** What sent orders still have to bring. */
  readonly onOrder: bigint;
  readonly reorderAt: bigint;
  readonly reorderUpTo: bigint | null;
  readonly offers: readonly Offer[];
}

/** The alert for a consumable at or below its reorder point; undefined when there is enough. */
export function reorderAlert(facts: SupplyFacts, currency: string): Alert | undefined {
  const kind = 'below reorder point';
  const { consumable, reorderAt, reorderUpTo } = facts;
  const position = facts.usable + facts.onOrder - facts.openShortfall;
  const levels = { position, reorderAt, reorderUpTo };
  if (!isBelow(levels)) return undefined;
  const order = suggestOrder(levels, facts.offers);
  return {
    id: alertId(kind, consumable.id),
    kind,
    severity: severityOf(kind),
    consumable,
    lot: null,
    location: null,
    holdingId: null,
    figures: [...levelFigures(facts, levels), ...orderFigures(order, currency)],
    sentence: reorderSentence(facts, order),
    action: {
      label: order ? `Order ${packsOf(order)}` : 'Say how it is bought',
      method: 'GET',
      href: `/api/consumables/${consumable.id}/presentations`,
    },
    urgency: shareLeft(levels),
  };
}

function levelFigures(facts: SupplyFacts, levels: ReorderLevels): Figure[] {
  const { unit } = facts.consumable;
  const figure = (name: string, value: bigint) => ({ name, value: quantityText(value), unit });
  return [
    figure('usable', facts.usable),
    ...(facts.onOrder === 0n ? [] : [figure('on order', facts.onOrder)]),
    figure('open shortfall', facts.openShortfall),
    figure('position', levels.position),
    figure('reorder at', levels.reorderAt),
    ...(levels.reorderUpTo === null ? [] : [figure('reorder up to', levels.reorderUpTo)]),
  ];
}

function orderFigures(order: SuggestedOrder | undefined, currency: string): Figure[] {
  if (!order) return [];
  const figures = [{ name: 'suggested packs', value: String(order.packs), unit: 'packs' }];
  if (order.offer.packPrice === null || order.cost === null) return figures;
  return [
    ...figures,
    { name: 'last price', value: moneyText(order.offer.packPrice), unit: currency },
    { name: 'order cost', value: moneyText(order.cost), unit: currency },
  ];
}

function reorderSentence(facts: SupplyFacts, order: SuggestedOrder | undefined): string {
  const { consumable, openShortfall } = facts;
  const { unit } = consumable;
  const owed =
    openShortfall === 0n
      ? ''
      : `, less ${amount(quantityText(openShortfall), unit)} owed to visits,`;
  const coming =
    facts.onOrder === 0n ? '' : `, and ${amount(quantityText(facts.onOrder), unit)} on order,`;
  const what = `${amount(quantityText(facts.usable), unit)} of ${nameOf(consumable)}`;
  const point = `the reorder point of ${amount(quantityText(facts.reorderAt), unit)}`;
  const from = order?.offer.supplierName ? ` from ${order.offer.supplierName}` : '';
  const advice = order
    ? `Order ${packsOf(order)} of ${order.offer.name}${from}.`
    : 'No presentation says how it is bought.';
  return `${what} usable${coming}${owed} is not more than ${point}. ${advice}`;
}

function packsOf(order: SuggestedOrder): string {
  return order.packs === 1n ? '1 pack' : `${order.packs} packs`;
}

/** What is left of the reorder point, in thousandths, as text that sorts: the least first. */
function shareLeft({ position, reorderAt }: ReorderLevels): string {
  const left = position <= 0n || reorderAt <= 0n ? 0n : (position * 1000n) / reorderAt;
  return left.toString().padStart(4, '0');
}

function quantityText(micro: bigint): string {
  return formatQuantity(quantityFromMicro(micro));
}

function moneyText(micro: bigint): string {
  return formatMoney(moneyFromMicro(micro));
}
