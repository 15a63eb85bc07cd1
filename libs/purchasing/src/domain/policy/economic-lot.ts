/** What decides how much is ordered at a time; all for the same year, in counts and currency. */
export interface LotCosts {
  /** Use in a year, in counts; not negative. */
  readonly yearlyUse: number;
  /** What one order costs, whatever its size. */
  readonly orderCost: number;
  /** What it costs to keep one count for a year; more than zero. */
  readonly holdingCost: number;
}

/** The economic order quantity, sqrt(2KD/h) (Harris 1913). RangeError for a bad cost. */
export function economicLot(costs: LotCosts): number {
  refuse(costs);
  return Math.sqrt((2 * costs.orderCost * costs.yearlyUse) / costs.holdingCost);
}

/** What ordering and keeping cost in a year when every order is for `size` counts. */
export function lotCost(costs: LotCosts, size: number) {
  refuse(costs);
  if (!(size > 0)) throw new RangeError('size: an order is for more than zero.');
  const ordering = (costs.orderCost * costs.yearlyUse) / size;
  const holding = (costs.holdingCost * size) / 2;
  return { ordering, holding, total: ordering + holding };
}

/**
 * The cheapest number of whole packs, at least one. The cost is convex in the size, so that it is
 * one of the two whole numbers beside the economic lot.
 */
export function economicPacks(costs: LotCosts, packSize: number): number {
  if (!(packSize > 0)) throw new RangeError('packSize: a pack holds more than zero.');
  const below = Math.max(Math.floor(economicLot(costs) / packSize), 1);
  const cost = (packs: number) => lotCost(costs, packs * packSize).total;
  return cost(below + 1) < cost(below) ? below + 1 : below;
}

/** An order size after the shelf life had its say. */
export interface CappedLot {
  /** What to order, in counts. */
  readonly size: number;
  readonly economic: number;
  /** The most that steady use gets through before it expires. */
  readonly cap: number;
  /** The shelf life decided, and not the costs. */
  readonly capBinds: boolean;
  /** The smallest order is above the cap. */
  readonly minimumAboveCap: boolean;
  /** What steady use leaves of the order when it expires. */
  readonly expectedWaste: number;
}

/**
 * The economic lot, never more than steady use gets through in the usable life: min(EOQ, D * life
 * less what goes first), e.g. Nahmias, Perishable Inventory Systems (2011), ch. 8. With packs the
 * cap rounds down; a smallest order above the cap is taken all the same, and flagged.
 */
export function lotWithinLife(
  costs: LotCosts,
  life: {
    readonly usableYears: number;
    readonly goesFirst?: number;
    readonly packSize?: number;
    readonly minimum?: number;
  },
): CappedLot {
  const economic = economicLot(costs);
  const cap = Math.max(costs.yearlyUse * life.usableYears - (life.goesFirst ?? 0), 0);
  const pack = life.packSize ?? 0;
  const capBinds = economic > cap;
  const wanted = pack > 0 && !capBinds ? economicPacks(costs, pack) * pack : economic;
  const allowed = pack > 0 ? Math.floor(cap / pack + 1e-9) * pack : cap;
  const smallest = Math.max(life.minimum ?? 0, pack);
  const least = pack > 0 ? Math.ceil(smallest / pack - 1e-9) * pack : smallest;
  const size = Math.max(Math.min(wanted, allowed), least);
  return {
    size,
    economic,
    cap,
    capBinds,
    minimumAboveCap: least > cap,
    expectedWaste: Math.max(size - cap, 0),
  };
}

function refuse(costs: LotCosts): void {
  if (!(costs.yearlyUse >= 0)) throw new RangeError('yearlyUse: use is not negative.');
  if (!(costs.orderCost >= 0)) throw new RangeError('orderCost: the cost is not negative.');
  if (!(costs.holdingCost > 0)) throw new RangeError('holdingCost: the cost is more than zero.');
}
