import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import type { Column } from '../../../ui/data-table.js';
import { micro } from '../../../ui/drawn.js';
import { Money } from '../../../ui/values.js';
import type { ChairTimeRow } from '../api/report-chair-time.js';
import { GroupedTable } from '../grouped-table.js';
import type { Group } from '../groups.js';
import { largestFirst } from '../sort-rows.js';
import type { ChairTimeSort } from './chair-time-sorts.js';

const route = getRouteApi('/in/costs/chair-time');

const VALUES: Readonly<Record<ChairTimeSort, (row: ChairTimeRow) => bigint>> = {
  restorations: (row) => BigInt(row.restorations),
  minutes: (row) => BigInt(row.minutes),
  cost: (row) => micro(row.cost),
};

interface Props {
  readonly rows: readonly ChairTimeRow[];
  readonly groups: readonly Group[];
  /** Of the report, which knows one also when the address names none. */
  readonly period: { readonly from: string; readonly to: string };
  readonly stale: boolean;
}

export function ChairTimeTable({ rows, groups, period, stale }: Props) {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const sort = search.sort ?? 'cost';
  return (
    <GroupedTable<ChairTimeRow, ChairTimeSort>
      rows={largestFirst(rows, VALUES[sort])}
      groups={groups}
      choice={period}
      figures={useFigures(rows)}
      sort={sort}
      show={search.show}
      stale={stale}
      onChange={(part) =>
        void navigate({ search: (old) => ({ ...old, ...part }), replace: true, resetScroll: false })
      }
    />
  );
}

function useFigures(rows: readonly ChairTimeRow[]): Column<ChairTimeRow, ChairTimeSort>[] {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.chairTime;
  const end = { align: 'end', descending: true } as const;
  const minutes = (value: number) => words.minutes(format.number(String(value)));
  const columns: Column<ChairTimeRow, ChairTimeSort>[] = [
    {
      ...{ id: 'n', head: t.costs.table.restorations, sort: 'restorations', ...end },
      cell: (row) => format.number(String(row.restorations)),
    },
    {
      ...{ id: 'minutes', head: words.chairMinutes, sort: 'minutes', ...end },
      cell: (row) => minutes(row.minutes),
    },
    {
      ...{ id: 'each', head: words.each, ...end },
      cell: (row) => minutes(Math.round(row.minutes / Math.max(row.restorations, 1))),
    },
    {
      ...{ id: 'cost', head: words.cost, sort: 'cost', ...end },
      cell: (row) => <Money value={row.cost} />,
    },
  ];
  const assistants: Column<ChairTimeRow, ChairTimeSort>[] = [
    {
      ...{ id: 'assistants', head: words.assistants, ...end },
      cell: (row) => minutes(row.assistantMinutes),
    },
    {
      ...{ id: 'assistantCost', head: words.assistantCost, ...end },
      cell: (row) => <Money value={row.assistantCost} />,
    },
  ];
  const unpriced: Column<ChairTimeRow, ChairTimeSort> = {
    ...{ id: 'unpriced', head: words.withoutRate, ...end },
    cell: (row) => minutes(row.minutesWithoutRate),
  };
  return [
    ...columns,
    ...(rows.some((row) => row.assistantMinutes > 0) ? assistants : []),
    ...(rows.some((row) => row.minutesWithoutRate > 0) ? [unpriced] : []),
  ];
}
