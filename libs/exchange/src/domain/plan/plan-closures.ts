import { type Closure, checkClosures, MOST_CLOSURES, PLAIN_TERMS } from '#lib/purchasing';
import { failed } from '../fate.js';
import { type CellProblem, problem } from '../problems.js';
import type { ListRow } from '../read-rows.js';
import { nameKey, type Values } from './merge.js';
import { type ChildPlan, type ChildRules, planChildren, type ReadChild } from './plan-children.js';

export interface ClosureFacts {
  /** Ids of suppliers by their names in lower case. */
  readonly suppliers: ReadonlyMap<string, string>;
  /** What the book has, by the id of the supplier. */
  readonly closures: ReadonlyMap<string, readonly Closure[]>;
}

/** What becomes of each row of a list of days on which suppliers are closed. */
export function planClosures(facts: ClosureFacts, rows: readonly ListRow[]): ChildPlan {
  const book = new Map(
    [...facts.closures].map(([id, closures]) => [id, closures.map((each) => ({ ...each }))]),
  );
  const read = rows.map((row) => readClosure(facts, row));
  return planChildren(book, read, RULES);
}

/** A closure that was read from a list. */
export function closureOf(values: Values): Closure {
  const { firstDay, lastDay, note } = values;
  return { firstDay: firstDay ?? '', lastDay: lastDay ?? '', note: note ?? null };
}

const RULES: ChildRules = {
  defaults: { firstDay: null, lastDay: null, note: null },
  needed: ['lastDay'],
  keyOf: ({ firstDay }) => firstDay ?? '',
  order: (a, b) => ((a.firstDay ?? '') < (b.firstDay ?? '') ? -1 : 1),
  check: (_supplierId, all) => {
    const closures = all.map(closureOf);
    const early = closures.flatMap(({ firstDay, lastDay }, at) =>
      lastDay < firstDay ? [{ at, problem: problem('lastDay', 'day-before-first', firstDay) }] : [],
    );
    if (early.length > 0) return early;
    if (closures.length > MOST_CLOSURES) {
      return [{ at: null, problem: problem(null, 'too-many-closures', MOST_CLOSURES) }];
    }
    const wrong = checkClosures({ ...PLAIN_TERMS, closures });
    if (wrong === null) return [];
    const [, at = '0', field] = /^closures\[(\d+)\]\.(\w+)$/.exec(wrong.field) ?? [];
    const said =
      field === 'firstDay'
        ? problem('firstDay', 'closure-overlaps')
        : problem('lastDay', 'closed-too-long');
    return [{ at: Number(at), problem: said }];
  },
};

function readClosure({ suppliers }: ClosureFacts, row: ListRow): ReadChild {
  const { number, values } = row;
  const name = values.get('supplier');
  const title = [name, values.get('firstDay')].filter(Boolean).join(', ');
  const wrong: CellProblem[] = [...row.problems];
  const parentId = name === undefined ? undefined : suppliers.get(nameKey(name));
  if (wrong.length === 0) {
    if (name === undefined) wrong.push(problem('supplier', 'supplier-blank'));
    else if (!parentId) wrong.push(problem('supplier', 'no-supplier-yet', name));
    if (!values.has('firstDay')) wrong.push(problem('firstDay', 'blank'));
  }
  if (wrong.length > 0 || !parentId) return { ok: false, fate: failed(number, title, wrong) };
  const said = new Map([...values].filter(([key]) => key !== 'supplier'));
  return { ok: true, child: { row, title, parentId, said } };
}
