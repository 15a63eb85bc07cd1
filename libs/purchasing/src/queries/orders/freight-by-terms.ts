import { type Money, money } from '#lib/measure';
import type { Tx } from '#lib/platform';
import { loadSupplyTerms } from '../../db/supply-terms.js';
import { expectedFreight } from '../../domain/orders/approval-limits.js';
import { PLAIN_TERMS } from '../../domain/planning/planning-settings.js';

/** What the supplier's terms say of the way of these goods. */
export async function freightByTerms(tx: Tx, supplierId: string, goods: Money): Promise<Money> {
  const { freight, freeFreightFrom } =
    (await loadSupplyTerms(tx, supplierId)).get(supplierId) ?? PLAIN_TERMS;
  return expectedFreight(goods, {
    freight: money(freight),
    freeFreightFrom: freeFreightFrom === null ? null : money(freeFreightFrom),
  });
}
