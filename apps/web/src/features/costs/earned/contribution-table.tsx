import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import type { Column } from '../../../ui/data-table.js';
import { micro } from '../../../ui/drawn.js';
import { Money } from '../../../ui/values.js';
import type { ContributionRow } from '../api/report-contributions.js';
import { choiceOf } from '../choice.js';
import { GroupedTable } from '../grouped-table.js';
import type { Group } from '../groups.js';
import { largestFirst } from '../sort-rows.js';
import type { ContributionSort } from './earned-choices.js';

const route = getRouteApi('/in/costs/contributions');

/** Below every amount: what nobody knows comes last. */
const UNKNOWN = -(10n ** 30n);

const known = (value: string | null) => (value === null ? UNKNOWN : micro(value));

const VALUES: Readonly<Record<ContributionSort, (row: ContributionRow) => bigint>> = {
  restorations: (row) => BigInt(row.restorations),
  income: (row) => micro(row.income),
  material: (row) => micro(row.material),
  contribution: (row) => micro(row.contribution),
  hour: (row) => known(row.contributionPerHour),
  p10: (row) => known(row.p10),
  p50: (row) => known(row.p50),
  p90: (row) => known(row.p90),
};

interface Props {
  readonly rows: readonly ContributionRow[];
  readonly groups: readonly Group[];
  readonly stale: boolean;
}

export function ContributionTable({ rows, groups, stale }: Props) {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const sort = search.sort ?? 'contribution';
  return (
    <GroupedTable<ContributionRow, ContributionSort>
      rows={largestFirst(rows, VALUES[sort])}
      groups={groups}
      choice={choiceOf(search)}
      figures={useFigures()}
      sort={sort}
      show={search.show}
      stale={stale}
      onChange={(part) =>
        void navigate({ search: (old) => ({ ...old, ...part }), replace: true, resetScroll: false })
      }
    />
  );
}

function useFigures(): Column<ContributionRow, ContributionSort>[] {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.contributions;
  const money = (
    sort: ContributionSort,
    head: string,
    of: (row: ContributionRow) => string | null,
    wideOnly = false,
  ): Column<ContributionRow, ContributionSort> => ({
    ...{ id: sort, head, sort, wideOnly, align: 'end', descending: true },
    cell: (row) => <Money value={of(row)} />,
  });
  return [
    {
      ...{ id: 'n', head: t.costs.table.restorations, sort: 'restorations' },
      ...{ align: 'end', descending: true },
      cell: (row) => format.number(String(row.restorations)),
    },
    money('income', words.income, (row) => row.income),
    money('material', words.material, (row) => row.material, true),
    money('contribution', words.contribution, (row) => row.contribution),
    money('hour', words.perHour, (row) => row.contributionPerHour),
    money('p10', t.costs.table.p10, (row) => row.p10, true),
    money('p50', t.costs.table.p50, (row) => row.p50),
    money('p90', t.costs.table.p90, (row) => row.p90, true),
  ];
}
