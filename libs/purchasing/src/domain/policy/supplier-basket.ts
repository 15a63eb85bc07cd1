import { type Money, moneyFromMicro } from '#lib/measure';
import { amountOf, expectedMoney } from './edge.js';
import { packsTotal, type SupplyOffer } from './offer.js';

/** Packs that could be bought earlier than needed. */
export interface ExtraPacks {
  /** 1, or the smallest order of the offer when nothing of it is ordered yet. */
  readonly packs: bigint;
  /** Days until they would be needed anyway. */
  readonly neededInDays: number;
  /** What is expected to expire of them, at their price. */
  readonly expectedWaste: Money;
}

/** One item that this supplier sends. */
export interface BasketItem {
  readonly itemId: string;
  readonly offer: SupplyOffer;
  /** Packs proposed now; 0 when it is not its turn yet. */
  readonly packs: bigint;
  /** Days until it runs out if nothing comes; decides what a short budget pays first. */
  readonly runsOutInDays: number;
  /** In the order in which they would be needed; as many as expiry and room allow. */
  readonly extras: readonly ExtraPacks[];
}

export interface SupplierTerms {
  readonly supplierId: string;
  readonly minimumOrder: Money | null;
  readonly freight: Money;
  /** Value of goods from which freight costs nothing; null when it always costs. */
  readonly freeFreightFrom: Money | null;
  readonly budget: Money | null;
  readonly carryingRate: number;
}

export interface BasketLine {
  readonly itemId: string;
  readonly offerId: string;
  readonly packs: bigint;
  /** How many of them were added to reach a limit. */
  readonly added: bigint;
  /** Null when the price is not known; such a line counts as nothing towards the limits. */
  readonly total: Money | null;
}

/** Why the basket is as it is, each with its numbers. */
export type BasketChoice =
  | { readonly choice: 'left out for the budget'; readonly itemId: string; readonly packs: bigint }
  | { readonly choice: 'filled up to the minimum order'; readonly missing: Money }
  | { readonly choice: 'minimum order not reached'; readonly missing: Money }
  | {
      readonly choice: 'filled up to free freight' | 'freight is cheaper than filling up';
      readonly missing: Money;
      readonly freight: Money;
      /** Keeping what is bought early, and what is expected to expire of it. */
      readonly costOfFilling: Money;
    }
  | { readonly choice: 'free freight not within reach'; readonly missing: Money };

export type BasketStatus = 'nothing needed' | 'ready' | 'below the minimum order';

export interface SupplierBasket {
  readonly supplierId: string;
  readonly status: BasketStatus;
  readonly lines: readonly BasketLine[];
  readonly goods: Money;
  readonly freight: Money;
  readonly total: Money;
  readonly choices: readonly BasketChoice[];
}

interface Draft {
  readonly packs: ReadonlyMap<string, bigint>;
  readonly costOfFilling: number;
}

/**
 * The order to one supplier: what is proposed, most urgent first within the budget; then filled up
 * with what is needed soonest to the minimum order; then to free freight where keeping and expected
 * waste of what is bought early cost less than the freight. Exact totals, every choice told.
 */
export function fillBasket(items: readonly BasketItem[], terms: SupplierTerms): SupplierBasket {
  if (new Set(items.map((item) => item.itemId)).size < items.length) {
    throw new RangeError('items: an item is in the basket once.');
  }
  const choices: BasketChoice[] = [];
  const ordered = [...items].sort(byUrgency);
  let draft: Draft = { packs: withinBudget(ordered, terms, choices), costOfFilling: 0 };
  const goods = () => goodsOf(ordered, draft);
  if ([...draft.packs.values()].every((packs) => packs === 0n)) {
    return basketOf(ordered, draft, terms, choices, 'nothing needed');
  }
  if (terms.minimumOrder !== null && goods() < terms.minimumOrder) {
    const missing = moneyFromMicro(terms.minimumOrder - goods());
    const filled = fillUpTo(ordered, draft, terms, terms.minimumOrder);
    if (!filled) {
      choices.push({ choice: 'minimum order not reached', missing });
      return basketOf(ordered, draft, terms, choices, 'below the minimum order');
    }
    choices.push({ choice: 'filled up to the minimum order', missing });
    draft = filled;
  }
  draft = decideFreight(ordered, draft, terms, choices);
  return basketOf(ordered, draft, terms, choices, 'ready');
}

function decideFreight(
  items: readonly BasketItem[],
  draft: Draft,
  terms: SupplierTerms,
  choices: BasketChoice[],
): Draft {
  const { freeFreightFrom, freight } = terms;
  const goods = goodsOf(items, draft);
  if (freeFreightFrom === null || goods >= freeFreightFrom || freight === 0n) return draft;
  const missing = moneyFromMicro(freeFreightFrom - goods);
  const filled = fillUpTo(items, draft, terms, freeFreightFrom);
  if (!filled) {
    choices.push({ choice: 'free freight not within reach', missing });
    return draft;
  }
  const costOfFilling = expectedMoney(filled.costOfFilling - draft.costOfFilling);
  const cheaper = costOfFilling < freight;
  const choice = cheaper ? 'filled up to free freight' : 'freight is cheaper than filling up';
  choices.push({ choice, missing, freight, costOfFilling });
  return cheaper ? filled : draft;
}

