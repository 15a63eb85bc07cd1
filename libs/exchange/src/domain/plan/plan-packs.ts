import { type Dispensing, MOST_PARTS, type PartInput, partProblems } from '#lib/catalogue';
import type { StockUnit } from '#lib/measure';
import { checkPriceList, MOST_PRICES } from '#lib/purchasing';
import { failed } from '../fate.js';
import { type CellProblem, problem } from '../problems.js';
import { type ListRow, shortest } from '../read-rows.js';
import { findGoods, findPack, type Goods, goodsTitle, type NameColumns } from './goods.js';
import type { Values } from './merge.js';
import { type ChildPlan, planChildren, type ReadChild } from './plan-children.js';

interface PriceStep {
  readonly fromPacks: number;
  readonly packPrice: string;
}

/** What the book has of each pack, by the id of its presentation. */
export interface PackFacts {
  readonly goods: Goods;
  readonly prices: ReadonlyMap<string, readonly PriceStep[]>;
}

/** What becomes of each row of a list of prices by the number of packs. */
export function planPriceLists({ goods, prices }: PackFacts, rows: readonly ListRow[]): ChildPlan {
  const book = new Map(
    [...prices].map(([id, steps]) => [
      id,
      steps.map(({ fromPacks, packPrice }) => ({
        fromPacks: String(fromPacks),
        packPrice: shortest(packPrice),
      })),
    ]),
  );
  const read = rows.map((row) => readOf(goods, row, ['fromPacks', 'packPrice'], ['fromPacks']));
  return planChildren(book, read, {
    defaults: { fromPacks: null, packPrice: null },
    needed: ['packPrice'],
    keyOf: ({ fromPacks }) => fromPacks ?? '',
    order: (a, b) => Number(a.fromPacks) - Number(b.fromPacks),
    check: (_id, all) => priceProblems(all.map(priceOf)),
  });
}

export function priceOf({ fromPacks, packPrice }: Values): PriceStep {
  return { fromPacks: Number(fromPacks), packPrice: packPrice ?? '0' };
}

function priceProblems(steps: readonly PriceStep[]) {
  if (steps.length > MOST_PRICES) {
    return [{ at: null, problem: problem(null, 'too-many-prices', MOST_PRICES) }];
  }
  const wrong = checkPriceList(steps);
  if (wrong === null) return [];
  const before = steps[wrong.at - 1];
  if (wrong.field === 'fromPacks' || !before) {
    return [{ at: wrong.at, problem: problem('fromPacks', 'price-from-one') }];
  }
  const { fromPacks, packPrice } = before;
  return [{ at: wrong.at, problem: problem('packPrice', 'price-not-lower', packPrice, fromPacks) }];
}

export interface KitFacts {
  readonly goods: Goods;
  readonly parts: ReadonlyMap<string, readonly PartInput[]>;
}

const PART_NAME: NameColumns = ['part', 'partShade', 'partSize', 'partGrit'];
const PART = ['dispensing', 'containersPerPack', 'contentPerContainer', 'sharePercent'] as const;

/** What becomes of each row of a list of what else is in packs. */
export function planKitParts({ goods, parts }: KitFacts, rows: readonly ListRow[]): ChildPlan {
  const book = new Map([...parts].map(([id, all]) => [id, all.map(partValues)]));
  const units = new Map([...goods.values()].map(({ id, stockUnit }) => [id, stockUnit]));
  const ownOf = new Map(
    [...goods.values()].flatMap(({ id, packs }) => [...packs.values()].map((pack) => [pack, id])),
  );
  const read = rows.map((row) => readPart(goods, row));
  return planChildren(book, read, {
    defaults: { partId: null, ...Object.fromEntries(PART.map((key) => [key, null])) },
    needed: PART,
    keyOf: ({ partId }) => partId ?? '',
    check: (id, all) => {
      if (all.length > MOST_PARTS) {
        return [{ at: null, problem: problem(null, 'too-many-parts', MOST_PARTS) }];
      }
      const unitOf = (partId: string) => (units.get(partId) ?? '') as StockUnit;
      const of = { ownConsumableId: ownOf.get(id) ?? '', unitOf };
      return partProblems(of, all.map(partOf)).map(({ field }) => {
        const [, at, column] = /^parts\[(\d+)\]\.(\w+)$/.exec(field) ?? [];
        const unit = unitOf(all[Number(at)]?.partId ?? '');
        return { at: at === undefined ? null : Number(at), problem: partProblem(column, unit) };
      });
    },
  });
}

function partProblem(column: string | undefined, unit: string): CellProblem {
  if (column === 'consumableId') return problem('part', 'own-content');
  if (column === 'contentPerContainer') return problem(column, 'whole-content', unit);
  if (column === 'dispensing') return problem(column, 'by-piece-unit', unit);
  return problem('sharePercent', 'shares-over-all');
}

/** A part of a pack under the keys of its columns, and the id of what it is. */
export function partValues(part: PartInput): Values {
  return {
    partId: part.consumableId,
    dispensing: part.dispensing,
    containersPerPack: String(part.containersPerPack),
    contentPerContainer: shortest(part.contentPerContainer),
    sharePercent: shortest(part.sharePercent),
  };
}

export function partOf(values: Values): PartInput {
  return {
    consumableId: values.partId ?? '',
    dispensing: (values.dispensing ?? '') as Dispensing,
    containersPerPack: Number(values.containersPerPack),
    contentPerContainer: values.contentPerContainer ?? '0',
    sharePercent: values.sharePercent ?? '0',
  };
}

function readPart(goods: Goods, row: ListRow): ReadChild {
  const read = readOf(goods, row, PART, []);
  if (!read.ok) return read;
  const wrong: CellProblem[] = [];
  const part = findGoods(goods, row, wrong, PART_NAME);
  const title = `${read.child.title}, ${goodsTitle(row.values, PART_NAME)}`;
  if (!part) return { ok: false, fate: failed(row.number, title, wrong) };
  const said = new Map([...read.child.said, ['partId', part.id]]);
  return { ok: true, child: { ...read.child, title, said } };
}

/** The pack that a row is about, and what it says of it in these columns. */
function readOf(
  goods: Goods,
  row: ListRow,
  columns: readonly string[],
  filled: readonly string[],
): ReadChild {
  const { number, values } = row;
  const title = [goodsTitle(values), values.get('presentation')].filter(Boolean).join(': ');
  const wrong: CellProblem[] = [...row.problems];
  const pack = wrong.length > 0 ? undefined : findPack(goods, row, wrong);
  for (const column of filled) {
    if (!values.has(column) && row.problems.length === 0) wrong.push(problem(column, 'blank'));
  }
  if (wrong.length > 0 || !pack) return { ok: false, fate: failed(number, title, wrong) };
  const said = new Map([...values].filter(([key]) => columns.includes(key)));
  return { ok: true, child: { row, title, parentId: pack.id, said } };
}
