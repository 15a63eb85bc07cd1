import {
  type Money,
  moneyFromMicro,
  multiplyRatio,
  roundTo,
  splitLargestRemainder,
} from '#lib/measure';
import type { CostShareKey } from '#lib/platform';

export interface CostedRestoration {
  readonly tooth: number;
  readonly minutes: number;
  readonly surfaces: number;
  /** It does an earlier restoration again: all that it costs is a retake. */
  readonly redo?: boolean;
}

export interface CostedLine {
  /** Position of the restoration it belongs to; null when it is shared. */
  readonly restoration: number | null;
  /** Shared by the restorations of this tooth; null (with no restoration): by the whole visit. */
  readonly tooth: number | null;
  readonly attempt: number;
  readonly category: string;
  readonly cost: Money;
}

export interface RestorationCost {
  readonly own: Money;
  readonly shared: Money;
  /** The part of own and shared that later attempts cost. */
  readonly retake: Money;
  readonly byCategory: ReadonlyMap<string, Money>;
}

export interface VisitCost {
  readonly total: Money;
  readonly retake: Money;
  readonly restorations: readonly RestorationCost[];
}

interface Cell {
  readonly category: string;
  readonly shared: boolean;
  cost: bigint;
}

interface Exact {
  readonly cells: Map<string, Cell>;
  retake: bigint;
}

/**
 * Gives every restoration its own lines and its share of the shared ones, and rounds so that in whole
 * steps of the currency (cents) categories add up to the restoration and restorations to the visit.
 * Shared lines are split by the key: equally, by minutes or by surfaces. `step` in micro units.
 */
export function attributeCost(
  restorations: readonly CostedRestoration[],
  lines: readonly CostedLine[],
  key: CostShareKey,
  step: bigint,
): VisitCost {
  const exact = restorations.map((): Exact => ({ cells: new Map(), retake: 0n }));
  for (const line of lines) spread(line, restorations, key, exact);
  const sums = exact.map((e) => [...e.cells.values()].reduce((sum, cell) => sum + cell.cost, 0n));
  const total = roundTo(
    sums.reduce((a, b) => a + b, 0n),
    step,
    'half-up',
  );
  const rounded = splitLargestRemainder(total, sums, step);
  const costs = exact.map((e, i) => roundOne(e, sums[i] ?? 0n, rounded[i] ?? 0n, step));
  return {
    total: moneyFromMicro(total),
    retake: moneyFromMicro(costs.reduce((sum, cost) => sum + cost.retake, 0n)),
    restorations: costs,
  };
}

/** The restorations that bear a line, with how much of it each one bears, in micro units. */
export function sharesOf(
  line: CostedLine,
  restorations: readonly CostedRestoration[],
  key: CostShareKey,
): ReadonlyMap<number, bigint> {
  if (line.restoration !== null) return new Map([[line.restoration, line.cost]]);
  const bearing = [...restorations.keys()].filter(
    (i) => line.tooth === null || restorations[i]?.tooth === line.tooth,
  );
  const weights = bearing.map((i) => weightOf(restorations[i], key));
  const shares = splitLargestRemainder(line.cost, weights);
  return new Map(bearing.map((i, at) => [i, shares[at] ?? 0n]));
}

function spread(
  line: CostedLine,
  restorations: readonly CostedRestoration[],
  key: CostShareKey,
  exact: readonly Exact[],
): void {
  const shared = line.restoration === null;
  for (const [i, cost] of sharesOf(line, restorations, key)) {
    const of = exact[i];
    if (!of) throw new RangeError(`A usage line names restoration ${i}, which the visit lacks.`);
    const name = `${shared ? 'shared' : 'own'} ${line.category}`;
    const cell = of.cells.get(name) ?? { category: line.category, shared, cost: 0n };
    cell.cost += cost;
    of.cells.set(name, cell);
    if (line.attempt > 1 || restorations[i]?.redo) of.retake += cost;
  }
}

function weightOf(restoration: CostedRestoration | undefined, key: CostShareKey): bigint {
  if (key === 'equal' || !restoration) return 1n;
  return BigInt(key === 'minutes' ? restoration.minutes : restoration.surfaces);
}

function roundOne(exact: Exact, sum: bigint, total: bigint, step: bigint): RestorationCost {
  const cells = [...exact.cells.values()];
  const rounded =
    cells.length === 0
      ? []
      : splitLargestRemainder(
          total,
          cells.map((cell) => cell.cost),
          step,
        );
  const byCategory = new Map<string, Money>();
  let own = 0n;
  cells.forEach((cell, i) => {
    const cost = rounded[i] ?? 0n;
    if (!cell.shared) own += cost;
    byCategory.set(cell.category, moneyFromMicro((byCategory.get(cell.category) ?? 0n) + cost));
  });
  const part = sum === 0n ? 0n : multiplyRatio(moneyFromMicro(total), exact.retake, sum, 'half-up');
  const retake = roundTo(part, step, 'half-up');
  return {
    own: moneyFromMicro(own),
    shared: moneyFromMicro(total - own),
    retake: moneyFromMicro(retake < total ? retake : total),
    byCategory,
  };
}
