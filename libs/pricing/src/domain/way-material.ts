import { formatSurfaces } from '#lib/dentition';
import {
  isWholeUnit,
  type Money,
  moneyFromMicro,
  type Quantity,
  quantityFromMicro,
  roundTo,
  splitLargestRemainder,
} from '#lib/measure';
import type { CostShareKey } from '#lib/platform';
import { expandUsage, type PlannedRestoration } from '#lib/procedures';
import { chargeWhole, sharesOf } from '#lib/visits';
import type { Way } from './ways.js';

export interface PricedConsumable {
  readonly stock_unit: string;
  /** Last known cost per stock unit; null when nothing is known. */
  readonly unitCost: Money | null;
  /** Content of a single dose, charged whole. */
  readonly dose: Quantity | null;
}

export interface MaterialInput {
  readonly restorations: readonly PlannedRestoration[];
  readonly staffCount: number;
  readonly costShareKey: CostShareKey;
  readonly step: bigint;
  consumableOf(id: string): PricedConsumable;
}

/** What visits share of one consumable. */
export interface SharedUse {
  readonly consumableId: string;
  readonly charged: Quantity;
  /** Exact, in millionths of a millionth of the currency. */
  readonly exactCost: bigint;
}

export interface WayMaterial {
  readonly total: Money;
  /** By position of the restoration; positions that this way leaves out are missing. */
  readonly byRestoration: ReadonlyMap<number, Money>;
  /** What belongs to visits and teeth rather than to one restoration. */
  readonly shared: Money;
  readonly sharedUse: readonly SharedUse[];
}

interface ExactLine {
  readonly restoration: number | null;
  readonly tooth: number | null;
  readonly attempt: number;
  readonly consumableId: string;
  readonly charged: Quantity;
  readonly cost: bigint;
}

const PICO = 1_000_000n;

/**
 * What a way of doing the work uses at the last known costs. Everything is added exactly and the sum
 * rounded once, so that more visits never come out cheaper through rounding; restorations add up to
 * the way by largest remainder.
 */
export function wayMaterial(way: Pick<Way, 'visits'>, input: MaterialInput): WayMaterial {
  const exact = new Map<number, bigint>();
  const sharedUse = new Map<string, SharedUse>();
  for (const positions of way.visits) {
    const lines = exactLines(positions, input);
    addToRestorations(positions, lines, input, exact);
    addToShared(lines, sharedUse);
  }
  const step = input.step * PICO;
  const values = [...exact.values()];
  const total = roundTo(
    values.reduce((a, b) => a + b, 0n),
    step,
    'half-up',
  );
  const rounded = splitLargestRemainder(total, values, step);
  const shared = [...sharedUse.values()].reduce((sum, use) => sum + use.exactCost, 0n);
  return {
    total: moneyFromMicro(total / PICO),
    byRestoration: new Map(
      [...exact.keys()].map((position, i) => [position, moneyFromMicro((rounded[i] ?? 0n) / PICO)]),
    ),
    shared: moneyFromMicro(roundTo(shared, step, 'half-up') / PICO),
    sharedUse: [...sharedUse.values()],
  };
}

/** What one way uses of shared things beyond another, e.g. because a second visit repeats it. */
export interface Repeated {
  readonly consumableId: string;
  readonly quantity: Quantity;
  readonly cost: Money;
}

export function repeatedUse(more: WayMaterial, less: WayMaterial, step: bigint): Repeated[] {
  const before = new Map(less.sharedUse.map((use) => [use.consumableId, use]));
  const extra = more.sharedUse
    .map(({ consumableId, charged, exactCost }) => ({
      consumableId,
      quantity: quantityFromMicro(charged - (before.get(consumableId)?.charged ?? 0n)),
      exact: exactCost - (before.get(consumableId)?.exactCost ?? 0n),
    }))
    .filter((each) => each.quantity > 0n);
  const total = more.total - less.total;
  if (extra.length === 0 || total < 0n) return [];
  const costs = splitLargestRemainder(
    total,
    extra.map((each) => each.exact),
    step,
  );
  return extra.map(({ consumableId, quantity }, i) => {
    return { consumableId, quantity, cost: moneyFromMicro(costs[i] ?? 0n) };
  });
}

function exactLines(positions: readonly number[], input: MaterialInput): ExactLine[] {
  const restorations = positions.flatMap((i) => input.restorations[i] ?? []);
  const planned = expandUsage({
    restorations,
    staffCount: input.staffCount,
    isWhole: (id) => isWholeUnit(input.consumableOf(id).stock_unit),
  });
  const whole = chargeWhole(planned, (id) => input.consumableOf(id).dose);
  return planned.map(({ restoration, tooth, attempt, consumableId, dispensed }, i) => {
    const { unitCost } = input.consumableOf(consumableId);
    const charged = whole[i] ?? dispensed;
    const cost = charged * (unitCost ?? 0n);
    return { restoration, tooth, attempt, consumableId, charged, cost };
  });
}

function addToRestorations(
  positions: readonly number[],
  lines: readonly ExactLine[],
  input: MaterialInput,
  exact: Map<number, bigint>,
): void {
  const restorations = positions.flatMap((i) => input.restorations[i] ?? []);
  const bearing = restorations.map((r) => ({
    tooth: r.tooth,
    minutes: r.minutes,
    surfaces: formatSurfaces(r.surfaces).length,
  }));
  for (const position of positions) exact.set(position, exact.get(position) ?? 0n);
  for (const line of lines) {
    const costed = { ...line, category: '', cost: moneyFromMicro(line.cost) };
    for (const [at, cost] of sharesOf(costed, bearing, input.costShareKey)) {
      const position = positions[at];
      if (position !== undefined) exact.set(position, (exact.get(position) ?? 0n) + cost);
    }
  }
}

function addToShared(lines: readonly ExactLine[], shared: Map<string, SharedUse>): void {
  for (const { restoration, consumableId, charged, cost } of lines) {
    if (restoration !== null) continue;
    const before = shared.get(consumableId);
    shared.set(consumableId, {
      consumableId,
      charged: quantityFromMicro((before?.charged ?? 0n) + charged),
      exactCost: (before?.exactCost ?? 0n) + cost,
    });
  }
}
