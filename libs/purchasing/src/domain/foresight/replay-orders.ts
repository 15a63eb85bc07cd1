import { type Money, moneyFromMicro } from '#lib/measure';
import { basketsOf } from '../planning/baskets.js';
import { basketTerms, NO_SUPPLIER, type PlanningRules, tiersOf } from '../planning/plan-item.js';
import { type BasketLine, freightOf, type OrderDecision, packsTotal } from '../policy/index.js';
import type { Wish } from './replay-side.js';

/** Orders sent, each with its lines together, and what sending them cost. */
export interface Sending {
  readonly sent: number;
  readonly freight: Money;
}

export interface SendingOfBoth {
  readonly computed: Sending;
  readonly old: Sending;
}

export const NOTHING_SENT: Sending = { sent: 0, freight: moneyFromMicro(0n) };

/**
 * What the decisions of a morning become: one order per supplier, put together as the proposals
 * are, filled up to its smallest order and to free freight where that is cheaper. An order that
 * does not reach its minimum is not sent. Without a budget no supplier has to wait for another, so
 * each is a step of its own.
 */
export function* ordersOf(
  decisions: readonly OrderDecision[],
  rules: PlanningRules,
): Generator<void, { readonly lines: ReadonlyMap<string, BasketLine>; readonly sending: Sending }> {
  const lines = new Map<string, BasketLine>();
  let sending = NOTHING_SENT;
  for (const ofOne of bySupplier(decisions)) {
    for (const basket of basketsOf(ofOne, { ...rules, budgetLeft: null })) {
      if (basket.status !== 'ready') continue;
      for (const line of basket.lines) lines.set(line.itemId, line);
      sending = addSending(sending, { sent: 1, freight: basket.freight });
    }
    yield;
  }
  return { lines, sending };
}

function bySupplier(decisions: readonly OrderDecision[]): Iterable<readonly OrderDecision[]> {
  const found = new Map<string, OrderDecision[]>();
  for (const decision of decisions) {
    const supplierId = decision.plan?.offer.supplierId ?? NO_SUPPLIER;
    found.set(supplierId, [...(found.get(supplierId) ?? []), decision]);
  }
  return found.values();
}

/** What was ordered by the old rule on a day: sent together too, whatever a supplier's minimum. */
export function sendingOf(wishes: readonly Wish[], rules: PlanningRules): Sending {
  const goods = new Map<string, bigint>();
  for (const { offer, packs } of wishes) {
    const supplierId = offer.supplierId ?? NO_SUPPLIER;
    const price = packsTotal({ tiers: tiersOf(offer), discount: offer.discount }, packs) ?? 0n;
    goods.set(supplierId, (goods.get(supplierId) ?? 0n) + price);
  }
  const freight = [...goods].map(([supplierId, value]) =>
    freightOf(moneyFromMicro(value), basketTerms(supplierId, rules, null)),
  );
  return { sent: goods.size, freight: sumOf(freight) };
}

/** Both together. */
export function addSending(one: Sending, other: Sending): Sending {
  return { sent: one.sent + other.sent, freight: sumOf([one.freight, other.freight]) };
}

function sumOf(values: readonly Money[]): Money {
  return moneyFromMicro(values.reduce<bigint>((sum, value) => sum + value, 0n));
}
