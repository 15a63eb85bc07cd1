import type { EpochDay } from './calendar.js';

/** What is on the shelf: one lot, in the unit of the demand. */
export interface ShelfLot {
  readonly expires: EpochDay;
  readonly amount: number;
}

export interface Arrival {
  readonly day: EpochDay;
  readonly amount: number;
}

/** What a policy may look at in the morning of a day, before any use. Nothing of the day itself. */
export interface PolicyView {
  readonly day: EpochDay;
  /** Demand of each day before this one. */
  readonly past: Float64Array;
  readonly lots: readonly ShelfLot[];
  readonly onHand: number;
  readonly onOrder: number;
  /** Demand that is still owed; 0 where unmet demand is lost. */
  readonly owed: number;
  /** On hand + on order - owed. */
  readonly position: number;
}

export interface ReplayInput {
  readonly firstDay: EpochDay;
  /** Demand of each day, at least 0. */
  readonly demand: Float64Array;
  readonly lots: readonly ShelfLot[];
  readonly unmet: 'lost' | 'owed';
  /** How much to order; 0 for nothing. Asked every day. */
  policy(view: PolicyView): number;
  /** When an order arrives; its parts add up to what was ordered. */
  deliver(order: { readonly day: EpochDay; readonly amount: number }): readonly Arrival[];
  /** The last day on which goods that arrive on a day may be used. */
  expires(arrival: EpochDay): EpochDay;
  /** What a unit of the amount is worth. */
  readonly unitValue: number;
}

export interface DayOfReplay {
  readonly used: number;
  readonly unmet: number;
  readonly wasted: number;
  readonly ordered: number;
  readonly arrived: number;
  /** At the end of the day. */
  readonly onHand: number;
}

export interface ReplayResult {
  /** Days on which not all of the demand was met. */
  readonly stockOutDays: number;
  readonly daysWithDemand: number;
  readonly demanded: number;
  readonly used: number;
  /** Demand not met on its day. */
  readonly unmet: number;
  readonly wasted: number;
  readonly arrived: number;
  readonly orders: number;
  readonly ordered: number;
  /** Means over days, at the end of each. */
  readonly averageOnHand: number;
  readonly averageValue: number;
  readonly endOnHand: number;
  readonly days: readonly DayOfReplay[];
}

/**
 * Replays demand day by day: in the morning what is expired goes and what is due arrives, the
 * policy orders (a lead time of 0 arrives at once), then demand takes what expires first. Goods are
 * usable through their last day. Throws RangeError naming what is wrong with input, order or
 * delivery.
 */
export function replay(input: ReplayInput): ReplayResult {
  const run = new ReplayRun(input);
  for (let view = run.morning(); view !== null; view = run.morning()) {
    run.evening(input.policy(view));
  }
  return run.result();
}

/** The same, half a day at a time: for orders that are put together over several items. */
export class ReplayRun {
  private readonly shelf: Shelf;
  private readonly days: DayOfReplay[] = [];

  constructor(private readonly input: Omit<ReplayInput, 'policy'>) {
    this.shelf = new Shelf(input);
  }

  /** What is there on the next morning, or null after the last day. */
  morning(): PolicyView | null {
    if (this.days.length >= this.input.demand.length) return null;
    return this.shelf.morning(this.days.length);
  }

  /** The rest of that day, with what was ordered in its morning; 0 for nothing. */
  evening(ordered: number): DayOfReplay {
    const day = this.shelf.evening(this.days.length, ordered);
    this.days.push(day);
    return day;
  }

  /** Of the days so far. */
  result(): ReplayResult {
    return summary(this.input, this.days);
  }
}

function summary(input: Omit<ReplayInput, 'policy'>, days: readonly DayOfReplay[]): ReplayResult {
  const total = (value: (day: DayOfReplay) => number) =>
    days.reduce((sum, day) => sum + value(day), 0);
  const count = (test: (day: DayOfReplay) => boolean) => days.filter(test).length;
  const averageOnHand = days.length === 0 ? 0 : total((d) => d.onHand) / days.length;
  return {
    stockOutDays: count((d) => d.unmet > 0),
    daysWithDemand: input.demand.reduce((n, y) => n + (y > 0 ? 1 : 0), 0),
    demanded: input.demand.reduce((sum, y) => sum + y, 0),
    used: total((d) => d.used),
    unmet: total((d) => d.unmet),
    wasted: total((d) => d.wasted),
    arrived: total((d) => d.arrived),
    orders: count((d) => d.ordered > 0),
    ordered: total((d) => d.ordered),
    averageOnHand,
    averageValue: averageOnHand * input.unitValue,
    endOnHand: days.at(-1)?.onHand ?? input.lots.reduce((sum, lot) => sum + lot.amount, 0),
    days,
  };
}

