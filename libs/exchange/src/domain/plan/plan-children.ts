import { failed, type RowFate } from '../fate.js';
import { type CellProblem, problem } from '../problems.js';
import type { ListRow } from '../read-rows.js';
import { MergeBook, nameKey, type Values } from './merge.js';

/** A row that says something of one thing in a list of a supplier or a pack: a closure, a price. */
export interface ChildRow {
  readonly row: ListRow;
  readonly title: string;
  /** Of the supplier or the presentation. */
  readonly parentId: string;
  readonly said: ReadonlyMap<string, string>;
}

export type ReadChild =
  | { readonly ok: true; readonly child: ChildRow }
  | { readonly ok: false; readonly fate: RowFate };

export interface ChildRules {
  readonly defaults: Values;
  /** Columns that a new one needs. */
  readonly needed: readonly string[];
  /** By what one is known again among those of its parent. */
  readonly keyOf: (values: Values) => string;
  readonly order?: (a: Values, b: Values) => number;
  /** What is wrong with all of a parent together, at which of them; null: with none of them alone. */
  readonly check: (
    parentId: string,
    children: readonly Values[],
  ) => readonly { readonly at: number | null; readonly problem: CellProblem }[];
}

/** All that a parent has from now on, and had. */
export interface ChildList {
  readonly parentId: string;
  readonly before: readonly Values[];
  readonly after: readonly Values[];
}

export interface ChildPlan {
  readonly fates: readonly RowFate[];
  readonly writes: readonly ChildList[];
}

interface Judged {
  readonly child: ChildRow;
  readonly key: string;
  fate: RowFate;
}

/**
 * What becomes of each row of a list whose rows belong together by their parents: what a row says is put
 * over what the book has, nothing is taken away, and then all of a parent must go together.
 */
export function planChildren(
  book: ReadonlyMap<string, readonly Values[]>,
  read: readonly ReadChild[],
  rules: ChildRules,
): ChildPlan {
  const known = new MergeBook(
    [...book].flatMap(([id, children]) =>
      children.map((values) => [nameKey(id, rules.keyOf(values)), { id, values }] as const),
    ),
    { defaults: rules.defaults, needed: rules.needed, newId: () => '' },
  );
  const judged = read.map((each) => (each.ok ? mergeChild(known, each.child, rules) : each.fate));
  const groups = new Map<string, Judged[]>();
  for (const each of judged) {
    if ('fate' in each && 'child' in each) {
      const group = groups.get(each.child.parentId);
      if (group) group.push(each);
      else groups.set(each.child.parentId, [each]);
    }
  }
  const writes: ChildList[] = [];
  for (const [parentId, group] of groups) {
    const before = book.get(parentId) ?? [];
    const after = childrenOf(known, { parentId, before, group }, rules);
    if (!settle(group, { parentId, after }, rules)) continue;
    if (group.some(({ fate }) => fate.fate !== 'same')) writes.push({ parentId, before, after });
  }
  return { fates: judged.map((each) => ('child' in each ? each.fate : each)), writes };
}

function mergeChild(known: MergeBook, child: ChildRow, rules: ChildRules): Judged {
  const { row, title, parentId, said } = child;
  const key = nameKey(parentId, rules.keyOf(Object.fromEntries(said)));
  const merged = known.merge(key, said, row.number);
  if (!merged.ok) return { child, key, fate: failed(row.number, title, merged.problems) };
  const { outcome, changes } = merged.merge;
  return { child, key, fate: { row: row.number, fate: outcome, title, changes, problems: [] } };
}

/** What the book has of a parent in its order, then what the file adds in its own. */
function childrenOf(
  known: MergeBook,
  of: {
    readonly parentId: string;
    readonly before: readonly Values[];
    readonly group: readonly Judged[];
  },
  rules: ChildRules,
): Values[] {
  const keys = new Set([
    ...of.before.map((values) => nameKey(of.parentId, rules.keyOf(values))),
    ...of.group.map(({ key }) => key),
  ]);
  const children = [...keys].flatMap((key): Values[] => {
    const values = known.find(key)?.values;
    return values ? [values] : [];
  });
  return rules.order ? children.sort(rules.order) : children;
}

/** Whether all of a parent go together; otherwise says so in each row of it. */
function settle(
  group: readonly Judged[],
  { parentId, after }: { readonly parentId: string; readonly after: readonly Values[] },
  rules: ChildRules,
): boolean {
  const own = new Map<Judged, CellProblem[]>();
  if (group.every(({ fate }) => fate.fate !== 'error')) {
    for (const { at, problem: wrong } of rules.check(parentId, after)) {
      const values = at === null ? undefined : after[at];
      const key = values && nameKey(parentId, rules.keyOf(values));
      const where = group.findLast((each) => each.key === key) ?? group.at(-1);
      if (where) own.set(where, [...(own.get(where) ?? []), wrong]);
    }
    if (own.size === 0) return true;
  }
  for (const each of group) {
    if (each.fate.fate === 'error') continue;
    const wrong = own.get(each) ?? [problem(null, 'other-row-of-list')];
    each.fate = failed(each.fate.row, each.fate.title, wrong);
  }
  return false;
}
