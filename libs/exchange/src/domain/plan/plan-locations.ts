import { failed, type RowFate } from '../fate.js';
import { type CellProblem, problem } from '../problems.js';
import type { ListRow } from '../read-rows.js';
import { MergeBook, nameKey, type Thing } from './merge.js';
import type { Plan } from './plan-suppliers.js';

export interface LocationFacts {
  /** Values: name, kind, parent (a name), active. */
  readonly book: readonly Thing[];
  /** Ids of places that hold stock. */
  readonly holding: ReadonlySet<string>;
  readonly mostLevels: number;
}

/** What becomes of each row of a list of locations; a parent may stand further down in the file. */
export function planLocations(
  { book, holding, mostLevels }: LocationFacts,
  rows: readonly ListRow[],
  newId: () => string,
): Plan {
  const known = new MergeBook(
    book.map((thing) => [nameKey(thing.values.name), thing] as const),
    {
      defaults: { name: null, kind: null, parent: null, active: 'yes' },
      needed: ['kind'],
      check: ({ id, values }) =>
        values.active === 'no' && holding.has(id)
          ? [problem('active', 'location-holds-stock')]
          : [],
      newId,
    },
  );
  const first = rows.map((row) => mergeRow(known, row));
  const fates = rows.map((row, i) => {
    const fate = first[i];
    if (!fate) throw new Error('A row lost its fate');
    if (fate.fate === 'error') return fate;
    const wrong = placementProblem(known, row, mostLevels);
    return wrong ? failed(row.number, fate.title, [wrong]) : fate;
  });
  fates.forEach((fate) => {
    if (fate.fate === 'error') known.forget(nameKey(fate.title));
  });
  return { fates, writes: known.toWrite() };
}

function mergeRow(known: MergeBook, { number, values, problems }: ListRow): RowFate {
  const name = values.get('name');
  const title = name ?? '';
  if (problems.length > 0) return failed(number, title, problems);
  if (name === undefined) {
    return failed(number, title, [problem('name', 'name-blank')]);
  }
  const said = new Map(values);
  const parent = values.get('parent');
  // Written as the book writes it, so that another case is no change.
  if (parent !== undefined) said.set('parent', known.find(nameKey(parent))?.values.name ?? parent);
  const merged = known.merge(nameKey(name), said, number);
  if (!merged.ok) return failed(number, title, merged.problems);
  const { outcome, changes } = merged.merge;
  return { row: number, fate: outcome, title, changes, problems: [] };
}

/** Whether this row's place hangs where a place can hang, now that all rows are known. */
function placementProblem(
  known: MergeBook,
  row: ListRow,
  mostLevels: number,
): CellProblem | undefined {
  const own = nameKey(row.values.get('name'));
  const seen = new Set([own]);
  let here = known.find(own);
  while (here?.values.parent) {
    const key = nameKey(here.values.parent);
    const parent = known.find(key);
    if (!parent) {
      return problem('parent', 'no-location-anywhere', here.values.parent);
    }
    if (seen.has(key)) return problem('parent', 'location-in-itself');
    seen.add(key);
    here = parent;
  }
  if (seen.size <= mostLevels) return undefined;
  return problem('parent', 'too-many-levels', mostLevels);
}
