import { formatQuantity, quantity, quantityFromMicro } from '#lib/measure';
import { type ConsumablePlanning, checkOwnPlanning } from '#lib/purchasing';
import { failed, type RowFate } from '../fate.js';
import { type CellProblem, problem } from '../problems.js';
import { type ListRow, shortest } from '../read-rows.js';
import { findGoods, type Goods, goodsTitle, type NameColumns, OWN_NAME } from './goods.js';
import { MergeBook, nameKey, type ToWrite, type Values } from './merge.js';

const COLUMNS = [
  ...['serviceMeasure', 'serviceLevel', 'reviewDays', 'expiryCertainty', 'setReorderAt'],
  ...['setOrderUpTo', 'shelfRoom', 'note'],
] as const;

export interface PlanningFacts {
  readonly goods: Goods;
  /** What the book has, by the id of the consumable. */
  readonly own: ReadonlyMap<string, ConsumablePlanning>;
}

export interface PlanningPlan {
  readonly fates: readonly RowFate[];
  /** Their ids are those of the consumables. */
  readonly writes: readonly ToWrite[];
}

/** What becomes of each row of a list of what consumables have of their own in planning. */
export function planPlanning(facts: PlanningFacts, rows: readonly ListRow[]): PlanningPlan {
  const known = new MergeBook(
    [...facts.own].map(([id, own]) => [id, { id, values: planningValues(own) }] as const),
    {
      defaults: Object.fromEntries(COLUMNS.map((column) => [column, null])),
      needed: [],
      check: ({ values }) => planningProblems(planningOf(values)),
      newId: (consumableId) => consumableId,
    },
  );
  const fates = rows.map((row): RowFate => {
    const title = goodsTitle(row.values);
    const wrong: CellProblem[] = [...row.problems];
    const of = wrong.length > 0 ? undefined : findGoods(facts.goods, row, wrong);
    if (!of) return failed(row.number, title, wrong);
    const said = new Map([...row.values].filter(([key]) => !OWN_NAME.includes(key)));
    const merged = known.merge(of.id, said, row.number);
    if (!merged.ok) return failed(row.number, title, merged.problems);
    const { outcome, changes } = merged.merge;
    return { row: row.number, fate: outcome, title, changes, problems: [] };
  });
  return { fates, writes: known.toWrite() };
}

const HUNDRED = 100n;

/** A share as a percentage: '0.95' is '95'. The book keeps six digits, so that four are left. */
function percentOf(share: string | null): string | null {
  if (share === null) return null;
  return shortest(formatQuantity(quantityFromMicro(quantity(share) * HUNDRED)));
}

function shareOf(percent: string | null): string | null {
  if (percent === null) return null;
  return shortest(formatQuantity(quantityFromMicro(quantity(percent) / HUNDRED)));
}

/** What a consumable has of its own, under the keys of the columns. */
export function planningValues(own: ConsumablePlanning): Values {
  const short = (text: string | null) => (text === null ? null : shortest(text));
  return {
    serviceMeasure: own.serviceMeasure,
    serviceLevel: percentOf(own.serviceLevel),
    reviewDays: own.reviewDays === null ? null : String(own.reviewDays),
    expiryCertainty: percentOf(own.expiryCertainty),
    setReorderAt: short(own.reorderAt),
    setOrderUpTo: short(own.orderUpTo),
    shelfRoom: short(own.shelfRoom),
    note: own.note,
  };
}

export function planningOf(values: Values): ConsumablePlanning {
  return {
    serviceMeasure: (values.serviceMeasure ?? null) as ConsumablePlanning['serviceMeasure'],
    serviceLevel: shareOf(values.serviceLevel ?? null),
    reviewDays: values.reviewDays == null ? null : Number(values.reviewDays),
    expiryCertainty: shareOf(values.expiryCertainty ?? null),
    reorderAt: values.setReorderAt ?? null,
    orderUpTo: values.setOrderUpTo ?? null,
    shelfRoom: values.shelfRoom ?? null,
    note: values.note ?? null,
  };
}

function planningProblems(own: ConsumablePlanning): CellProblem[] {
  const wrong = checkOwnPlanning(own);
  if (wrong === null) return [];
  if (wrong.field === 'orderUpTo') {
    return [problem('setOrderUpTo', 'not-below', shortest(own.reorderAt ?? '0'))];
  }
  return [problem(wrong.field, 'measure-and-level')];
}

export interface StandInPair {
  readonly consumableId: string;
  readonly standInId: string;
  readonly note: string | null;
}

export interface SubstitutesPlan {
  readonly fates: readonly RowFate[];
  readonly fresh: readonly StandInPair[];
}

const STAND_IN: NameColumns = ['standIn', 'standInShade', 'standInSize', 'standInGrit'];

/** What becomes of each row of a list of what may stand in for what; pairs that stand are the same. */
export function planSubstitutes(
  facts: { readonly goods: Goods; readonly pairs: readonly StandInPair[] },
  rows: readonly ListRow[],
): SubstitutesPlan {
  const stands = new Map(
    facts.pairs.map((pair) => [nameKey(pair.consumableId, pair.standInId), pair]),
  );
  const fresh = new Map<string, StandInPair & { readonly row: number }>();
  const fates = rows.map((row): RowFate => {
    const title = [OWN_NAME, STAND_IN].map((each) => goodsTitle(row.values, each)).join(': ');
    const wrong: CellProblem[] = [...row.problems];
    const pair = wrong.length > 0 ? undefined : readPair(facts.goods, row, wrong);
    if (!pair) return failed(row.number, title, wrong);
    const key = nameKey(pair.consumableId, pair.standInId);
    const [before, earlier] = [stands.get(key), fresh.get(key)];
    const said = row.values.get('note');
    if (before && said !== undefined && said !== before.note) {
      wrong.push(problem('note', 'pair-note', before.note ?? ''));
    }
    if (earlier && said !== undefined && said !== earlier.note) {
      wrong.push(problem('note', 'contradicts', earlier.row, earlier.note ?? ''));
    }
    if (wrong.length > 0) return failed(row.number, title, wrong);
    const fate = before || earlier ? 'same' : 'new';
    if (fate === 'new') fresh.set(key, { ...pair, row: row.number });
    return { row: row.number, fate, title, changes: [], problems: [] };
  });
  return { fates, fresh: [...fresh.values()].map(({ row: _row, ...pair }) => pair) };
}

function readPair(goods: Goods, row: ListRow, wrong: CellProblem[]): StandInPair | undefined {
  const of = findGoods(goods, row, wrong);
  const standIn = findGoods(goods, row, wrong, STAND_IN);
  if (!of || !standIn) return undefined;
  if (of.id === standIn.id) wrong.push(problem('standIn', 'itself-as-stand-in'));
  else if (of.stockUnit !== standIn.stockUnit) wrong.push(problem('standIn', 'stand-in-unit'));
  const note = row.values.get('note') ?? null;
  return wrong.length > 0 ? undefined : { consumableId: of.id, standInId: standIn.id, note };
}
