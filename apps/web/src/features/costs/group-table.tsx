import { Button } from '@mantine/core';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { Section } from '../../ui/section.js';
import { Money } from '../../ui/values.js';
import { choiceOf } from './choice.js';
import { type CostRow, choiceOfRow, type Group, keyOfRow, partOf } from './groups.js';
import type { RowSort } from './sort-rows.js';

const route = getRouteApi('/in/costs');

const FEW = 50;

interface Props {
  readonly rows: readonly CostRow[];
  readonly groups: readonly Group[];
  readonly sort: RowSort;
  readonly stale: boolean;
}

/** Every figure of the picture above; a row leads to the restorations behind it. */
export function GroupTable({ rows, groups, sort, stale }: Props) {
  const t = useText();
  const format = useFormat();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const limit = Number(search.show ?? FEW);
  const columns = [...useNames(groups), ...useFigures()];
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, ...part }), replace: true, resetScroll: false });
  return (
    <Section
      title={t.costs.table.title}
      aside={t.costs.table.rows(format.number(String(rows.length)))}
    >
      <DataTable<CostRow, RowSort>
        label={t.costs.table.title}
        columns={columns}
        rows={rows.slice(0, limit)}
        rowKey={keyOfRow}
        sort={sort}
        stale={stale}
        onSort={(by) => change({ sort: by, show: undefined })}
      />
      {rows.length > limit && (
        <Button
          variant="default"
          mt="md"
          className="tb-screen-only"
          onClick={() => change({ show: String(limit + 200) })}
        >
          {t.costs.table.more}
        </Button>
      )}
    </Section>
  );
}

function useNames(groups: readonly Group[]): Column<CostRow, RowSort>[] {
  const t = useText();
  const format = useFormat();
  const choice = choiceOf(route.useSearch());
  const words = { reasons: t.costs.reasons, month: format.month };
  return groups.map((group, at) => ({
    id: group,
    head: t.costs.groups[group],
    ...(at === 0 ? { sort: 'name' as const } : {}),
    cell: (row) =>
      at === 0 ? (
        <Link to="/costs/restorations" search={choiceOfRow(row, choice)}>
          {partOf(row, group, words)}
        </Link>
      ) : (
        partOf(row, group, words)
      ),
  }));
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
