import { type Money, money, moneyFromMicro, quantity, quantityFromMicro } from '#lib/measure';
import type { EpochDay } from '../forecast/calendar.js';
import type {
  Demand,
  ItemFacts,
  LeadTime,
  OpenOrder,
  PriceTier,
  SupplierTerms,
  SupplyOffer,
} from '../policy/index.js';
import { cheapest, type Offer, type ReorderLevels } from '../suggest-order.js';
import {
  type ConsumablePlanning,
  type Discount,
  inForce,
  type PlanningSettings,
  type SupplyTerms,
} from './planning-settings.js';
import { arrivalOf, leadFrom, type SupplierLead } from './supplier-lead.js';

/** A way to buy it; `supplierId` is null when nobody ever said or sent. */
export interface PlannedOffer extends Offer {
  readonly supplierId: string | null;
  /** Days that deliveries could usually be used; null when they do not expire. */
  readonly usableDays: number | null;
  readonly minimumPacks: bigint;
  readonly discount: Discount;
  /** From 1 pack upwards; without a list the pack price holds for any number. */
  readonly priceList: readonly PriceTier[];
}

/** What an order that was sent still has to bring, in millionths. */
export interface Outstanding {
  readonly supplierId: string;
  readonly presentationId: string;
  readonly quantity: bigint;
  readonly orderedOn: EpochDay;
  readonly expectedOn: EpochDay;
}

/** What is there and owed of a consumable, and how it is bought. */
export interface ShelfItem {
  readonly consumableId: string;
  /** Usable lots in millionths, with the last day; null when they do not expire. */
  readonly lots: readonly { readonly quantity: bigint; readonly lastDay: EpochDay | null }[];
  readonly owed: bigint;
  readonly onOrder: readonly Outstanding[];
  readonly offers: readonly PlannedOffer[];
  /** The levels typed in at the consumable, for comparison. */
  readonly typedIn: { readonly reorderAt: bigint | null; readonly reorderUpTo: bigint | null };
}

/** How the practice plans. */
export interface PlanningRules {
  readonly today: EpochDay;
  readonly settings: PlanningSettings;
  ownOf(consumableId: string): ConsumablePlanning;
  termsOf(supplierId: string | null): SupplyTerms;
  leadOf(supplierId: string | null): SupplierLead;
  /** What the month's budget still allows; null without a budget. */
  readonly budgetLeft: Money | null;
}

/** Suppliers have ids; what nobody says the supplier of goes into one basket of its own. */
export const NO_SUPPLIER = '';

/** Everything that the order of an item depends on. `step` is the grid step of its forecast. */
export function itemFacts(
  item: ShelfItem,
  forecast: { readonly demand: Demand; readonly step: bigint },
  rules: PlanningRules,
): ItemFacts {
  const own = rules.ownOf(item.consumableId);
  const settings = inForce(rules.settings, own);
  const [reorderAt, orderUpTo] = [asQuantity(own.reorderAt), asQuantity(own.orderUpTo)];
  const supplier = cheapest(item.offers) as PlannedOffer | undefined;
  return {
    itemId: item.consumableId,
    countSize: quantityFromMicro(forecast.step),
    demand: forecast.demand,
    reviewDays: settings.reviewDays,
    lots: item.lots.map((lot) => ({
      quantity: quantityFromMicro(lot.quantity),
      usableDays: lot.lastDay === null ? null : lot.lastDay - rules.today + 1,
    })),
    openOrders: item.onOrder.map((order) => openOrder(order, item.offers, rules)),
    openShortfall: quantityFromMicro(item.owed),
    offers: supplyOffers(item.offers, rules),
    orderCost: lineCost(rules, supplier?.supplierId ?? null),
    carryingRate: Number(settings.carryingRate),
    target: { measure: settings.serviceMeasure, level: Number(settings.serviceLevel) },
    override: reorderAt === null && orderUpTo === null ? null : { reorderAt, orderUpTo },
    limits: {
      shelfRoom: asQuantity(own.shelfRoom),
      // The month's budget is shared out where the orders are put together.
      budget: null,
      expiryCertainty: Number(settings.expiryCertainty),
    },
  };
}

function openOrder(
  order: Outstanding,
  offers: readonly PlannedOffer[],
  rules: PlanningRules,
): OpenOrder {
  const offer = offers.find((each) => each.presentationId === order.presentationId);
  return {
    quantity: quantityFromMicro(order.quantity),
    arrival: arrivalOf(rules.leadOf(order.supplierId), order, rules.today),
    usableDaysOnArrival: offer?.usableDays ?? null,
  };
}

function supplyOffers(offers: readonly PlannedOffer[], rules: PlanningRules): SupplyOffer[] {
  const leads = new Map<string | null, LeadTime>();
  return offers.map((offer) => {
    const { supplierId } = offer;
    const lead = leads.get(supplierId) ?? leadFrom(rules.leadOf(supplierId), rules.today);
    leads.set(supplierId, lead);
    return {
      offerId: offer.presentationId,
      supplierId: supplierId ?? NO_SUPPLIER,
      packContent: quantityFromMicro(offer.packContent),
      tiers: tiersOf(offer),
      discount: offer.discount,
      minimumPacks: offer.minimumPacks,
      usableDaysOnArrival: offer.usableDays,
      leadTime: lead,
    };
  });
}

/** Its prices from so many packs; empty when nobody knows any. */
export function tiersOf({ priceList, packPrice }: PlannedOffer): readonly PriceTier[] {
  if (priceList.length > 0 || packPrice === null) return priceList;
  return [{ fromPacks: 1n, packPrice: moneyFromMicro(packPrice) }];
}

function lineCost(rules: PlanningRules, supplierId: string | null): Money {
  return money(rules.termsOf(supplierId).orderCost ?? rules.settings.orderCost);
}

function asQuantity(text: string | null) {
  return text === null ? null : quantity(text);
}

/** The terms of a supplier as its basket needs them; `budget` is what is left for it, null: any. */
export function basketTerms(
  supplierId: string,
  rules: PlanningRules,
  budget: Money | null,
): SupplierTerms {
  const terms = rules.termsOf(supplierId === NO_SUPPLIER ? null : supplierId);
  const asMoney = (text: string | null) => (text === null ? null : money(text));
  return {
    supplierId,
    minimumOrder: asMoney(terms.minimumOrder),
    freight: money(terms.freight),
    freeFreightFrom: asMoney(terms.freeFreightFrom),
    budget,
    carryingRate: Number(rules.settings.carryingRate),
  };
}

/** The typed-in levels with the position they would be compared with; null without any. */
export function typedInLevels(item: ShelfItem): ReorderLevels | null {
  const { reorderAt, reorderUpTo } = item.typedIn;
  if (reorderAt === null) return null;
  const onHand = item.lots.reduce((sum, lot) => sum + lot.quantity, 0n);
  const coming = item.onOrder.reduce((sum, order) => sum + order.quantity, 0n);
  return { position: onHand + coming - item.owed, reorderAt, reorderUpTo };
}
