import {
  formatMoney,
  formatQuantity,
  moneyFromMicro,
  type Quantity,
  quantityFromMicro,
} from '#lib/measure';
import { seededRandom, seedFrom } from '../domain/forecast/index.js';
import { assumedFigures, assumptionSentence } from '../domain/planning/forecast-words.js';
import { type PlannedOffer, typedInLevels } from '../domain/planning/plan-item.js';
import { proposalSentence } from '../domain/planning/proposal-words.js';
import type { SupplierLead } from '../domain/planning/supplier-lead.js';
import { finiteQuantity } from '../domain/policy/edge.js';
import {
  type BasketLine,
  explainOrder,
  type OrderProposal,
  type ProposalFigure,
  type ShelfOutlook,
} from '../domain/policy/index.js';
import { isBelow, suggestOrder } from '../domain/suggest-order.js';
import type { QuantileDto } from '../http/forecast.dto.js';
import type {
  ProposalDto,
  ProposalFigureDto,
  ProposalOfferDto,
  ShelfOutlookDto,
  TypedInLevelsDto,
} from '../http/proposals.dto.js';
import type { Decided, DecidedShelf } from './decide-shelf.js';
import type { PlannedItem } from './planning-facts.js';
import { substitutesOf } from './substitute-view.js';
import { leadDto } from './supplier-lead-view.js';

/** The same decision gives the same runs. */
function explained({ decision }: Decided): OrderProposal {
  return explainOrder(decision, { random: seededRandom(seedFrom(decision.facts.itemId)) });
}

/** A proposal as it is shown; `line` is what the order holds of it, null when nothing. */
export function proposalOf(
  about: Decided,
  line: BasketLine | null,
  known: DecidedShelf,
): ProposalDto {
  const proposal = explained(about);
  const { item, found } = about;
  const { consumable } = item;
  const { currency, shelf } = known;
  const offer = item.offers.find((each) => each.presentationId === proposal.offerId) ?? null;
  const packs = line?.packs ?? 0n;
  const total = line === null || line.total === null ? null : formatMoney(line.total);
  const lead = offer === null ? null : shelf.rules.leadOf(offer.supplierId);
  const words = { consumable, offer, currency, packs, total, ordersSeen: lead?.orders ?? 0 };
  return {
    consumable,
    presentation: offer === null ? null : offerDto(offer),
    supplier: supplierDto(offer),
    reason: proposal.reason,
    packs: Number(packs),
    added: Number(line?.added ?? 0n),
    quantity: formatQuantity(quantityFromMicro((offer?.packContent ?? 0n) * packs)),
    total,
    position: formatQuantity(proposal.position),
    reorderPoint: textOrNull(proposal.reorderPoint),
    orderUpTo: textOrNull(proposal.orderUpTo),
    sentence: proposalSentence(proposal, words),
    figures: figuresOf(proposal, lead).map((figure) =>
      figureDto(figure, consumable.unit, currency),
    ),
    flags: [...proposal.flags],
    bounds: boundsOf(proposal, packs),
    assumptions: found.forecast.assumptions.map((a) => assumptionSentence(a, consumable.unit)),
    assumed: found.forecast.assumptions.map(assumedFigures),
    wasteBefore: formatQuantity(proposal.wasteBefore),
    wasteAfter: formatQuantity(proposal.wasteAfter),
    runsOutInDays: proposal.runsOutInDays,
    neededInDays: proposal.neededInDays,
    horizonDays: proposal.horizonDays,
    before: outlookDto(proposal.before),
    after: outlookDto(proposal.after),
    use: protectionUse(proposal),
    lead: lead === null ? null : leadDto(lead, shelf.rules.today),
    substitutes: substitutesOf(about, known),
    typedIn: typedInDto(item),
  };
}

/** Packs that are due and stand in no order were left out for the month's budget. */
function boundsOf(proposal: OrderProposal, packs: bigint): string[] {
  const held = packs < proposal.packs && !proposal.bounds.includes('budget');
  return held ? [...proposal.bounds, 'budget'] : [...proposal.bounds];
}

/** How long goods take is known outside the policy: from so many orders. */
function figuresOf(proposal: OrderProposal, lead: SupplierLead | null): readonly ProposalFigure[] {
  if (lead === null) return proposal.figures;
  const seen = { name: 'orders seen', value: String(lead.orders), unit: 'orders' } as const;
  return proposal.figures.flatMap((figure) =>
    figure.name === 'mean lead time' ? [figure, seen] : [figure],
  );
}

const USE_LEVELS = ['0.05', '0.25', '0.5', '0.75', '0.95'] as const;

/** What will be used over lead time and review: enough with so much chance. */
function protectionUse({ decision }: OrderProposal): QuantileDto[] {
  const { plan, facts } = decision;
  if (plan === null) return [];
  return USE_LEVELS.map((level) => ({
    level,
    quantity: formatQuantity(
      finiteQuantity(plan.protection.quantile(Number(level)), facts.countSize),
    ),
  }));
}

function offerDto(offer: PlannedOffer): ProposalOfferDto {
  const single = offer.packPrice === null ? [] : [{ fromPacks: 1n, packPrice: offer.packPrice }];
  return {
    id: offer.presentationId,
    name: offer.name,
    packContent: formatQuantity(quantityFromMicro(offer.packContent)),
    minimumPacks: Number(offer.minimumPacks),
    discount: offer.discount,
    prices: (offer.priceList.length > 0 ? offer.priceList : single).map((step) => ({
      fromPacks: Number(step.fromPacks),
      packPrice: formatMoney(moneyFromMicro(step.packPrice)),
    })),
  };
}

function supplierDto(offer: PlannedOffer | null): { id: string; name: string } | null {
  if (offer === null || offer.supplierId === null) return null;
  return { id: offer.supplierId, name: offer.supplierName ?? '' };
}

function figureDto(figure: ProposalFigure, unit: string, currency: string): ProposalFigureDto {
  const { name, value } = figure;
  if (figure.unit === 'stock unit') return { name, value, unit };
  return { name, value, unit: figure.unit === 'currency' ? currency : figure.unit };
}

function outlookDto(outlook: ShelfOutlook): ShelfOutlookDto {
  return {
    stockOutChance: String(Number(outlook.stockOutChance.toFixed(6))),
    short: formatQuantity(outlook.short),
    wasted: formatQuantity(outlook.wasted),
    averageStock: formatQuantity(outlook.averageStock),
  };
}

function typedInDto(item: PlannedItem): TypedInLevelsDto {
  const levels = typedInLevels(item);
  const order = levels === null ? undefined : suggestOrder(levels, item.offers);
  return {
    reorderAt: levels === null ? null : formatQuantity(quantityFromMicro(levels.reorderAt)),
    reorderUpTo:
      levels === null || levels.reorderUpTo === null
        ? null
        : formatQuantity(quantityFromMicro(levels.reorderUpTo)),
    asksForOrder: levels !== null && isBelow(levels),
    packs: order === undefined ? null : Number(order.packs),
  };
}

function textOrNull(quantity: Quantity | null): string | null {
  return quantity === null ? null : formatQuantity(quantity);
}
