import { formatMoney, formatQuantity, moneyFromMicro, quantityFromMicro } from '#lib/measure';
import {
  type Alert,
  type AlertAction,
  type AlertConsumable,
  type AlertLevel,
  alertId,
  amount,
  type Figure,
  nameOf,
  severityOf,
} from './alert.js';
import type { ComputedLevel } from './computed-level.js';
import {
  isDue,
  isDueAsComputed,
  type KnownLevels,
  type LevelInForce,
  type LevelOrder,
  levelInForce,
  orderAt,
  type Position,
  positionOf,
} from './reorder-level.js';
import type { Offer, SuggestedOrder } from './suggest-order.js';

export interface SupplyFacts {
  readonly consumable: AlertConsumable;
  /** Usable, on order and owed to visits. */
  readonly stock: Position;
  readonly levels: KnownLevels;
  readonly offers: readonly Offer[];
}

interface Due {
  readonly facts: SupplyFacts;
  readonly level: LevelInForce;
  readonly order: LevelOrder;
}

/** The alert for a consumable at or below its reorder point; undefined when there is enough. */
export function reorderAlert(facts: SupplyFacts, currency: string): Alert | undefined {
  const kind = 'below reorder point';
  const { consumable, levels, stock, offers } = facts;
  const level = levelInForce(levels, stock);
  if (level === null || !isDue(level, stock, levels.computed)) return undefined;
  const due = { facts, level, order: orderAt(level, stock, { computed: levels.computed, offers }) };
  return {
    id: alertId(kind, consumable.id),
    kind,
    severity: severityOf(kind),
    consumable,
    lot: null,
    location: null,
    holdingId: null,
    level: alertLevel(due),
    figures: [...stockFigures(due), ...levelFigures(due), ...orderFigures(due.order, currency)],
    sentence: sentenceOf(due),
    action: actionOf(due),
    urgency: shareLeft(due),
  };
}

function alertLevel({ facts, level, order }: Due): AlertLevel {
  const { computed } = facts.levels;
  return {
    kind: level.kind,
    at: quantityText(level.at),
    heldBack: order === 'held back',
    computed:
      computed === null
        ? null
        : {
            on: computed.computedOn,
            reorderPoint: quantityText(computed.reorderPoint),
            orders: isDueAsComputed(computed, facts.stock),
            expectedUse: aboutText(computed.expectedUse),
            days: daysCovered(computed),
            serviceMeasure: computed.serviceMeasure,
            serviceLevel: String(computed.serviceLevel),
          },
  };
}

/** Until goods ordered at the next look are here: whole days, as a person counts them. */
function daysCovered({ leadDays, reviewDays }: ComputedLevel): number {
  return Math.round(leadDays + reviewDays);
}

function stockFigures({ facts, level }: Due): Figure[] {
  const { usable, onOrder, owed } = facts.stock;
  const figure = inUnitOf(facts);
  return [
    figure('usable', usable),
    ...(onOrder === 0n ? [] : [figure('on order', onOrder)]),
    figure('open shortfall', owed),
    figure('position', positionOf(facts.stock)),
    ...(level.expiringFirst === 0n
      ? []
      : [figure('expected to expire first', level.expiringFirst, aboutText)]),
  ];
}

function levelFigures({ facts, level }: Due): Figure[] {
  const { computed } = facts.levels;
  const figure = inUnitOf(facts);
  const upTo = level.upTo === null ? [] : [figure('reorder up to', level.upTo)];
  const figures = [figure('reorder at', level.at), ...upTo];
  if (computed === null || level.kind === 'set in planning') return figures;
  if (level.kind === 'typed in') {
    return [...figures, figure('computed reorder point', computed.reorderPoint)];
  }
  const days = { name: 'days covered', value: String(daysCovered(computed)), unit: 'days' };
  return [...figures, figure('use in days covered', computed.expectedUse, aboutText), days];
}

function inUnitOf({ consumable }: SupplyFacts) {
  return (name: string, value: bigint, told = quantityText): Figure => ({
    ...{ name, value: told(value), unit: consumable.unit },
  });
}

function orderFigures(order: LevelOrder, currency: string): Figure[] {
  if (order === undefined || order === 'held back') return [];
  const { packs, offer, cost } = order;
  const figures = [{ name: 'suggested packs', value: String(packs), unit: 'packs' }];
  if (cost === null) return figures;
  // A price list may ask less for each of many packs than the price that was paid last.
  const asPaid = offer.packPrice !== null && offer.packPrice * packs === cost;
  const price = offer.packPrice ?? 0n;
  return [
    ...figures,
    ...(asPaid ? [{ name: 'last price', value: moneyText(price), unit: currency }] : []),
    { name: 'order cost', value: moneyText(cost), unit: currency },
  ];
}

