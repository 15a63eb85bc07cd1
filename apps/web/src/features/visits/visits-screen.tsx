import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { createLink, getRouteApi, Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import type { Text } from '../../text/text.js';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { PrintButton } from '../../ui/print-button.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Day, Money } from '../../ui/values.js';
import { type VisitSummary, visitsQuery } from './api/list-visits.js';
import { VisitFilters } from './visit-filters.js';
import css from './visits.module.css';

const route = getRouteApi('/in/visits');
const ButtonLink = createLink(Button<'a'>);

/** Every visit in the book. */
export function VisitsScreen() {
  const t = useText();
  const may = useMay();
  const search = route.useSearch();
  const { q, dentistId, locationId, from, to, stock, cursor } = search;
  const isBackwards = from !== undefined && to !== undefined && from > to;
  const query = useQuery({
    ...visitsQuery({
      ...(q === undefined ? {} : { chartReference: q }),
      ...(dentistId === undefined ? {} : { dentistId }),
      ...(locationId === undefined ? {} : { locationId }),
      ...(from === undefined ? {} : { from }),
      ...(to === undefined ? {} : { to }),
      ...(stock === undefined ? {} : { estimated: stock === 'short' ? 'true' : 'false' }),
      ...(cursor === undefined ? {} : { cursor }),
    }),
    enabled: !isBackwards,
  });
  return (
    <>
      <PageHead title={t.visits.title} lead={t.visits.lead}>
        <PrintButton />
        <ButtonLink component="a" to="/visits/booked" variant="default">
          {t.visits.booked}
        </ButtonLink>
        {may('visits.post') && (
          <ButtonLink component="a" to="/chairside">
            {t.visits.record}
          </ButtonLink>
        )}
      </PageHead>
      <VisitFilters wrong={isBackwards ? t.visits.order : undefined} />
      {!isBackwards && (
        <Loaded query={query}>
          {(page) => <VisitTable page={page} stale={query.isPlaceholderData} />}
        </Loaded>
      )}
      <Caution />
    </>
  );
}

interface TableProps {
  readonly page: { readonly items: readonly VisitSummary[]; readonly nextCursor: string | null };
  readonly stale: boolean;
}

function VisitTable({ page, stale }: TableProps) {
  const t = useText();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const isFiltered = Object.entries(search).some(
    ([name, value]) => name !== 'cursor' && value !== undefined,
  );
  return (
    <DataTable
      label={t.visits.title}
      columns={columnsOf(t)}
      rows={page.items}
      rowKey={({ id }) => id}
      stale={stale}
      cursor={search.cursor}
      nextCursor={page.nextCursor}
      onCursor={(cursor) => void navigate({ search: (old) => ({ ...old, cursor }) })}
      {...(isFiltered
        ? {}
        : { empty: <EmptyState title={t.visits.empty} hint={t.visits.emptyHint} /> })}
    />
  );
}

function columnsOf(t: Text): Column<VisitSummary>[] {
  const heads = t.visits.columns;
  return [
    { id: 'day', head: heads.day, cell: (visit) => <Day value={visit.visitedOn} /> },
    {
      id: 'chart',
      head: heads.chart,
      cell: (visit) => (
        <Link to="/visits/$visitId" params={{ visitId: visit.id }} className={css.chart}>
          {visit.chartReference}
        </Link>
      ),
    },
    {
      id: 'restorations',
      head: heads.restorations,
      cell: (visit) => <span className={css.restorations}>{inWords(t, visit.restorations)}</span>,
    },
    { id: 'dentist', head: heads.dentist, cell: (visit) => visit.dentist.name },
    { id: 'room', head: heads.room, cell: (visit) => visit.location.name, wideOnly: true },
    {
      id: 'cost',
      head: heads.cost,
      align: 'end',
      cell: (visit) => <Money value={visit.materialCost} />,
    },
    { id: 'state', head: heads.state, cell: (visit) => <State visit={visit} /> },
  ];
}

/** '11 M decay, 21 MI cosmetic', the reasons in the person's language. */
function inWords(t: Text, restorations: string): string {
  const reasons: Readonly<Record<string, string>> = t.visits.reasons;
  return restorations.replace(/\b[a-z]{4,}\b/g, (word) => reasons[word] ?? word);
}

function State({ visit }: { readonly visit: VisitSummary }) {
  const t = useText();
  if (visit.reversed) return <StatusMark tone="quiet">{t.visits.reversed}</StatusMark>;
  if (visit.estimated) return <StatusMark tone="caution">{t.visits.estimated}</StatusMark>;
  return null;
}
