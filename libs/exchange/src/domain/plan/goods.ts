import { type CellProblem, problem } from '../problems.js';
import type { ListRow } from '../read-rows.js';
import { nameKey } from './merge.js';

/** A consumable of the book, and the ids of its packs by their names in lower case. */
export interface NamedGoods {
  readonly id: string;
  readonly stockUnit: string;
  readonly packs: ReadonlyMap<string, string>;
}

/** By name, shade, size and grit, as `goodsKey` makes it. */
export type Goods = ReadonlyMap<string, NamedGoods>;

/** The columns that name a consumable: its name, shade, size and grit. */
export type NameColumns = readonly [name: string, ...more: string[]];

export const OWN_NAME: NameColumns = ['consumable', 'shade', 'size', 'grit'];

interface Said {
  get(key: string): string | undefined;
}

/** The key of a consumable as lists name it. */
export function goodsKey(values: Said, columns: NameColumns = OWN_NAME): string {
  return nameKey(...columns.map((column) => values.get(column)));
}

export function goodsTitle(values: Said, columns: NameColumns = OWN_NAME): string {
  return columns.flatMap((column) => values.get(column) ?? []).join(' / ');
}

/** Finds what a row names; says in `wrong` what it does not find. */
export function findGoods(
  goods: Goods,
  { values }: ListRow,
  wrong: CellProblem[],
  columns: NameColumns = OWN_NAME,
): NamedGoods | undefined {
  const [name] = columns;
  if (!values.has(name)) {
    wrong.push(problem(name, 'consumable-blank'));
    return undefined;
  }
  const found = goods.get(goodsKey(values, columns));
  if (!found) wrong.push(problem(name, 'no-consumable-yet', goodsTitle(values, columns)));
  return found;
}

/** Finds the pack that a row names, of the consumable that it names. */
export function findPack(
  goods: Goods,
  row: ListRow,
  wrong: CellProblem[],
): { readonly id: string; readonly of: NamedGoods } | undefined {
  const of = findGoods(goods, row, wrong);
  const name = row.values.get('presentation');
  if (name === undefined) {
    wrong.push(problem('presentation', 'pack-needed'));
    return undefined;
  }
  if (!of) return undefined;
  const id = of.packs.get(nameKey(name));
  if (id !== undefined) return { id, of };
  wrong.push(problem('presentation', 'no-pack', name));
  return undefined;
}
