import { parseDecimal } from '#lib/measure';
import { failed, type RowFate } from '../fate.js';
import { type CellProblem, problem } from '../problems.js';
import type { ListRow } from '../read-rows.js';
import { goodsKey, goodsTitle } from './goods.js';
import { MergeBook, type Merged, nameKey, type Thing, type ToWrite } from './merge.js';
import { NO_PACK_TERMS } from './terms.js';

const NAME = ['shade', 'size', 'grit'] as const;
const CONSUMABLE = [
  ...['consumable', ...NAME, 'category', 'stockUnit', 'opacity', 'viscosity', 'lifeAfterOpening'],
  ...['lifeUnit', 'reorderAt', 'reorderUpTo', 'density', 'consumableActive'],
] as const;
const PRESENTATION = [
  ...['presentation', 'supplier', 'dispensing', 'containersPerPack', 'contentPerContainer'],
  ...['deviceIdentifier', 'articleCode', 'listPrice', 'presentationActive'],
  ...Object.keys(NO_PACK_TERMS),
] as const;

export interface ConsumablesFacts {
  /** Values by the keys of the columns. */
  readonly consumables: readonly Thing[];
  /** Values by the keys of the columns, and consumableId. */
  readonly presentations: readonly Thing[];
  /** Names of suppliers as the book writes them, by the same in lower case. */
  readonly suppliers: ReadonlyMap<string, string>;
  /** What was ever received: its unit, and what is in its pack, are fixed. */
  readonly receivedConsumables: ReadonlySet<string>;
  readonly receivedPresentations: ReadonlySet<string>;
}

export interface ConsumablesPlan {
  readonly fates: readonly RowFate[];
  readonly consumables: readonly ToWrite[];
  readonly presentations: readonly ToWrite[];
}

/** What becomes of each row of a list of consumables with their packs: one row for each pack. */
export function planConsumables(
  facts: ConsumablesFacts,
  rows: readonly ListRow[],
  newId: () => string,
): ConsumablesPlan {
  const consumables = new MergeBook(
    facts.consumables.map((thing) => [keyOf(thing), thing] as const),
    {
      defaults: nothing(CONSUMABLE, 'consumableActive'),
      needed: ['category', 'stockUnit'],
      check: (thing, before) => consumableProblems(thing, before, facts),
      newId,
    },
  );
  const presentations = new MergeBook(
    facts.presentations.map((thing) => [presentationKey(thing), thing] as const),
    {
      defaults: { ...nothing(PRESENTATION, 'presentationActive'), consumableId: null },
      needed: ['dispensing', 'containersPerPack', 'contentPerContainer'],
      check: (thing, before) => presentationProblems(thing, before, facts),
      newId,
    },
  );
  const planner = { consumables, presentations, suppliers: facts.suppliers };
  const fates = rows.map((row) => fateOf(planner, row));
  return { fates, consumables: consumables.toWrite(), presentations: presentations.toWrite() };
}

interface Planner {
  readonly suppliers: ReadonlyMap<string, string>;
  readonly consumables: MergeBook;
  readonly presentations: MergeBook;
}

function fateOf(planner: Planner, row: ListRow): RowFate {
  const { consumables } = planner;
  const { number, values } = row;
  const title = [goodsTitle(values), values.get('presentation')].filter(Boolean).join(': ');
  if (row.problems.length > 0) return failed(number, title, row.problems);
  if (!values.has('consumable')) {
    return failed(number, title, [problem('consumable', 'name-blank')]);
  }
  const key = goodsKey(values);
  const merged = consumables.merge(key, only(values, CONSUMABLE), number);
  if (!merged.ok) return failed(number, title, merged.problems);
  const pack = mergePack(planner, row, key);
  if (!pack)
    return { ...merged.merge, row: number, fate: merged.merge.outcome, title, problems: [] };
  if (!pack.ok) return failed(number, title, pack.problems);
  const outcomes = [merged.merge.outcome, pack.merge.outcome];
  const fate = outcomes.includes('new') ? 'new' : outcomes.includes('changed') ? 'changed' : 'same';
  const changes = [...merged.merge.changes, ...pack.merge.changes];
  return { row: number, fate, title, changes, problems: [] };
}

