import { Link } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import type { Column } from '../../ui/data-table.js';
import type { Choice } from './choice.js';
import {
  choiceOfRow,
  type Group,
  type GroupedRow,
  type GroupWords,
  nameOfRow,
  partOf,
} from './groups.js';

function useGroupWords(): GroupWords {
  const t = useText();
  const format = useFormat();
  return { reasons: t.costs.reasons, month: format.month };
}

/** What a row is called by all its groups. */
export function useRowName(groups: readonly Group[]): (row: GroupedRow) => string {
  const words = useGroupWords();
  return (row) => nameOfRow(row, groups, words);
}

/** The columns that say what a row is; the first leads to the restorations behind it. */
export function useGroupColumns<Row extends GroupedRow>(groups: readonly Group[], choice: Choice) {
  const t = useText();
  const words = useGroupWords();
  return groups.map(
    (group, at): Column<Row> => ({
      id: group,
      head: t.costs.groups[group],
      cell: (row) =>
        at === 0 ? (
          <Link to="/costs/restorations" search={choiceOfRow(row, choice)}>
            {partOf(row, group, words)}
          </Link>
        ) : (
          partOf(row, group, words)
        ),
    }),
  );
}
