import {
  formatMoney,
  formatQuantity,
  type Money,
  type Quantity,
  quantityFromMicro,
} from '#lib/measure';
import { assumptionSentence } from '../domain/planning/forecast-words.js';
import { typedInLevels } from '../domain/planning/plan-item.js';
import { proposalSentence } from '../domain/planning/proposal-words.js';
import type {
  BasketLine,
  OrderProposal,
  ProposalFigure,
  ShelfOutlook,
} from '../domain/policy/index.js';
import { isBelow, suggestOrder } from '../domain/suggest-order.js';
import type {
  ProposalDto,
  ProposalFigureDto,
  ShelfOutlookDto,
  TypedInLevelsDto,
} from '../http/proposals.dto.js';
import type { ForecastOfItem } from './forecast-shelf.js';
import type { PlannedItem } from './planning-facts.js';

/** A proposal as it is shown; `line` is what the order holds of it, null when nothing. */
export function proposalDto(
  proposal: OrderProposal,
  about: { readonly item: PlannedItem; readonly found: ForecastOfItem },
  line: BasketLine | null,
  currency: string,
): ProposalDto {
  const { item, found } = about;
  const { consumable } = item;
  const offer = item.offers.find((each) => each.presentationId === proposal.offerId) ?? null;
  const packs = line?.packs ?? 0n;
  const total = line === null || line.total === null ? null : moneyOf(line.total);
  return {
    consumable,
    presentation: offer === null ? null : { id: offer.presentationId, name: offer.name },
    reason: proposal.reason,
    packs: Number(packs),
    added: Number(line?.added ?? 0n),
    quantity: formatQuantity(quantityFromMicro((offer?.packContent ?? 0n) * packs)),
    total,
    position: formatQuantity(proposal.position),
    reorderPoint: textOrNull(proposal.reorderPoint),
    orderUpTo: textOrNull(proposal.orderUpTo),
    sentence: proposalSentence(proposal, { consumable, offer, currency, packs, total }),
    figures: proposal.figures.map((figure) => figureDto(figure, consumable.unit, currency)),
    flags: [...proposal.flags],
    bounds: [...proposal.bounds],
    assumptions: found.forecast.assumptions.map((a) => assumptionSentence(a, consumable.unit)),
    wasteBefore: formatQuantity(proposal.wasteBefore),
    wasteAfter: formatQuantity(proposal.wasteAfter),
    runsOutInDays: proposal.runsOutInDays,
    horizonDays: proposal.horizonDays,
    before: outlookDto(proposal.before),
    after: outlookDto(proposal.after),
    typedIn: typedInDto(item),
  };
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

export function moneyOf(money: Money): string {
  return formatMoney(money);
}
