import type { EpochDay } from '../forecast/calendar.js';
import type { DayUse } from '../forecast/usage-history.js';
import type { OneOffSpan } from '../planning/item-history.js';
import type { PlannedOffer, PlanningRules, ShelfItem } from '../planning/plan-item.js';
import { type SentOrder, type SupplierLead, supplierLead } from '../planning/supplier-lead.js';

/** A line of a delivery, as it was. Free samples are none. */
export interface PastDelivery {
  readonly presentationId: string;
  readonly day: EpochDay;
  readonly packs: number;
  readonly packPrice: bigint;
  readonly supplierId: string;
  readonly supplierName: string;
  /** Days that it could be used, the day of its arrival included; null when it does not expire. */
  readonly usableDays: number | null;
}

export interface PastPresentation {
  readonly presentationId: string;
  readonly name: string;
  readonly supplierId: string | null;
  readonly supplierName: string | null;
  readonly packContent: bigint;
  readonly listPrice: bigint | null;
  /** How it is sold, as it is set now. */
  readonly minimumPacks: bigint;
  readonly discount: PlannedOffer['discount'];
  readonly priceList: PlannedOffer['priceList'];
}

/** All that is known of one consumable over the time to be replayed, and before it. */
export interface PastItem {
  readonly consumableId: string;
  /** Use by day; the days are rising. */
  readonly uses: readonly DayUse[];
  readonly oneOffs: readonly OneOffSpan[];
  readonly stockedSince: EpochDay | null;
  /** The earliest first. */
  readonly deliveries: readonly PastDelivery[];
  readonly presentations: readonly PastPresentation[];
  /** What was there on the morning of the first day, with the last day of use. */
  readonly startLots: ShelfItem['lots'];
  readonly typedIn: ShelfItem['typedIn'];
}

export interface PastShelf {
  /** The first day that is replayed, and the day after the last one. */
  readonly firstDay: EpochDay;
  readonly endDay: EpochDay;
  /** Days on which the practice saw anybody. */
  readonly visitDays: readonly EpochDay[];
  /** The settings to be tried, as they are now. */
  readonly rules: Pick<PlanningRules, 'settings' | 'ownOf' | 'termsOf'>;
  /** What came of the orders to each supplier. */
  readonly sent: ReadonlyMap<string, readonly SentOrder[]>;
  /** Days that one forecast is judged over. */
  readonly horizonDays: number;
  readonly items: readonly PastItem[];
}

/** So many deliveries of a pack say how long it usually lasts and how many are usually bought. */
const RECENT = 5;

/** How planning works on a day, by what was known on the morning of it. */
export function rulesOn(shelf: PastShelf, day: EpochDay): PlanningRules {
  const { settings, termsOf } = shelf.rules;
  const leads = new Map<string | null, SupplierLead>();
  const leadOf = (supplierId: string | null) => {
    const terms = termsOf(supplierId);
    const sent = (supplierId === null ? undefined : shelf.sent.get(supplierId)) ?? [];
    const lead =
      leads.get(supplierId) ?? supplierLead(terms, settings.leadDays, knownOn(sent, day), day);
    leads.set(supplierId, lead);
    return lead;
  };
  return { ...shelf.rules, today: day, leadOf, budgetLeft: null };
}

function knownOn(sent: readonly SentOrder[], day: EpochDay): SentOrder[] {
  return sent
    .filter((order) => order.orderedOn < day)
    .map((order) => ({
      ...order,
      lines: order.lines.map((line) => ({
        ...line,
        parts: line.parts.filter((part) => part.day < day),
      })),
    }));
}

/** How it could be bought on the morning of a day, by what was known then. */
export function offersOn(item: PastItem, day: EpochDay): PlannedOffer[] {
  return item.presentations.map((presentation) => {
    const recent = recentOf(item, presentation.presentationId, day);
    const last = recent.at(-1);
    const { priceList } = presentation;
    return {
      presentationId: presentation.presentationId,
      name: presentation.name,
      supplierId: presentation.supplierId ?? last?.supplierId ?? null,
      supplierName: presentation.supplierName ?? last?.supplierName ?? null,
      packContent: presentation.packContent,
      packPrice: priceList[0]?.packPrice ?? last?.packPrice ?? presentation.listPrice,
      usableDays: middle(recent.flatMap(({ usableDays }) => usableDays ?? [])),
      minimumPacks: presentation.minimumPacks,
      discount: presentation.discount,
      priceList,
    };
  });
}

/** What was usually bought at once until a day: a pack last, and the middle number of it. */
export function usualPurchase(item: PastItem, day: EpochDay) {
  const last = item.deliveries.findLast((delivery) => delivery.day < day);
  if (!last) return null;
  const packs = recentOf(item, last.presentationId, day).map((delivery) => delivery.packs);
  return { presentationId: last.presentationId, packs: middle(packs) ?? 1 };
}

/** How long goods that come on a day last, as those did that really came nearest to it. */
export function lifeOn(item: PastItem, day: EpochDay): number | null {
  let nearest: PastDelivery | undefined;
  for (const delivery of item.deliveries) {
    const nearer = !nearest || Math.abs(delivery.day - day) < Math.abs(nearest.day - day);
    if (nearer) nearest = delivery;
  }
  return nearest?.usableDays ?? null;
}

function recentOf(item: PastItem, presentationId: string, day: EpochDay) {
  return item.deliveries
    .filter((each) => each.presentationId === presentationId && each.day < day)
    .slice(-RECENT);
}

function middle(values: readonly number[]): number | null {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.ceil(sorted.length / 2) - 1] ?? null;
}
