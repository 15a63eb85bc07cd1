import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import type { Column } from '../../ui/data-table.js';
import { Money } from '../../ui/values.js';
import { choiceOf } from './choice.js';
import { GroupedTable } from './grouped-table.js';
import type { CostRow, Group } from './groups.js';
import type { RowSort } from './sort-rows.js';

const route = getRouteApi('/in/costs');

interface Props {
  readonly rows: readonly CostRow[];
  readonly groups: readonly Group[];
  readonly sort: RowSort;
  readonly stale: boolean;
}

/** Every figure of the picture above; a row leads to the restorations behind it. */
export function GroupTable({ rows, groups, sort, stale }: Props) {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  return (
    <GroupedTable<CostRow, RowSort>
      rows={rows}
      groups={groups}
      choice={choiceOf(search)}
      figures={useFigures()}
      sort={sort}
      byName="name"
      show={search.show}
      stale={stale}
      onChange={(part) =>
        void navigate({
          search: (old) => ({ ...old, ...part }),
          replace: true,
          resetScroll: false,
        })
      }
    />
  );
}

function useFigures(): Column<CostRow, RowSort>[] {
  const t = useText();
  const format = useFormat();
  const words = t.costs.table;
  const money = (
    id: string,
    head: string,
    of: (row: CostRow) => string,
    more: Partial<Column<CostRow, RowSort>> = {},
  ): Column<CostRow, RowSort> => ({
    ...{ id, head, align: 'end' as const, descending: true },
    cell: (row) => <Money value={of(row)} />,
    ...more,
  });
  return [
    {
      ...{ id: 'n', head: words.restorations, align: 'end', sort: 'restorations' },
      descending: true,
      cell: (row) => format.number(String(row.restorations)),
    },
    money('p10', words.p10, (row) => row.p10),
    money('p50', words.p50, (row) => row.p50, { sort: 'p50' }),
    money('p90', words.p90, (row) => row.p90, { sort: 'p90' }),
    money('max', words.max, (row) => row.max, { sort: 'max', wideOnly: true }),
    money('own', words.own, (row) => row.ownCost, { wideOnly: true }),
    money('shared', words.shared, (row) => row.sharedCost, { wideOnly: true }),
    money('retakes', words.retakes, (row) => row.retakeCost, { sort: 'retakes' }),
    money('total', words.total, (row) => row.total, { sort: 'total' }),
  ];
}
