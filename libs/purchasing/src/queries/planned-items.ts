import { Injectable } from '@nestjs/common';
import { formatQuantity, type Quantity, quantityFromMicro } from '#lib/measure';
import { type Actor, refuse } from '#lib/platform';
import { nameOf } from '../domain/alert.js';
import { expectedFromSteps } from '../domain/forecast/quantity-grid.js';
import { daysOfUse } from '../domain/policy/decide-order.js';
import { finiteQuantity, quantityOf } from '../domain/policy/edge.js';
import type { BasketLine, OrderDecision } from '../domain/policy/index.js';
import { adjustedPosition } from '../domain/policy/offer-plan.js';
import type {
  NextStep,
  PlannedItemAnswerDto,
  PlannedItemDto,
  PlannedItemListDto,
} from '../http/planned-items.dto.js';
import { type Decided, DecideShelf } from './decide-shelf.js';
import { proposalOf } from './proposal-view.js';

/** Where every consumable stands, and the whole policy of one. */
@Injectable()
export class PlannedItems {
  constructor(private readonly decideShelf: DecideShelf) {}

  async list(actor: Actor): Promise<PlannedItemListDto> {
    const { today, currency, items } = await this.decideShelf.run(actor);
    const found = [...items.values()].map(itemDto);
    found.sort((a, b) => (nameOf(a.consumable) < nameOf(b.consumable) ? -1 : 1));
    return { asOf: today, currency, items: found };
  }

  async one(actor: Actor, consumableId: string): Promise<PlannedItemAnswerDto> {
    const known = await this.decideShelf.run(actor);
    const each = known.items.get(consumableId);
    if (!each) throw refuse('not_found', 'There is no active consumable with this id.');
    const { today: asOf, currency } = known;
    const policy = proposalOf(each, lineOf(each.decision), known);
    return { asOf, currency, item: itemDto(each), policy };
  }
}

/** What it would order alone, before a basket is filled up or a budget shared out. */
function lineOf({ plan, limited, facts, total }: OrderDecision): BasketLine | null {
  if (plan === null || limited.packs === 0) return null;
  const { offerId } = plan.offer;
  return { itemId: facts.itemId, offerId, packs: BigInt(limited.packs), added: 0n, total };
}

const WEEK = 7;

function itemDto({ item, found, decision }: Decided): PlannedItemDto {
  const { shelf, plan, facts, limited } = decision;
  const { forecast } = found;
  const stock = (counts: number) => formatQuantity(finiteQuantity(counts, facts.countSize));
  const inWeek = expectedFromSteps(facts.demand.use(0, WEEK).mean, forecast.step);
  const offer = item.offers.find((each) => each.presentationId === plan?.offer.offerId);
  const level = (counts: number | undefined) =>
    counts === undefined ? null : textOrNull(quantityOf(counts, facts.countSize));
  return {
    consumable: item.consumable,
    demandClass: forecast.demandClass,
    diedOut: forecast.item.died,
    useInWeek: formatQuantity(quantityFromMicro(inWeek)),
    usable: stock(shelf.usable),
    onOrder: stock(shelf.onOrder),
    owed: stock(shelf.owed),
    position: stock(shelf.position),
    runsOutInDays: daysOfUse(decision, shelf.usable - shelf.owed),
    reorderPoint: level(plan?.reorderPoint),
    orderUpTo: level(plan?.orderUpTo),
    byHand: facts.override !== null,
    next: nextOf(decision),
    dueInDays: plan ? daysOfUse(decision, adjustedPosition(shelf, plan) - plan.reorderPoint) : null,
    packs: limited.packs,
    supplierName: offer?.supplierName ?? null,
  };
}

function nextOf({ reason }: OrderDecision): NextStep {
  switch (reason) {
    case 'at or below the reorder point':
      return 'order now';
    case 'stopped by a limit':
      return 'held back';
    case 'no offer':
      return 'no offer';
    case 'above the reorder point':
      return 'order later';
    case 'no use expected':
      return 'nothing expected';
  }
}

function textOrNull(quantity: Quantity | null): string | null {
  return quantity === null ? null : formatQuantity(quantity);
}
