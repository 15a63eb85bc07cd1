import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Day, Money } from '../../ui/values.js';
import { type Restoration, restorationsQuery } from './api/list-restorations.js';
import { choiceOf } from './choice.js';
import { ChoiceFilters } from './choice-filters.js';
import { CostsNav } from './costs-nav.js';

const route = getRouteApi('/in/costs/restorations');

type Sort = 'date' | 'cost';

/** The restorations of a choice, one by one. */
export function RestorationsScreen() {
  const t = useText();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const columns = useColumns();
  const list = useQuery(restorationsQuery(search));
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, cursor: undefined, ...part }), replace: true });
  return (
    <>
      <PageHead title={t.costs.list.title} lead={t.costs.list.lead} />
      <CostsNav from={search.from} to={search.to} />
      <ChoiceFilters choice={choiceOf(search)} onChange={change} />
      {search.visitId !== undefined && (
        <p>
          {t.costs.list.ofVisit}{' '}
          <Link to="/costs/restorations" search={{ ...search, visitId: undefined }}>
            {t.costs.list.allVisits}
          </Link>
        </p>
      )}
      <Loaded query={list}>
        {(page) => (
          <DataTable<Restoration, Sort>
            label={t.costs.list.title}
            columns={columns}
            rows={page.items}
            rowKey={(row) => row.id}
            sort={search.sort ?? 'date'}
            onSort={(sort) => change({ sort: sort === 'date' ? undefined : sort })}
            cursor={search.cursor}
            nextCursor={page.nextCursor}
            onCursor={(cursor) =>
              void navigate({ search: (old) => ({ ...old, cursor }), resetScroll: true })
            }
            stale={list.isPlaceholderData}
            empty={<EmptyState title={t.costs.empty} hint={t.costs.emptyHint} />}
          />
        )}
      </Loaded>
      <Caution />
    </>
  );
}

function useColumns(): Column<Restoration, Sort>[] {
  const t = useText();
  const words = t.costs.list;
  return [
    {
      ...{ id: 'date', head: words.date, sort: 'date', descending: true },
      cell: (row) => <Day value={row.visitedOn} />,
    },
    {
      ...{ id: 'tooth', head: words.tooth },
      cell: (row) => (
        <Link
          to="/costs/restorations/$restorationId"
          params={{ restorationId: row.id }}
          aria-label={words.open(`${row.tooth} ${row.surfaces}`, row.chartReference)}
        >
          {row.tooth} {row.surfaces}
        </Link>
      ),
    },
    { id: 'chart', head: words.chart, cell: (row) => row.chartReference },
    { id: 'template', head: words.template, cell: (row) => row.template.name },
    { id: 'reason', head: words.reason, cell: (row) => t.costs.reasons[row.reason] },
    { id: 'dentist', head: words.dentist, wideOnly: true, cell: (row) => row.dentist.name },
    { id: 'again', head: words.again, cell: (row) => <Again row={row} /> },
    {
      ...{ id: 'own', head: words.own, align: 'end', wideOnly: true },
      cell: (row) => <Money value={row.ownCost} />,
    },
    {
      ...{ id: 'shared', head: words.shared, align: 'end', wideOnly: true },
      cell: (row) => <Money value={row.sharedCost} />,
    },
    {
      ...{ id: 'cost', head: words.cost, align: 'end', sort: 'cost', descending: true },
      cell: (row) => <Money value={row.cost} />,
    },
  ];
}

function Again({ row }: { readonly row: Restoration }) {
  const t = useText();
  const words = t.costs.list;
  if (row.reversed) return <StatusMark tone="quiet">{words.reversed}</StatusMark>;
  if (row.attempts < 2) return null;
  return <StatusMark tone="caution">{words.times(row.attempts - 1)}</StatusMark>;
}