function sentenceOf({ facts, level, order }: Due): string {
  const { consumable, stock } = facts;
  const { unit } = consumable;
  const told = (micro: bigint) => amount(quantityText(micro), unit);
  const about = (micro: bigint) => `about ${amount(aboutText(micro), unit)}`;
  const owed = stock.owed === 0n ? '' : `, less ${told(stock.owed)} owed to visits,`;
  const coming = stock.onOrder === 0n ? '' : `, and ${told(stock.onOrder)} on order,`;
  const gone =
    level.expiringFirst === 0n
      ? ''
      : `, less ${about(level.expiringFirst)} that should expire first,`;
  const what = `${told(stock.usable)} of ${nameOf(consumable)}`;
  const point = `the reorder point of ${told(level.at)}, ${originOf(level, facts)}`;
  const said = [`${what} usable${coming}${owed}${gone} is not more than ${point}.`];
  return [...said, adviceOf(order), ...planningBeside(level, facts)].join(' ');
}

/** By whose word the level holds, and what a computed one rests on. */
function originOf({ kind }: LevelInForce, { consumable, levels }: SupplyFacts): string {
  const { computed } = levels;
  if (kind === 'typed in') return 'typed in at the consumable';
  if (kind === 'set in planning' || computed === null) return 'set in planning';
  const use = amount(aboutText(computed.expectedUse), consumable.unit);
  const service = `${computed.serviceMeasure} of ${Number((computed.serviceLevel * 100).toFixed(2))} %`;
  return [
    `computed on ${computed.computedOn} for a ${service}`,
    `with ${use} expected to be used in ${daysCovered(computed)} days`,
  ].join(' ');
}

function adviceOf(order: LevelOrder): string {
  if (order === undefined) return 'No presentation says how it is bought.';
  if (order === 'held back') return 'A limit set in planning holds the order back.';
  const from = order.offer.supplierName ? ` from ${order.offer.supplierName}` : '';
  return `Order ${packsOf(order)} of ${order.offer.name}${from}.`;
}

/** Beside a level that was typed in stands what planning makes of it, and the other way: they may differ. */
function planningBeside({ kind }: LevelInForce, { consumable, levels, stock }: SupplyFacts) {
  const { computed, typedIn } = levels;
  if (kind === 'computed' && typedIn.at !== null) {
    return [
      `The ${amount(quantityText(typedIn.at), consumable.unit)} typed in are not reached yet.`,
    ];
  }
  if (kind !== 'typed in' || computed === null) return [];
  const point = amount(quantityText(computed.reorderPoint), consumable.unit);
  const orders = isDueAsComputed(computed, stock) ? 'orders as well' : 'orders nothing yet';
  return [`Planning computed a reorder point of ${point} and ${orders}.`];
}

function actionOf({ facts, order }: Due): AlertAction {
  const { id } = facts.consumable;
  if (order === undefined) {
    const href = `/api/consumables/${id}/presentations`;
    return { label: 'Say how it is bought', method: 'GET', href };
  }
  const label = order === 'held back' ? 'See what holds it back' : `Order ${packsOf(order)}`;
  return { label, method: 'GET', href: `/api/reorder/items/${id}` };
}

function packsOf({ packs }: SuggestedOrder): string {
  return packs === 1n ? '1 pack' : `${packs} packs`;
}

/** What is left of the reorder point, in thousandths, as text that sorts: the least first. */
function shareLeft({ facts, level }: Due): string {
  const position = positionOf(facts.stock) - level.expiringFirst;
  const left = position <= 0n || level.at <= 0n ? 0n : (position * 1000n) / level.at;
  return left.toString().padStart(4, '0');
}

function quantityText(micro: bigint): string {
  return formatQuantity(quantityFromMicro(micro));
}

/** Three digits: an expectation, not an amount of the book. */
function aboutText(micro: bigint): string {
  let step = 1n;
  while (micro / step >= 1000n) step *= 10n;
  return quantityText(((micro + step / 2n) / step) * step);
}

function moneyText(micro: bigint): string {
  return formatMoney(moneyFromMicro(micro));
}
