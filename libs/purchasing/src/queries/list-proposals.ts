import { Injectable } from '@nestjs/common';
import { formatMoney, type Money, money } from '#lib/measure';
import type { Actor } from '#lib/platform';
import { nameOf } from '../domain/alert.js';
import { basketsOf } from '../domain/planning/baskets.js';
import { NO_SUPPLIER } from '../domain/planning/plan-item.js';
import { choiceWords } from '../domain/planning/proposal-words.js';
import type { BasketChoice, OrderDecision, SupplierBasket } from '../domain/policy/index.js';
import type { BasketDto, ProposalDto, ProposalListDto, ShapingDto } from '../http/proposals.dto.js';
import { type Decided, type DecidedShelf, DecideShelf } from './decide-shelf.js';
import { proposalOf } from './proposal-view.js';
import { Turns } from './take-turns.js';

/**
 * What to order today: one order per supplier of what is at or below its reorder point, and of what
 * fills it up, each line with the numbers behind it.
 */
@Injectable()
export class ListProposals {
  constructor(private readonly decideShelf: DecideShelf) {}

  async run(actor: Actor): Promise<ProposalListDto> {
    const known = await this.decideShelf.run(actor);
    const turns = new Turns();
    const orders: BasketDto[] = [];
    const ordered = new Set<string>();
    const decisions = [...known.items.values()].map(({ decision }) => decision);
    for (const basket of basketsOf(decisions, known.shelf.rules)) {
      orders.push(await basketDto(basket, known, turns));
      for (const line of basket.lines) ordered.add(line.itemId);
    }
    const stuck: ProposalDto[] = [];
    for (const each of known.items.values()) {
      if (!isStuck(each, ordered)) continue;
      await turns.next();
      stuck.push(proposalOf(each, null, known));
    }
    const { today: asOf, currency, items } = known;
    const left = known.shelf.rules.budgetLeft;
    return {
      ...{ asOf, currency, looked: items.size, orders, stuck },
      budgetLeft: left === null ? null : formatMoney(left),
    };
  }
}

async function basketDto(
  basket: SupplierBasket,
  known: DecidedShelf,
  turns: Turns,
): Promise<BasketDto> {
  const { currency, items, shelf } = known;
  const lines: ProposalDto[] = [];
  let supplierName: string | null = null;
  for (const line of basket.lines) {
    const each = items.get(line.itemId);
    if (!each) throw new Error('A line of an order is about nothing');
    await turns.next();
    const offer = each.item.offers.find((o) => o.presentationId === line.offerId);
    supplierName ??= offer?.supplierName ?? null;
    lines.push(proposalOf(each, line, known));
  }
  const { supplierId } = basket;
  const terms = shelf.rules.termsOf(supplierId === NO_SUPPLIER ? null : supplierId);
  const told = (text: string | null) => (text === null ? null : formatMoney(money(text)));
  const nameById = (id: string) => {
    const item = items.get(id)?.item;
    return item === undefined ? '' : nameOf(item.consumable);
  };
  return {
    supplier: supplierId === NO_SUPPLIER ? null : { id: supplierId, name: supplierName ?? '' },
    status: basket.status,
    goods: formatMoney(basket.goods),
    freight: formatMoney(basket.freight),
    total: formatMoney(basket.total),
    minimumOrder: told(terms.minimumOrder),
    usualFreight: formatMoney(money(terms.freight)),
    freeFreightFrom: told(terms.freeFreightFrom),
    choices: basket.choices.map((choice) => choiceWords(choice, currency, nameById)),
    shaped: basket.choices.map((choice) => shapingDto(choice, items)),
    lines,
  };
}

function shapingDto(choice: BasketChoice, items: DecidedShelf['items']): ShapingDto {
  const money = (amount: Money | undefined) => (amount === undefined ? null : formatMoney(amount));
  const plain = {
    consumable: null,
    packs: null,
    missing: null,
    freight: null,
    costOfFilling: null,
  };
  if (choice.choice === 'left out for the budget') {
    const consumable = items.get(choice.itemId)?.item.consumable ?? null;
    return { ...plain, choice: choice.choice, consumable, packs: Number(choice.packs) };
  }
  return {
    ...{ ...plain, choice: choice.choice, missing: money(choice.missing) },
    freight: 'freight' in choice ? money(choice.freight) : null,
    costOfFilling: 'costOfFilling' in choice ? money(choice.costOfFilling) : null,
  };
}

/** Due, but nothing is ordered; without an offer, once a month of use is no longer there. */
function isStuck({ item, decision }: Decided, ordered: ReadonlySet<string>): boolean {
  const { reason, yearlyUse, shelf }: OrderDecision = decision;
  if (reason === 'stopped by a limit') return true;
  if (reason === 'no offer') return shelf.position < yearlyUse / 12;
  return reason === 'at or below the reorder point' && !ordered.has(item.consumableId);
}
