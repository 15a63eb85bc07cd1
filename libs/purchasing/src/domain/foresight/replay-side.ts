import type { EpochDay } from '../forecast/calendar.js';
import { type PolicyView, ReplayRun } from '../forecast/replay.js';
import { seededRandom, seedFrom } from '../forecast/seeded-random.js';
import {
  NO_SUPPLIER,
  type Outstanding,
  type PlannedOffer,
  type PlanningRules,
} from '../planning/plan-item.js';
import { leadFrom } from '../planning/supplier-lead.js';
import { leadTimeWithin } from '../policy/demand.js';
import { drawLeadTime } from '../policy/simulate.js';
import { lifeOn, type PastItem, type PastShelf } from './past-shelf.js';

/** Later than any day that is replayed. */
export const NEVER: EpochDay = 10_000_000;

/** What a rule wants on a morning. */
export interface Wish {
  readonly offer: PlannedOffer;
  readonly packs: bigint;
}

type Ordered = Outstanding & { readonly arrives: EpochDay };

/** One item under one rule, half a day at a time. Amounts are whole millionths. */
export class ReplaySide {
  readonly run: ReplayRun;
  private orders: readonly Ordered[] = [];
  private next: Ordered | null = null;

  constructor(
    item: PastItem,
    shelf: PastShelf,
    /** How long deliveries really took, as far as it is known today. */
    private readonly leadOf: PlanningRules['leadOf'],
  ) {
    this.run = new ReplayRun({
      firstDay: shelf.firstDay,
      demand: demandOf(item, shelf),
      lots: item.startLots.map((lot) => ({
        expires: lot.lastDay ?? NEVER,
        amount: Number(lot.quantity),
      })),
      unmet: 'owed',
      deliver: ({ amount }) => {
        if (!this.next) throw new Error('Something was ordered of no offer');
        return [{ day: this.next.arrives, amount }];
      },
      expires: (arrival) => {
        const life = lifeOn(item, arrival);
        return life === null ? NEVER : arrival + life - 1;
      },
      unitValue: 0,
    });
  }

  morning(): PolicyView {
    const view = this.run.morning();
    if (!view) throw new Error('There is no day left');
    this.orders = this.orders.filter((order) => order.arrives > view.day);
    return view;
  }

  /** What is on its way on this morning. */
  get waiting(): readonly Outstanding[] {
    return this.orders;
  }

  /** `known` is how long deliveries take by what was known then. */
  evening(day: EpochDay, wish: Wish | null, known: PlanningRules['leadOf']): void {
    if (!wish) {
      this.run.evening(0);
      return;
    }
    const quantity = wish.offer.packContent * wish.packs;
    this.next = this.ordered(wish.offer, { day, quantity, known });
    this.orders = [...this.orders, this.next];
    this.run.evening(Number(quantity));
    this.next = null;
  }

  /** What is ordered of a supplier on one day comes together, and at the same time on both sides. */
  private ordered(
    { supplierId, presentationId }: PlannedOffer,
    order: {
      readonly day: EpochDay;
      readonly quantity: bigint;
      readonly known: PlanningRules['leadOf'];
    },
  ): Ordered {
    const { day, quantity, known } = order;
    const random = seededRandom(seedFrom(`${supplierId ?? NO_SUPPLIER} ${day}`));
    return {
      ...{ supplierId: supplierId ?? NO_SUPPLIER, presentationId, orderedOn: day, quantity },
      arrives: day + drawLeadTime(leadFrom(this.leadOf(supplierId), day), random()),
      expectedOn: day + leadTimeWithin(leadFrom(known(supplierId), day), 0.5),
    };
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
