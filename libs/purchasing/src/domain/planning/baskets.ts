import { type Money, moneyFromMicro } from '#lib/measure';
import {
  type BasketItem,
  basketItem,
  fillBasket,
  type OrderDecision,
  type SupplierBasket,
} from '../policy/index.js';
import { basketTerms, type PlanningRules } from './plan-item.js';

/**
 * What was decided item by item, put together as one order per supplier, without those of which
 * nothing is needed. The supplier with the most urgent item comes first: that is also who gets what
 * the budget allows.
 */
export function basketsOf(
  decisions: Iterable<OrderDecision>,
  rules: PlanningRules,
): SupplierBasket[] {
  const bySupplier = new Map<string, OrderDecision[]>();
  for (const decision of decisions) {
    const supplierId = decision.plan?.offer.supplierId;
    if (supplierId === undefined) continue;
    const list = bySupplier.get(supplierId);
    if (list) list.push(decision);
    else bySupplier.set(supplierId, [decision]);
  }
  const wanted = [...bySupplier].filter(([, list]) => list.some(isNeeded));
  const entries = wanted.map(([supplierId, list]) => [supplierId, entriesOf(list)] as const);
  let left: Money | null = rules.budgetLeft;
  const baskets = entries.sort(byUrgency).map(([supplierId, items]) => {
    const basket = fillBasket(items, basketTerms(supplierId, rules, left));
    if (left !== null && basket.status === 'ready') left = moneyFromMicro(left - basket.total);
    return basket;
  });
  return baskets.filter((basket) => basket.status !== 'nothing needed');
}

function isNeeded({ limited }: OrderDecision): boolean {
  return limited.packs > 0;
}

function entriesOf(decisions: readonly OrderDecision[]): readonly BasketItem[] {
  return decisions.map(basketItem).filter((entry) => entry !== null);
}

type Entries = readonly [supplierId: string, entries: readonly BasketItem[]];

function byUrgency(a: Entries, b: Entries): number {
  const urgency = ([, entries]: Entries) =>
    Math.min(...entries.filter(({ packs }) => packs > 0n).map((entry) => entry.runsOutInDays));
  const [left, right] = [urgency(a), urgency(b)];
  if (left !== right) return left < right ? -1 : 1;
  return a[0] < b[0] ? -1 : 1;
}
