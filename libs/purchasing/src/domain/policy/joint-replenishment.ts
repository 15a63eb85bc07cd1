/** An item of a family that is ordered from one supplier. All for the same year. */
export interface FamilyItem {
  /** Use in a year, in counts; more than zero. */
  readonly yearlyUse: number;
  /** Value of a count. */
  readonly value: number;
  /** Cost of having this item in an order at all. */
  readonly ownCost: number;
}

export interface FamilyCosts {
  /** Cost of an order, whatever is in it. */
  readonly commonCost: number;
  /** Cost of keeping for a year as a share of the value. */
  readonly carryingRate: number;
}

export interface FamilyPlan {
  /** Every how many orders each item is in it; in the order of the items. */
  readonly multiples: readonly number[];
  /** Years between two orders. */
  readonly baseYears: number;
  readonly ordersPerYear: number;
  /** Counts per order in which the item takes part. */
  readonly sizes: readonly number[];
  /** Orders and keeping, per year. */
  readonly yearlyCost: number;
}

/** Every item in every order: n = sqrt(sum DhC / (2 (S + sum s))). */
export function orderAllTogether(items: readonly FamilyItem[], costs: FamilyCosts): FamilyPlan {
  return familyPlan(
    items,
    costs,
    items.map(() => 1),
  );
}

/** What the family costs if every item is ordered by itself, each order at the full common cost. */
export function orderApart(items: readonly FamilyItem[], costs: FamilyCosts) {
  refuse(items, costs);
  return items.map((item) => {
    const order = costs.commonCost + item.ownCost;
    const holding = costs.carryingRate * item.value;
    const size = Math.sqrt((2 * order * item.yearlyUse) / holding);
    return { size, yearlyCost: Math.sqrt(2 * order * item.yearlyUse * holding) };
  });
}

/**
 * Every item in each k-th order, k whole. The rule of Silver (1976; Silver, Pyke & Thomas,
 * Inventory and Production Management in Supply Chains, ch. 10): the item with the smallest own
 * cost per value of use is in every order, the others by the rounded square root.
 */
export function wholeMultiples(items: readonly FamilyItem[], costs: FamilyCosts): FamilyPlan {
  refuse(items, costs);
  const ratios = items.map((item) => item.ownCost / (item.yearlyUse * item.value));
  const first = ratios.indexOf(Math.min(...ratios));
  const lead = items[first];
  if (!lead) throw new RangeError('items: there is at least one item.');
  const scale = (lead.yearlyUse * lead.value) / (costs.commonCost + lead.ownCost);
  const multiples = ratios.map((ratio, i) =>
    i === first ? 1 : Math.max(Math.round(Math.sqrt(ratio * scale)), 1),
  );
  return familyPlan(items, costs, multiples);
}

/**
 * The multiples improved one at a time, up or down by one, until no such step saves anything; from
 * the rounded roots and from all together, the cheaper one. Never dearer than either.
 */
export function bestMultiples(items: readonly FamilyItem[], costs: FamilyCosts): FamilyPlan {
  const starts = [wholeMultiples(items, costs), orderAllTogether(items, costs)];
  const ends = starts.map((start) => improved(items, costs, start));
  return ends.reduce((best, plan) => (plan.yearlyCost < best.yearlyCost ? plan : best));
}

function improved(items: readonly FamilyItem[], costs: FamilyCosts, start: FamilyPlan): FamilyPlan {
  let best = start;
  for (let again = true; again; ) {
    again = false;
    for (const i of items.keys()) {
      for (const change of [-1, 1]) {
        const multiples = best.multiples.map((m, j) => (i === j ? m + change : m));
        if (Math.min(...multiples) < 1) continue;
        const plan = familyPlan(items, costs, multiples);
        if (plan.yearlyCost < best.yearlyCost * (1 - 1e-12)) {
          best = plan;
          again = true;
        }
      }
    }
  }
  return best;
}

/** The plan with these multiples and the best time between orders for them. */
export function familyPlan(
  items: readonly FamilyItem[],
  costs: FamilyCosts,
  multiples: readonly number[],
): FamilyPlan {
  refuse(items, costs);
  if (multiples.length !== items.length || multiples.some((m) => !Number.isInteger(m) || m < 1)) {
    throw new RangeError('multiples: a whole number, at least 1, for every item.');
  }
  const multiple = (i: number) => multiples[i] ?? 1;
  const ordering = items.reduce((s, item, i) => s + item.ownCost / multiple(i), costs.commonCost);
  const kept = items.reduce((s, item, i) => s + multiple(i) * item.yearlyUse * item.value, 0);
  const baseYears = Math.sqrt((2 * ordering) / (costs.carryingRate * kept));
  return {
    multiples,
    baseYears,
    ordersPerYear: 1 / baseYears,
    sizes: items.map((item, i) => item.yearlyUse * multiple(i) * baseYears),
    yearlyCost: Math.sqrt(2 * ordering * costs.carryingRate * kept),
  };
}

/** No plan of whole multiples costs less (Silver, Pyke & Thomas, ch. 10). */
export function lowerBound(items: readonly FamilyItem[], costs: FamilyCosts): number {
  refuse(items, costs);
  const alone = (item: FamilyItem, order: number) =>
    Math.sqrt(2 * order * costs.carryingRate * item.yearlyUse * item.value);
  const ratios = items.map((item) => item.ownCost / (item.yearlyUse * item.value));
  const first = ratios.indexOf(Math.min(...ratios));
  return items.reduce(
    (s, item, i) => s + alone(item, i === first ? costs.commonCost + item.ownCost : item.ownCost),
    0,
  );
}

function refuse(items: readonly FamilyItem[], costs: FamilyCosts): void {
  if (items.length === 0) throw new RangeError('items: there is at least one item.');
  if (items.some((item) => !(item.yearlyUse > 0 && item.value > 0))) {
    throw new RangeError('items: use and value are more than zero.');
  }
  if (items.some((item) => !(item.ownCost >= 0)) || !(costs.commonCost >= 0)) {
    throw new RangeError('commonCost: no cost of ordering is negative.');
  }
  if (!(costs.carryingRate > 0)) throw new RangeError('carryingRate: more than zero.');
}
