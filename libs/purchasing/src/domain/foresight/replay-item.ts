import { type EpochDay, isOpen, type WorkCalendar } from '../forecast/calendar.js';
import { type PolicyView, ReplayRun } from '../forecast/replay.js';
import { seededRandom, seedFrom } from '../forecast/seeded-random.js';
import {
  itemFacts,
  NO_SUPPLIER,
  type Outstanding,
  type PlannedOffer,
  type PlanningRules,
  type ShelfItem,
} from '../planning/plan-item.js';
import { inForce } from '../planning/planning-settings.js';
import { leadFrom } from '../planning/supplier-lead.js';
import { leadTimeWithin } from '../policy/demand.js';
import { type Demand, decideOrder, type ItemFacts } from '../policy/index.js';
import { drawLeadTime } from '../policy/simulate.js';
import { suggestOrder } from '../suggest-order.js';
import { lifeOn, offersOn, type PastItem, type PastShelf, usualPurchase } from './past-shelf.js';

/** By which rule the practice ordered so far: its typed-in levels, or when nothing was left. */
export type OldRule = 'typed-in levels' | 'when empty';

/** What was forecast on a day from all that was known before it. */
export interface PastForecast {
  readonly day: EpochDay;
  readonly demand: Demand;
  readonly step: bigint;
  readonly calendar: WorkCalendar;
  /** As planning worked on that day. */
  readonly rules: PlanningRules;
}

/** Later than any day that is replayed. */
const NEVER: EpochDay = 10_000_000;

type Ordered = Outstanding & { readonly arrives: EpochDay };

interface Wish {
  readonly offer: PlannedOffer;
  readonly packs: bigint;
}

/**
 * One item over the same days, use, lead times and lives of goods, once under the computed policy
 * and once under the rule it had. Amounts are whole millionths.
 */
export class ItemReplay {
  readonly oldRule: OldRule;
  readonly computed: ReplayRun;
  readonly old: ReplayRun;
  private forecast: PastForecast | null = null;
  private nextLook: EpochDay;
  private looked = false;

  constructor(
    readonly item: PastItem,
    private readonly shelf: PastShelf,
    /** How long deliveries really took, as far as it is known today. */
    private readonly leadOf: PlanningRules['leadOf'],
  ) {
    this.oldRule = item.typedIn.reorderAt === null ? 'when empty' : 'typed-in levels';
    this.nextLook = shelf.firstDay;
    this.computed = this.run((view, waiting) => this.computedOrder(view, waiting));
    this.old = this.run((view) => this.oldOrder(view));
  }

  /** Follows both for some days; stops for a moment after each order that was thought about. */
  *follow(forecast: PastForecast, days: number): Generator<void, void> {
    this.forecast = forecast;
    for (let n = 0; n < days; n += 1) {
      this.looked = false;
      this.computed.next();
      this.old.next();
      if (this.looked) yield;
    }
    this.forecast = null;
  }

  private run(wish: (view: PolicyView, waiting: readonly Ordered[]) => Wish | null): ReplayRun {
    const { item, shelf } = this;
    let waiting: Ordered[] = [];
    let chosen: PlannedOffer | null = null;
    return new ReplayRun({
      firstDay: shelf.firstDay,
      demand: demandOf(item, shelf),
      lots: item.startLots.map((lot) => ({
        expires: lot.lastDay ?? NEVER,
        amount: Number(lot.quantity),
      })),
      unmet: 'owed',
      policy: (view) => {
        waiting = waiting.filter((order) => order.arrives > view.day);
        const wanted = wish(view, waiting);
        chosen = wanted?.offer ?? null;
        return wanted ? Number(wanted.offer.packContent * wanted.packs) : 0;
      },
      deliver: ({ day, amount }) => {
        if (!chosen) throw new Error('Something was ordered of no offer');
        const order = this.ordered(chosen, day, amount);
        waiting.push(order);
        return [{ day: order.arrives, amount }];
      },
      expires: (arrival) => {
        const life = lifeOn(item, arrival);
        return life === null ? NEVER : arrival + life - 1;
      },
      unitValue: 0,
    });
  }

