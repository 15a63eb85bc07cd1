import type { Distribution } from './demand.js';
import { type Table, tabulate } from './tables.js';

export type IssueOrder = 'oldest first' | 'newest first';

/** Long-run means per period. */
export interface PerishableFigures {
  readonly outdate: number;
  readonly order: number;
  readonly lost: number;
  /** Outdated as a share of what is bought. */
  readonly wasteShare: number;
  /** Met as a share of what is wanted. */
  readonly fill: number;
}

const MOST_STATES = 20_000;

/**
 * A thing that lives `life` periods, ordered up to a level at the start of every period, there at
 * once; what is missing is lost; what has lived its last period is thrown away at its end. Exact
 * long-run means from the Markov chain of the stock by age (model of Nahmias 1975 and of Pierskalla
 * & Roach 1972). `use` is per period, in counts. RangeError for a level or life that is not whole
 * and positive, or when there are more than 20,000 states.
 */
export function perishableFigures(input: {
  readonly use: Distribution;
  readonly life: number;
  readonly orderUpTo: number;
  readonly issue: IssueOrder;
}): PerishableFigures {
  const { life, orderUpTo } = input;
  if (!Number.isInteger(life) || life < 1) throw new RangeError('life: whole periods, at least 1.');
  if (!Number.isInteger(orderUpTo) || orderUpTo < 1) {
    throw new RangeError('orderUpTo: whole counts, at least 1.');
  }
  const states = ageStates(life - 1, orderUpTo);
  const chances = cutAt(tabulate(input.use), orderUpTo);
  const steps = states.list.map((state) => stepsFrom(state, chances, states, input));
  const likely = longRun(steps);
  let outdate = 0;
  let order = 0;
  for (const [i, state] of states.list.entries()) {
    const p = likely[i] ?? 0;
    order += p * (orderUpTo - total(state));
    for (const step of steps[i] ?? []) outdate += p * step.chance * step.outdated;
  }
  const lost = input.use.loss(orderUpTo);
  return {
    outdate,
    order,
    lost,
    wasteShare: order === 0 ? 0 : outdate / order,
    fill: input.use.mean === 0 ? 1 : 1 - lost / input.use.mean,
  };
}

interface Step {
  readonly to: number;
  readonly chance: number;
  readonly outdated: number;
}

/** Stock by age before the order, the oldest first; it holds at most the level in all. */
interface AgeStates {
  readonly list: readonly (readonly number[])[];
  indexOf(state: readonly number[]): number;
}

function ageStates(ages: number, most: number): AgeStates {
  let list: (readonly number[])[] = [[]];
  for (let age = 0; age < ages; age += 1) {
    list = list.flatMap((state) =>
      Array.from({ length: most - total(state) + 1 }, (_, n) => [...state, n]),
    );
    if (list.length > MOST_STATES) throw new RangeError('orderUpTo: too many states to follow.');
  }
  const index = new Map(list.map((state, i) => [state.join(), i]));
  return { list, indexOf: (state) => index.get(state.join()) ?? -1 };
}

function stepsFrom(
  state: readonly number[],
  chances: readonly number[],
  states: AgeStates,
  input: { readonly orderUpTo: number; readonly issue: IssueOrder },
): readonly Step[] {
  const shelf = [...state, input.orderUpTo - total(state)];
  return chances.map((chance, use) => {
    const [oldest = 0, ...younger] = issue(shelf, use, input.issue);
    return { to: states.indexOf(younger), chance, outdated: oldest };
  });
}

function issue(shelf: readonly number[], use: number, order: IssueOrder): readonly number[] {
  const left = [...shelf];
  let open = use;
  const ages = order === 'oldest first' ? [...left.keys()] : [...left.keys()].reverse();
  for (const age of ages) {
    const taken = Math.min(left[age] ?? 0, open);
    left[age] = (left[age] ?? 0) - taken;
    open -= taken;
  }
  return left;
}

/** Chances of 0 ... most; all that is more counts as the most. */
function cutAt({ first, masses }: Table, most: number): readonly number[] {
  const cut = new Array<number>(most + 1).fill(0);
  for (let k = 0; k < masses.length; k += 1) {
    const at = Math.min(first + k, most);
    cut[at] = (cut[at] ?? 0) + (masses[k] ?? 0);
  }
  return cut;
}

/** The long-run chances by repeated steps, each averaged with the last against periodic chains. */
function longRun(steps: readonly (readonly Step[])[]): Float64Array {
  let now = new Float64Array(steps.length).fill(1 / steps.length);
  for (let round = 0; round < 20_000; round += 1) {
    const next = new Float64Array(steps.length);
    for (const [i, from] of steps.entries()) {
      const p = now[i] ?? 0;
      if (p === 0) continue;
      for (const step of from) next[step.to] = (next[step.to] ?? 0) + p * step.chance;
    }
    let change = 0;
    for (let i = 0; i < next.length; i += 1) {
      const before = now[i] ?? 0;
      change += Math.abs((next[i] ?? 0) - before);
      next[i] = 0.9 * (next[i] ?? 0) + 0.1 * before;
    }
    now = next;
    if (change < 1e-14) break;
  }
  return now;
}

function total(state: readonly number[]): number {
  return state.reduce((a, b) => a + b, 0);
}
