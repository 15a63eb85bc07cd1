import {
  formatMoney,
  formatQuantity,
  type Money,
  moneyFromMicro,
  multiplyRatio,
} from '#lib/measure';
import type { OrderDecision } from './decide-order.js';
import { meanLeadTime } from './demand.js';
import { quantityOf } from './edge.js';
import type { OfferPlan } from './offer-plan.js';

/** In what a figure is told. */
export type FigureUnit = 'stock unit' | 'currency' | 'days' | 'packs' | 'share' | 'orders';

/** Every number that a proposal rests on, by name; a screen puts the words around them. */
export const FIGURE_NAMES = [
  'usable on hand',
  'on order',
  'open shortfall',
  'position',
  'expected to expire first',
  'position after expiry',
  'mean lead time',
  'orders seen',
  'review period',
  'mean use in lead time and review',
  'spread of use in lead time and review',
  'service level',
  'reorder point',
  'safety stock',
  'use in a year',
  'economic order',
  'usual order',
  'order up to',
  'content of a pack',
  'smallest order',
  'most used before expiry',
  'wanted certainty',
  'packs wanted',
  'packs ordered',
  'price of a pack',
  'total',
  'chance that the order is used up in time',
  'expected waste of the order',
] as const;
export type FigureName = (typeof FIGURE_NAMES)[number];

/** A plain decimal string with its unit. */
export interface ProposalFigure {
  readonly name: FigureName;
  readonly value: string;
  readonly unit: FigureUnit;
}

/** The numbers of a decision, in the order in which they follow from each other. */
export function explainDecision(decision: OrderDecision): readonly ProposalFigure[] {
  const { facts, plan, shelf, yearlyUse } = decision;
  const stock = inStockUnits(decision);
  const figures = [
    stock('usable on hand', shelf.usable),
    stock('on order', shelf.onOrder),
    stock('open shortfall', shelf.owed),
    stock('position', shelf.position),
    stock('use in a year', yearlyUse),
    plain('service level', facts.target.level, 'share'),
    plain('review period', facts.reviewDays, 'days'),
    ...(plan ? planFigures(decision, plan) : []),
  ];
  return FIGURE_NAMES.flatMap((name) => figures.find((figure) => figure?.name === name) ?? []);
}

type Figures = (ProposalFigure | null)[];

function planFigures(decision: OrderDecision, plan: OfferPlan): Figures {
  const { facts, shelf, limited } = decision;
  const stock = inStockUnits(decision);
  const { counts, offer, protection } = plan;
  return [
    stock('expected to expire first', plan.expiringFirst),
    stock('position after expiry', shelf.position - plan.expiringFirst),
    plain('mean lead time', meanLeadTime(offer.leadTime), 'days'),
    stock('mean use in lead time and review', protection.mean),
    stock('spread of use in lead time and review', Math.sqrt(protection.variance)),
    stock('reorder point', plan.reorderPoint),
    stock('safety stock', plan.reorderPoint - protection.mean),
    plan.lot.economicLot === null ? null : stock('economic order', plan.lot.economicLot),
    plain('usual order', plan.lot.packs, 'packs'),
    stock('order up to', plan.orderUpTo),
    stock('content of a pack', counts.pack),
    plain('smallest order', counts.minimumPacks, 'packs'),
    stock('most used before expiry', plan.cap),
    plain('wanted certainty', facts.limits.expiryCertainty, 'share'),
    ...(limited.packs > 0 ? orderFigures(decision, plan) : []),
  ];
}

function orderFigures(decision: OrderDecision, plan: OfferPlan): Figures {
  const { limited, total } = decision;
  const { counts, behind } = plan;
  const size = limited.packs * counts.pack;
  const stock = inStockUnits(decision);
  return [
    plain('packs wanted', limited.wanted, 'packs'),
    plain('packs ordered', limited.packs, 'packs'),
    ...(total === null ? [] : priceFigures(total, limited.packs)),
    plain('chance that the order is used up in time', behind?.usedUp(size) ?? 1, 'share'),
    stock('expected waste of the order', behind?.expectedLeft(size) ?? 0),
  ];
}

function priceFigures(total: Money, packs: number): Figures {
  const each = moneyFromMicro(multiplyRatio(total, 1n, BigInt(packs), 'half-up'));
  return [
    { name: 'price of a pack', value: formatMoney(each), unit: 'currency' },
    { name: 'total', value: formatMoney(total), unit: 'currency' },
  ];
}

/** A figure in stock units; none for what has no end. */
function inStockUnits(decision: OrderDecision) {
  return (name: FigureName, counts: number): ProposalFigure | null => {
    const quantity = quantityOf(counts, decision.facts.countSize);
    if (quantity === null) return null;
    return { name, value: formatQuantity(quantity), unit: 'stock unit' };
  };
}

function plain(name: FigureName, value: number, unit: FigureUnit): ProposalFigure {
  // Six digits as everywhere; Number drops the zeros that toFixed leaves behind.
  return { name, value: String(Number(value.toFixed(6))), unit };
}