  /** Orders of the same day meet the same luck on both sides. */
  private ordered({ supplierId, presentationId }: PlannedOffer, day: EpochDay, amount: number) {
    const random = seededRandom(seedFrom(`${this.item.consumableId} ${day}`));
    const arrives = day + drawLeadTime(leadFrom(this.leadOf(supplierId), day), random());
    const known = leadFrom(this.known().rules.leadOf(supplierId), day);
    return {
      ...{ supplierId: supplierId ?? NO_SUPPLIER, presentationId, orderedOn: day, arrives },
      quantity: BigInt(Math.round(amount)),
      expectedOn: day + leadTimeWithin(known, 0.5),
    } satisfies Ordered;
  }

  private computedOrder(view: PolicyView, waiting: readonly Ordered[]): Wish | null {
    const { day } = view;
    if (day < this.nextLook || !this.isOpen(day)) return null;
    const { consumableId } = this.item;
    const { settings, ownOf } = this.shelf.rules;
    this.nextLook = day + Math.max(inForce(settings, ownOf(consumableId)).reviewDays, 1);
    this.looked = true;
    const lots = view.lots.map((lot) => ({
      quantity: BigInt(Math.round(lot.amount)),
      lastDay: lot.expires >= NEVER ? null : lot.expires,
    }));
    const owed = BigInt(Math.round(view.owed));
    const offers = offersOn(this.item, day);
    const facts = this.factsOn(day, { lots, owed, offers, onOrder: waiting });
    const { plan, limited } = decideOrder({ ...facts, override: null });
    const offer = offers.find((each) => each.presentationId === plan?.offer.offerId);
    return offer && limited.packs > 0 ? { offer, packs: BigInt(limited.packs) } : null;
  }

  private oldOrder(view: PolicyView): Wish | null {
    const { day } = view;
    if (!this.isOpen(day)) return null;
    const offers = offersOn(this.item, day);
    const { reorderAt, reorderUpTo } = this.item.typedIn;
    if (reorderAt !== null) {
      const position = BigInt(Math.round(view.position));
      const order = suggestOrder({ position, reorderAt, reorderUpTo }, offers);
      const offer = offers.find((o) => o.presentationId === order?.offer.presentationId);
      return order && offer ? { offer, packs: order.packs } : null;
    }
    if (view.onHand >= 1 || view.onOrder > 0) return null;
    const usual = usualPurchase(this.item, day);
    const offer = offers.find((o) => o.presentationId === usual?.presentationId) ?? offers[0];
    if (!offer) return null;
    // What is owed comes on top: it leaves at once.
    const owed = BigInt(Math.ceil(view.owed / Number(offer.packContent) - 1e-9));
    return { offer, packs: BigInt(usual?.packs ?? 1) + owed };
  }

  private isOpen(day: EpochDay): boolean {
    return isOpen(this.known().calendar, day);
  }

  private known(): PastForecast {
    if (!this.forecast) throw new Error('An order needs a forecast');
    return this.forecast;
  }

  /** The forecast is that of its day, moved on to today: nothing after its day is known to it. */
  private factsOn(day: EpochDay, stock: Omit<ShelfItem, 'consumableId' | 'typedIn'>): ItemFacts {
    const { consumableId, typedIn } = this.item;
    const forecast = this.known();
    const moved = day - forecast.day;
    const demand: Demand = { use: (from, to) => forecast.demand.use(from + moved, to + moved) };
    return itemFacts(
      { consumableId, typedIn, ...stock },
      { demand, step: forecast.step },
      { ...forecast.rules, today: day },
    );
  }
}

function demandOf(item: PastItem, { firstDay, endDay }: PastShelf): Float64Array {
  const demand = new Float64Array(endDay - firstDay);
  for (const { day, issued, shortfall } of item.uses) {
    if (day < firstDay || day >= endDay) continue;
    demand[day - firstDay] = (demand[day - firstDay] ?? 0) + Number(issued + (shortfall ?? 0n));
  }
  return demand;
}
