import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import type { Column } from '../../../ui/data-table.js';
import { micro } from '../../../ui/drawn.js';
import { Money } from '../../../ui/values.js';
import type { VarianceRow } from '../api/report-variances.js';
import { choiceOf } from '../choice.js';
import { GroupedTable } from '../grouped-table.js';
import type { Group } from '../groups.js';
import { SignedMoney } from '../signed-money.js';
import { largestFirst } from '../sort-rows.js';
import type { VarianceSort } from './variance-sorts.js';

const route = getRouteApi('/in/costs/variances');

const VALUES: Readonly<Record<VarianceSort, (row: VarianceRow) => bigint>> = {
  restorations: (row) => BigInt(row.restorations),
  standard: (row) => micro(row.standardCost),
  actual: (row) => micro(row.actualCost),
  price: (row) => micro(row.priceVariance),
  usage: (row) => micro(row.usageVariance),
  difference: (row) => micro(row.difference),
  waste: (row) => micro(row.wasteCost),
  retakes: (row) => micro(row.retakeCost),
};

interface Props {
  readonly rows: readonly VarianceRow[];
  readonly groups: readonly Group[];
  readonly stale: boolean;
}

export function VarianceTable({ rows, groups, stale }: Props) {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const sort = search.sort ?? 'difference';
  return (
    <GroupedTable<VarianceRow, VarianceSort>
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

function useFigures(): Column<VarianceRow, VarianceSort>[] {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.variances;
  const end = { align: 'end', descending: true } as const;
  const share = (value: string | null) => (value === null ? t.ui.none : format.percent(value));
  return [
    {
      ...{ id: 'n', head: t.costs.table.restorations, sort: 'restorations', ...end },
      cell: (row) => format.number(String(row.restorations)),
    },
    {
      ...{ id: 'standard', head: words.standard, sort: 'standard', ...end },
      cell: (row) => <Money value={row.standardCost} />,
    },
    {
      ...{ id: 'price', head: words.price, sort: 'price', ...end },
      cell: (row) => <SignedMoney value={row.priceVariance} />,
    },
    {
      ...{ id: 'usage', head: words.usage, sort: 'usage', ...end },
      cell: (row) => <SignedMoney value={row.usageVariance} />,
    },
    {
      ...{ id: 'actual', head: words.actual, sort: 'actual', ...end },
      cell: (row) => <Money value={row.actualCost} />,
    },
    {
      ...{ id: 'difference', head: words.difference, sort: 'difference', ...end },
      cell: (row) => <SignedMoney value={row.difference} />,
    },
    {
      ...{ id: 'waste', head: words.wasteShare, sort: 'waste', wideOnly: true, ...end },
      cell: (row) => share(row.wasteShare),
    },
    {
      ...{ id: 'retakes', head: words.retakeShare, sort: 'retakes', wideOnly: true, ...end },
      cell: (row) => share(row.retakeShare),
    },
  ];
}
