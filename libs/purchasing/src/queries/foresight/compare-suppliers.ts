import { Injectable } from '@nestjs/common';
import { formatMoney, moneyFromMicro } from '#lib/measure';
import { type Actor, addDays, Clock, UnitOfWork } from '#lib/platform';
import { type ComparedOffer, compareOffers } from '../../domain/foresight/compare-prices.js';
import { type OrderOutcome, supplierRecord } from '../../domain/foresight/supplier-record.js';
import type { PlanningRules } from '../../domain/planning/plan-item.js';
import { WEEKDAYS } from '../../domain/planning/planning-settings.js';
import type {
  ComparedConsumableDto,
  SupplierComparisonDto,
  SuppliersDto,
} from '../../http/foresight/suppliers.dto.js';
import { loadPlanningRules } from '../planning-facts.js';
import {
  loadOffers,
  loadOrderOutcomes,
  loadSupplierTotals,
  type SupplierOffer,
  type SupplierTotals,
} from './supplier-facts.js';

const YEAR = 365;

type Compared = ComparedOffer<SupplierOffer>;

/** The suppliers of a practice side by side: prices, lead times, how they deliver, what they cost. */
@Injectable()
export class CompareSuppliers {
  constructor(
    private readonly uow: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async run(actor: Actor): Promise<SuppliersDto> {
    const today = this.clock.today(actor.timeZone);
    const since = addDays(today, 1 - YEAR);
    const facts = await this.uow.read(actor.practiceId, async (tx) => ({
      rules: await loadPlanningRules(tx, today),
      totals: await loadSupplierTotals(tx, today, since),
      offers: await loadOffers(tx, today, addDays(today, -YEAR)),
      orders: await loadOrderOutcomes(tx, today),
    }));
    const compared = byConsumable(facts.offers).map((offers) => compareOffers(offers));
    const names = new Map(facts.totals.map(({ id, name }) => [id, { id, name }]));
    const suppliers = facts.totals
      .filter((each) => each.active || each.deliveries > 0)
      .map((totals) => ({
        ...prices(totals.id, compared),
        ...record(totals, facts.orders.get(totals.id) ?? [], facts.rules),
        totals,
      }))
      .sort((a, b) =>
        a.totals.spend === b.totals.spend ? 0 : a.totals.spend > b.totals.spend ? -1 : 1,
      )
      .map(({ totals: _, ...supplier }) => supplier);
    const consumables = compared
      .sort((a, b) => Number(b.length > 1) - Number(a.length > 1))
      .map((offers) => consumableDto(offers, names));
    return { asOf: today, currency: actor.currency, since, suppliers, consumables };
  }
}

function byConsumable(offers: readonly SupplierOffer[]): SupplierOffer[][] {
  const found = new Map<string, SupplierOffer[]>();
  for (const offer of offers) {
    const others = found.get(offer.consumableId);
    if (others) others.push(offer);
    else found.set(offer.consumableId, [offer]);
  }
  return [...found.values()];
}

function prices(supplierId: string, compared: readonly (readonly Compared[])[]) {
  const sold = compared.flatMap((offers) => {
    const own = offers.find(({ offer }) => offer.supplierId === supplierId);
    return own ? [{ own, shared: offers.length > 1 }] : [];
  });
  const shared = sold.filter((each) => each.shared);
  return {
    consumables: sold.length,
    shared: shared.length,
    cheapest: shared.filter(({ own }) => own.cheapest).length,
  };
}

function record(
  totals: SupplierTotals,
  orders: readonly OrderOutcome[],
  rules: PlanningRules,
): Omit<SupplierComparisonDto, 'consumables' | 'shared' | 'cheapest'> {
  const terms = rules.termsOf(totals.id);
  const calendar = {
    openWeekdays: WEEKDAYS.map((day) => terms.workingDays.includes(day)),
    closedDays: new Set<number>(),
  };
  const found = supplierRecord(orders, calendar, rules.today);
  return {
    supplier: { id: totals.id, name: totals.name },
    lead: {
      stated: terms.leadDays ?? rules.settings.leadDays,
      median: found.medianDays,
      p90: found.p90Days,
      fastest: found.fastestDays,
      slowest: found.slowestDays,
      complete: found.complete,
      open: found.open,
    },
    reliability: {
      ...{ due: found.due, inTime: found.inTime, atOnce: found.atOnce },
      ...{ packs: totals.packs, damaged: totals.damaged, missing: totals.missing },
    },
    deliveries: totals.deliveries,
    spend: formatMoney(moneyFromMicro(totals.spend)),
  };
}

function consumableDto(
  offers: readonly Compared[],
  names: ReadonlyMap<string, { readonly id: string; readonly name: string }>,
): ComparedConsumableDto {
  const [first] = offers;
  if (!first) throw new Error('A consumable is compared without an offer');
  return {
    consumable: first.offer.consumable,
    offers: offers.map(({ offer, unitPrice, cheapest, aboveCheapest, change }) => ({
      supplier: names.get(offer.supplierId) ?? { id: offer.supplierId, name: '' },
      presentationId: offer.presentationId,
      presentation: offer.presentation,
      packPrice: formatMoney(moneyFromMicro(offer.packPrice)),
      unitPrice: formatMoney(unitPrice),
      paidOn: offer.paidOn,
      cheapest,
      aboveCheapest: String(aboveCheapest),
      change: change === null ? null : String(change),
    })),
  };
}
