import { type EpochDay, isOpen, type WorkCalendar } from '../forecast/calendar.js';
import type { PolicyView } from '../forecast/replay.js';
import {
  itemFacts,
  type PlannedOffer,
  type PlanningRules,
  type ShelfItem,
} from '../planning/plan-item.js';
import { inForce } from '../planning/planning-settings.js';
import {
  type BasketLine,
  type Demand,
  decideOrder,
  type ItemFacts,
  type OrderDecision,
} from '../policy/index.js';
import { suggestOrder } from '../suggest-order.js';
import { offersOn, type PastItem, type PastShelf, usualPurchase } from './past-shelf.js';
import { NEVER, ReplaySide, type Wish } from './replay-side.js';

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

/** The morning of a day on both sides. */
interface Morning {
  readonly day: EpochDay;
  readonly old: PolicyView;
  readonly offers: readonly PlannedOffer[];
}

/**
 * One item over the same days, use, lead times and lives of goods, once under the computed policy
 * and once under the rule it had. Days come in halves, because what the policy decides of several
 * items becomes one order.
 */
export class ItemReplay {
  readonly oldRule: OldRule;
  private readonly computed: ReplaySide;
  private readonly old: ReplaySide;
  private forecast: PastForecast | null = null;
  private nextLook: EpochDay;
  private today: Morning | null = null;

  constructor(
    readonly item: PastItem,
    private readonly shelf: PastShelf,
    leadOf: PlanningRules['leadOf'],
  ) {
    this.oldRule = item.typedIn.reorderAt === null ? 'when empty' : 'typed-in levels';
    this.nextLook = shelf.firstDay;
    this.computed = new ReplaySide(item, shelf, leadOf);
    this.old = new ReplaySide(item, shelf, leadOf);
  }

  /** What is known from here on. */
  learn(forecast: PastForecast): void {
    this.forecast = forecast;
  }

  /** What the policy decides on the next morning; null when it does not look. */
  morning(): OrderDecision | null {
    const view = this.computed.morning();
    const { day } = view;
    this.today = { day, old: this.old.morning(), offers: offersOn(this.item, day) };
    if (day < this.nextLook || !isOpen(this.known().calendar, day)) return null;
    const { settings, ownOf } = this.shelf.rules;
    const { reviewDays } = inForce(settings, ownOf(this.item.consumableId));
    this.nextLook = day + Math.max(reviewDays, 1);
    return decideOrder({ ...this.factsOn(view, this.today.offers), override: null });
  }

  /** Ends the day with what the computed orders hold of it; what the old rule ordered. */
  evening(line: Pick<BasketLine, 'offerId' | 'packs'> | null): Wish | null {
    const { today } = this;
    if (!today) throw new Error('An evening needs its morning');
    const { leadOf } = this.known().rules;
    const offer = today.offers.find((each) => each.presentationId === line?.offerId);
    this.computed.evening(today.day, line && offer ? { offer, packs: line.packs } : null, leadOf);
    const wish = this.oldOrder(today);
    this.old.evening(today.day, wish, leadOf);
    this.today = null;
    return wish;
  }

  result() {
    return { computed: this.computed.run.result(), old: this.old.run.result() };
  }

  private oldOrder({ day, old, offers }: Morning): Wish | null {
    if (!isOpen(this.known().calendar, day)) return null;
    const { reorderAt, reorderUpTo } = this.item.typedIn;
    if (reorderAt !== null) {
      const position = BigInt(Math.round(old.position));
      const order = suggestOrder({ position, reorderAt, reorderUpTo }, offers);
      const offer = offers.find((o) => o.presentationId === order?.offer.presentationId);
      return order && offer ? { offer, packs: order.packs } : null;
    }
    if (old.onHand >= 1 || old.onOrder > 0) return null;
    const usual = usualPurchase(this.item, day);
    const offer = offers.find((o) => o.presentationId === usual?.presentationId) ?? offers[0];
    if (!offer) return null;
    // What is owed comes on top: it leaves at once.
    const owed = BigInt(Math.ceil(old.owed / Number(offer.packContent) - 1e-9));
    return { offer, packs: BigInt(usual?.packs ?? 1) + owed };
  }

  private known(): PastForecast {
    if (!this.forecast) throw new Error('An order needs a forecast');
    return this.forecast;
  }

  /** The forecast is that of its day, moved on to today: nothing after its day is known to it. */
  private factsOn(view: PolicyView, offers: readonly PlannedOffer[]): ItemFacts {
    const { consumableId, typedIn } = this.item;
    const forecast = this.known();
    const moved = view.day - forecast.day;
    const demand: Demand = { use: (from, to) => forecast.demand.use(from + moved, to + moved) };
    const stock: Omit<ShelfItem, 'consumableId' | 'typedIn'> = {
      lots: view.lots.map((lot) => ({
        quantity: BigInt(Math.round(lot.amount)),
        lastDay: lot.expires >= NEVER ? null : lot.expires,
      })),
      owed: BigInt(Math.round(view.owed)),
      onOrder: this.computed.waiting,
      offers,
    };
    return itemFacts(
      { consumableId, typedIn, ...stock },
      { demand, step: forecast.step },
      { ...forecast.rules, today: view.day },
    );
  }
}
