import { failed, type RowFate } from '../fate.js';
import { problem } from '../problems.js';
import type { ListRow } from '../read-rows.js';
import { MergeBook, nameKey, type Thing, type ToWrite } from './merge.js';
import { NO_TERMS } from './terms.js';

export interface Plan {
  readonly fates: readonly RowFate[];
  readonly writes: readonly ToWrite[];
}

/** What becomes of each row of a list of suppliers. */
export function planSuppliers(
  book: readonly Thing[],
  rows: readonly ListRow[],
  newId: () => string,
): Plan {
  const known = new MergeBook(
    book.map((thing) => [nameKey(thing.values.name), thing] as const),
    {
      defaults: {
        ...{ name: null, email: null, language: 'en', customerNumber: null, active: 'yes' },
        ...NO_TERMS,
      },
      needed: [],
      newId,
    },
  );
  return { fates: rows.map((row) => fateOf(known, row)), writes: known.toWrite() };
}

function fateOf(known: MergeBook, row: ListRow): RowFate {
  const { number, values, problems } = row;
  const name = values.get('name');
  const title = name ?? '';
  if (problems.length > 0) return failed(number, title, problems);
  if (name === undefined) {
    return failed(number, title, [problem('name', 'name-blank')]);
  }
  const merged = known.merge(nameKey(name), values, number);
  if (!merged.ok) return failed(number, title, merged.problems);
  const { outcome, changes } = merged.merge;
  return { row: number, fate: outcome, title, changes, problems: [] };
}