/** What the row says of a pack; undefined when it says nothing of one. */
function mergePack(
  { consumables, presentations, suppliers }: Planner,
  row: ListRow,
  key: string,
): Merged | undefined {
  const consumable = consumables.find(key);
  if (!consumable) throw new Error('A consumable just merged is missing');
  const said = only(row.values, PRESENTATION);
  if (said.size === 0) return undefined;
  const name = row.values.get('presentation');
  if (name === undefined) {
    return { ok: false, problems: [problem('presentation', 'pack-blank')] };
  }
  const supplier = said.get('supplier');
  if (supplier !== undefined) said.set('supplier', suppliers.get(nameKey(supplier)) ?? supplier);
  said.set('consumableId', consumable.id);
  const packed = nameKey(consumable.id, name);
  const merged = presentations.merge(packed, said, row.number);
  if (!merged.ok) return merged;
  const wrong = packingProblems(consumable, said);
  if (wrong.length === 0) return merged;
  presentations.forget(packed);
  return { ok: false, problems: wrong };
}

function only(values: ReadonlyMap<string, string>, keys: readonly string[]): Map<string, string> {
  return new Map([...values].filter(([key]) => keys.includes(key)));
}

function nothing(keys: readonly string[], active: string): Record<string, string | null> {
  return Object.fromEntries(keys.map((key) => [key, key === active ? 'yes' : null]));
}

function keyOf({ values }: Thing): string {
  return nameKey(values.consumable, ...NAME.map((key) => values[key]));
}

function presentationKey({ values }: Thing): string {
  return nameKey(values.consumableId, values.presentation);
}

function consumableProblems(
  { id, values }: Thing,
  before: Thing['values'] | undefined,
  facts: ConsumablesFacts,
): CellProblem[] {
  const problems: CellProblem[] = [];
  const { lifeAfterOpening: life, lifeUnit, reorderAt, reorderUpTo } = values;
  if (life !== null && lifeUnit === null) {
    problems.push(problem('lifeUnit', 'life-unit-blank'));
  }
  if (life === null && lifeUnit !== null) {
    problems.push(problem('lifeAfterOpening', 'life-blank'));
  }
  if (reorderUpTo && !reorderAt) {
    problems.push(problem('reorderAt', 'order-at-blank'));
  }
  if (reorderUpTo && reorderAt && micro(reorderUpTo) < micro(reorderAt)) {
    problems.push(problem('reorderUpTo', 'not-below', reorderAt));
  }
  if (before && before.stockUnit !== values.stockUnit && facts.receivedConsumables.has(id)) {
    problems.push(problem('stockUnit', 'fixed-by-receipt', before.stockUnit ?? ''));
  }
  return problems;
}

function presentationProblems(
  { id, values }: Thing,
  before: Thing['values'] | undefined,
  facts: ConsumablesFacts,
): CellProblem[] {
  const problems: CellProblem[] = [];
  const { supplier } = values;
  if (supplier && !facts.suppliers.has(nameKey(supplier))) {
    problems.push(problem('supplier', 'no-supplier-yet', supplier));
  }
  if (!before || !facts.receivedPresentations.has(id)) return problems;
  for (const column of ['dispensing', 'contentPerContainer']) {
    if (before[column] === values[column]) continue;
    problems.push(problem(column, 'fixed-by-receipt', before[column] ?? ''));
  }
  return problems;
}

const ONE = 1_000_000n;

function packingProblems(consumable: Thing, said: ReadonlyMap<string, string>): CellProblem[] {
  const unit = consumable.values.stockUnit ?? '';
  if (unit === 'piece' || unit === 'use') {
    const content = said.get('contentPerContainer');
    if (content === undefined || micro(content) % ONE === 0n) return [];
    return [problem('contentPerContainer', 'whole-content', unit)];
  }
  if (said.get('dispensing') !== 'by-piece') return [];
  return [problem('dispensing', 'by-piece-unit', unit)];
}

/** A decimal that was read before, in millionths. */
export function micro(text: string): bigint {
  const parsed = parseDecimal(text, 6);
  if (!parsed.ok) throw new Error(`${text} is no decimal`);
  return parsed.value;
}