/** The packs proposed, the most urgent first, as long as the budget pays goods and freight. */
function withinBudget(
  items: readonly BasketItem[],
  terms: SupplierTerms,
  choices: BasketChoice[],
): ReadonlyMap<string, bigint> {
  const packs = new Map(items.map((item) => [item.itemId, 0n]));
  for (const item of items.filter((i) => i.packs > 0n)) {
    let taken = item.packs;
    for (; taken > 0n; taken -= 1n) {
      packs.set(item.itemId, taken);
      if (isPaid(items, packs, terms)) break;
    }
    if (taken < item.offer.minimumPacks) taken = 0n;
    packs.set(item.itemId, taken);
    if (taken < item.packs) {
      const left = item.packs - taken;
      choices.push({ choice: 'left out for the budget', itemId: item.itemId, packs: left });
    }
  }
  return packs;
}

/** Adds what is needed soonest until the goods reach the value; null if that is not possible. */
function fillUpTo(
  items: readonly BasketItem[],
  draft: Draft,
  terms: SupplierTerms,
  value: Money,
): Draft | null {
  const packs = new Map(draft.packs);
  let costOfFilling = draft.costOfFilling;
  const offered = items.flatMap((item) => item.extras.map((extra, nth) => ({ item, extra, nth })));
  offered.sort(
    (a, b) =>
      a.extra.neededInDays - b.extra.neededInDays ||
      (a.item.itemId === b.item.itemId ? a.nth - b.nth : a.item.itemId < b.item.itemId ? -1 : 1),
  );
  let goods = goodsOf(items, { packs, costOfFilling });
  for (const { item, extra, nth } of offered) {
    if (goods >= value) break;
    const had = packs.get(item.itemId) ?? 0n;
    // The extras of an item follow each other; those of an earlier filling are in it already.
    if (had !== item.packs + takenBefore(item, nth)) continue;
    const before = packsTotal(item.offer, had);
    packs.set(item.itemId, had + extra.packs);
    const after = packsTotal(item.offer, had + extra.packs);
    if (before === null || after === null || !isPaid(items, packs, terms, value)) {
      packs.set(item.itemId, had);
      continue;
    }
    goods = moneyFromMicro(goods + after - before);
    const kept = amountOf(moneyFromMicro(after - before)) * Math.max(extra.neededInDays, 0);
    costOfFilling += (kept / 365) * terms.carryingRate + amountOf(extra.expectedWaste);
  }
  return goods >= value ? { packs, costOfFilling } : null;
}

function takenBefore(item: BasketItem, nth: number): bigint {
  return item.extras.slice(0, nth).reduce((sum, extra) => sum + extra.packs, 0n);
}

function isPaid(
  items: readonly BasketItem[],
  packs: ReadonlyMap<string, bigint>,
  terms: SupplierTerms,
  aim: Money | null = null,
): boolean {
  if (terms.budget === null) return true;
  const goods = goodsOf(items, { packs, costOfFilling: 0 });
  const reached = aim !== null && aim > goods ? aim : goods;
  return goods + freightOf(reached, terms) <= terms.budget;
}

function goodsOf(items: readonly BasketItem[], draft: Draft): Money {
  const totals = items.map((item) => lineTotal(item, draft) ?? 0n);
  return moneyFromMicro(totals.reduce<bigint>((a, b) => a + b, 0n));
}

function lineTotal(item: BasketItem, draft: Draft): Money | null {
  const packs = draft.packs.get(item.itemId) ?? 0n;
  return packs === 0n ? moneyFromMicro(0n) : packsTotal(item.offer, packs);
}

/** What an order for goods of that value costs to send. */
export function freightOf(
  goods: Money,
  terms: Pick<SupplierTerms, 'freight' | 'freeFreightFrom'>,
): Money {
  const free = terms.freeFreightFrom !== null && goods >= terms.freeFreightFrom;
  return free ? moneyFromMicro(0n) : terms.freight;
}

function basketOf(
  items: readonly BasketItem[],
  draft: Draft,
  terms: SupplierTerms,
  choices: readonly BasketChoice[],
  status: BasketStatus,
): SupplierBasket {
  const goods = goodsOf(items, draft);
  const freight = status === 'nothing needed' ? moneyFromMicro(0n) : freightOf(goods, terms);
  const lines = items.flatMap((item) => {
    const packs = draft.packs.get(item.itemId) ?? 0n;
    if (packs === 0n) return [];
    const added = packs > item.packs ? packs - item.packs : 0n;
    const { offerId } = item.offer;
    return [{ itemId: item.itemId, offerId, packs, added, total: lineTotal(item, draft) }];
  });
  const total = moneyFromMicro(goods + freight);
  return { supplierId: terms.supplierId, status, lines, goods, freight, total, choices };
}

function byUrgency(a: BasketItem, b: BasketItem): number {
  if (a.runsOutInDays !== b.runsOutInDays) return a.runsOutInDays < b.runsOutInDays ? -1 : 1;
  return a.itemId < b.itemId ? -1 : 1;
}
