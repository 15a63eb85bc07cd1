import { Injectable } from '@nestjs/common';
import { type Actor, Clock, UnitOfWork } from '#lib/platform';
import { seededRandom, seedFrom } from '../domain/forecast/index.js';
import { basketTerms, itemFacts, NO_SUPPLIER } from '../domain/planning/plan-item.js';
import { choiceWords } from '../domain/planning/proposal-words.js';
import { spanDemand } from '../domain/planning/span-demand.js';
import {
  type BasketItem,
  basketItem,
  decideOrder,
  fillBasket,
  type ItemFacts,
  type OrderDecision,
  type OrderProposal,
  proposeOrder,
  type SupplierBasket,
} from '../domain/policy/index.js';
import type { BasketDto, ProposalDto, ProposalListDto } from '../http/proposals.dto.js';
import {
  type ForecastOfItem,
  ForecastShelf,
  loadShelfUse,
  type ShelfForecasts,
  type ShelfUse,
} from './forecast-shelf.js';
import { loadPlannedItems, loadPlanningRules, type PlannedItem } from './planning-facts.js';
import { moneyOf, proposalDto } from './proposal-view.js';
import { Turns } from './take-turns.js';

interface Decided {
  readonly item: PlannedItem;
  readonly found: ForecastOfItem;
  readonly decision: OrderDecision;
}

/**
 * What to order today: one order per supplier of what is at or below its reorder point, and of what
 * fills it up, each line with the numbers behind it. Every item is a step of its own, so that other
 * requests get their turn in between.
 */
@Injectable()
export class ListProposals {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
    private readonly forecastShelf: ForecastShelf,
  ) {}

  async run(actor: Actor): Promise<ProposalListDto> {
    const { currency, practiceId } = actor;
    const today = this.clock.today(actor.timeZone);
    const shelf = await this.uow.read(practiceId, async (tx) => {
      const items = await loadPlannedItems(tx, today);
      const rules = await loadPlanningRules(tx, today);
      return loadShelfUse(tx, today, { items, rules });
    });
    const decided = await decideAll(shelf, await this.forecastShelf.run(shelf));
    const turns = new Turns();
    const orders: BasketDto[] = [];
    for (const basket of basketsOf(decided, shelf)) {
      orders.push(await basketDto(basket, decided, { currency, turns }));
    }
    const stuck: ProposalDto[] = [];
    for (const each of decided.values()) {
      if (!isStuck(each.decision)) continue;
      await turns.next();
      stuck.push(proposalDto(propose(each), each, null, currency));
    }
    return { asOf: today, currency, looked: decided.size, orders, stuck };
  }
}

async function decideAll(
  shelf: ShelfUse,
  forecasts: ShelfForecasts,
): Promise<ReadonlyMap<string, Decided>> {
  const decided = new Map<string, Decided>();
  const turns = new Turns();
  for (const item of shelf.items) {
    await turns.next();
    const found = forecasts.get(item.consumableId);
    if (!found) throw new Error('A consumable of the shelf has no forecast');
    const { forecast, history } = found;
    const demand = spanDemand(forecast.item, history);
    const facts = itemFacts(item, { demand, step: forecast.step }, shelf.rules);
    await askAhead(facts, turns);
    decided.set(item.consumableId, { item, found, decision: decideOrder(facts) });
  }
  return decided;
}

/** The spans that the decision is about to ask for, one at a time; the demand remembers them. */
async function askAhead({ demand, offers, reviewDays }: ItemFacts, turns: Turns): Promise<void> {
  for (const { days } of offers.flatMap((offer) => offer.leadTime)) {
    demand.use(0, days + reviewDays);
    await turns.next();
  }
}

function basketsOf(decided: ReadonlyMap<string, Decided>, shelf: ShelfUse): SupplierBasket[] {
  const bySupplier = new Map<string, BasketItem[]>();
  for (const { decision } of decided.values()) {
    const entry = basketItem(decision);
    if (!entry) continue;
    const { supplierId } = entry.offer;
    const basket = bySupplier.get(supplierId);
    if (basket) basket.push(entry);
    else bySupplier.set(supplierId, [entry]);
  }
  return [...bySupplier]
    .map(([supplierId, entries]) => fillBasket(entries, basketTerms(supplierId, shelf.rules)))
    .filter((basket) => basket.status !== 'nothing needed');
}

async function basketDto(
  basket: SupplierBasket,
  decided: ReadonlyMap<string, Decided>,
  { currency, turns }: { readonly currency: string; readonly turns: Turns },
): Promise<BasketDto> {
  const lines: ProposalDto[] = [];
  let supplierName: string | null = null;
  for (const line of basket.lines) {
    const each = decided.get(line.itemId);
    if (!each) throw new Error('A line of an order is about nothing');
    await turns.next();
    const offer = each.item.offers.find((o) => o.presentationId === line.offerId);
    supplierName ??= offer?.supplierName ?? null;
    lines.push(proposalDto(propose(each), each, line, currency));
  }
  const { supplierId } = basket;
  return {
    supplier: supplierId === NO_SUPPLIER ? null : { id: supplierId, name: supplierName ?? '' },
    status: basket.status,
    goods: moneyOf(basket.goods),
    freight: moneyOf(basket.freight),
    total: moneyOf(basket.total),
    choices: basket.choices.map((choice) => choiceWords(choice, currency)),
    lines,
  };
}

/** The facts of a decision hold its demand, so what it asked of the forecast is not asked again. */
function propose({ decision }: Decided): OrderProposal {
  const { facts } = decision;
  return proposeOrder(facts, { random: seededRandom(seedFrom(facts.itemId)) });
}

/** Due, but nothing is ordered; without an offer, once a month of use is no longer there. */
function isStuck({ reason, yearlyUse, shelf }: OrderDecision): boolean {
  if (reason === 'stopped by a limit') return true;
  return reason === 'no offer' && shelf.position < yearlyUse / 12;
}