/** Amounts below this share of a unit are rounding, not goods. */
const DUST = 1e-9;

class Shelf {
  private lots: { expires: EpochDay; amount: number }[] = [];
  private readonly due = new Map<EpochDay, number>();
  private onOrder = 0;
  private owed = 0;
  private wasted = 0;
  private arrived = 0;

  constructor(private readonly input: Omit<ReplayInput, 'policy'>) {
    for (const { expires, amount } of input.lots) {
      checkAmount('amount of a lot', amount);
      this.put(expires, amount);
    }
  }

  morning(t: number): PolicyView {
    const day = this.input.firstDay + t;
    this.wasted = this.throwAway(day);
    this.arrived = this.receive(day);
    const onHand = this.onHand();
    return {
      day,
      past: this.input.demand.subarray(0, t),
      lots: this.lots,
      onHand,
      onOrder: this.onOrder,
      owed: this.owed,
      position: onHand + this.onOrder - this.owed,
    };
  }

  evening(t: number, ordered: number): DayOfReplay {
    const day = this.input.firstDay + t;
    const demand = this.input.demand[t] ?? 0;
    checkAmount(`demand of day ${t + 1}`, demand);
    this.order(day, ordered);
    const arrived = this.arrived + this.receive(day);
    const { wasted } = this;
    const settled = this.take(this.owed);
    this.owed -= settled;
    const now = this.take(demand);
    const unmet = demand - now < DUST ? 0 : demand - now;
    if (this.input.unmet === 'owed') this.owed += unmet;
    return { used: settled + now, unmet, wasted, ordered, arrived, onHand: this.onHand() };
  }

  private throwAway(day: EpochDay): number {
    let wasted = 0;
    while (this.lots[0] !== undefined && this.lots[0].expires < day) {
      wasted += this.lots.shift()?.amount ?? 0;
    }
    return wasted;
  }

  private receive(day: EpochDay): number {
    const amount = this.due.get(day) ?? 0;
    if (amount === 0) return 0;
    this.due.delete(day);
    this.onOrder -= amount;
    const expires = this.input.expires(day);
    if (!Number.isInteger(expires)) throw new RangeError(`expires must be a day, not ${expires}`);
    // What comes expired is thrown away and never used.
    if (expires < day) this.wasted += amount;
    else this.put(expires, amount);
    return amount;
  }

  private order(day: EpochDay, amount: number): void {
    checkAmount('order', amount);
    if (amount === 0) return;
    let sum = 0;
    for (const part of this.input.deliver({ day, amount })) {
      checkAmount('part of a delivery', part.amount);
      if (!(Number.isInteger(part.day) && part.day >= day)) {
        throw new RangeError('a delivery must not be before its order');
      }
      this.due.set(part.day, (this.due.get(part.day) ?? 0) + part.amount);
      sum += part.amount;
    }
    if (Math.abs(sum - amount) > DUST * Math.max(1, amount)) {
      throw new RangeError('the parts of a delivery must add up to the order');
    }
    this.onOrder += sum;
  }

  /** First expired, first out; equal dates in the order of arrival. */
  private take(wanted: number): number {
    let left = wanted;
    while (left > 0 && this.lots[0] !== undefined) {
      const lot = this.lots[0];
      const taken = Math.min(lot.amount, left);
      lot.amount -= taken;
      left -= taken;
      if (lot.amount < DUST) this.lots.shift();
    }
    return wanted - left;
  }

  private put(expires: EpochDay, amount: number): void {
    if (amount === 0) return;
    let at = this.lots.length;
    while (at > 0 && (this.lots[at - 1]?.expires ?? 0) > expires) at -= 1;
    this.lots.splice(at, 0, { expires, amount });
  }

  private onHand(): number {
    return this.lots.reduce((sum, lot) => sum + lot.amount, 0);
  }
}

function checkAmount(name: string, amount: number): void {
  if (!(amount >= 0 && Number.isFinite(amount))) {
    throw new RangeError(`${name} must be a number of at least 0, not ${amount}`);
  }
}
