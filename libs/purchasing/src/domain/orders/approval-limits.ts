import { formatMoney, type Money, subtract, ZERO_MONEY } from '#lib/measure';

export interface ApprovalFacts {
  /** Goods and freight of the order. */
  readonly total: Money;
  /** Null: orders of any size may be approved. */
  readonly approveUpTo: Money | null;
  /** Of this month, without this order; null: there is no budget. */
  readonly budgetLeft: Money | null;
  readonly currency: string;
}

export interface ApprovalLimits {
  /** By how much the order is above what may be approved, and above the budget; null: it is not. */
  readonly overLimit: Money | null;
  readonly overBudget: Money | null;
  /** A sentence for whoever may not go over; null: nothing is in the way. */
  readonly inTheWay: string | null;
}

/** What of its limits an order breaks. The limits themselves are still within. */
export function approvalLimits(facts: ApprovalFacts): ApprovalLimits {
  const { total, approveUpTo, budgetLeft, currency } = facts;
  const overLimit = above(total, approveUpTo);
  const overBudget = above(total, budgetLeft);
  const told = (amount: Money) => `${formatMoney(amount)} ${currency}`;
  const why = [
    ...(overLimit === null || approveUpTo === null
      ? []
      : [`it is ${told(overLimit)} above the ${told(approveUpTo)} that may be approved`]),
    ...(overBudget === null || budgetLeft === null
      ? []
      : [`it is ${told(overBudget)} above the ${told(budgetLeft)} left of this month's budget`]),
  ];
  const inTheWay = why.length === 0 ? null : `The owner has to approve it: ${why.join(', and ')}.`;
  return { overLimit, overBudget, inTheWay };
}

function above(total: Money, limit: Money | null): Money | null {
  if (limit === null || total <= limit) return null;
  return subtract(total, limit);
}

export interface FreightTerms {
  readonly freight: Money;
  readonly freeFreightFrom: Money | null;
}

/** What a supplier asks for the way of goods of a value. */
export function expectedFreight(goods: Money, { freight, freeFreightFrom }: FreightTerms): Money {
  return freeFreightFrom !== null && goods >= freeFreightFrom ? ZERO_MONEY : freight;
}
