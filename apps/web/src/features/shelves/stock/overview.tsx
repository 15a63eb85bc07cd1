import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { useMay, useSession } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { ButtonLink } from '../../../ui/button-link.js';
import { Caution } from '../../../ui/caution.js';
import { DataTable } from '../../../ui/data-table.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Loaded } from '../../../ui/loaded.js';
import { PageHead } from '../../../ui/page-head.js';
import { PrintButton } from '../../../ui/print-button.js';
import { summaryQuery } from '../api/list-summary.js';
import { ShelvesNav } from '../parts/shelves-nav.js';
import { useOverviewColumns } from './overview-columns.js';
import { OverviewFilters } from './overview-filters.js';

const route = getRouteApi('/in/shelves');

/** One line per consumable: how much, how long, worth what. */
export function Overview({ scan }: { readonly scan: ReactNode }) {
  const { q, category, shade, locationId, sort, cursor } = route.useSearch();
  const navigate = route.useNavigate();
  const t = useText();
  const page = useQuery(summaryQuery({ q, category, shade, locationId, sort, cursor }));
  const columns = useOverviewColumns(locationId !== undefined);
  const filtered = [q, category, shade, locationId].some((one) => one !== undefined);
  return (
    <>
      <Head scan={scan} />
      <ShelvesNav />
      <OverviewFilters />
      <Loaded query={page}>
        {(data) => (
          <DataTable
            label={t.shelves.list}
            columns={columns}
            rows={data.items}
            rowKey={(row) => row.consumable.id}
            sort={sort ?? 'consumable'}
            onSort={(to) =>
              void navigate({ search: (old) => ({ ...old, sort: to, cursor: undefined }) })
            }
            cursor={cursor}
            nextCursor={data.nextCursor}
            onCursor={(to) => void navigate({ search: (old) => ({ ...old, cursor: to }) })}
            stale={page.isPlaceholderData}
            {...(filtered ? {} : { empty: <Empty /> })}
          />
        )}
      </Loaded>
      <Caution />
    </>
  );
}

function Head({ scan }: { readonly scan: ReactNode }) {
  const t = useText();
  const may = useMay();
  const format = useFormat();
  const { today } = useSession();
  return (
    <PageHead title={t.shelves.title} lead={t.shelves.lead(format.day(today))}>
      <PrintButton />
      {scan}
      {may('stock.handle') && (
        <ButtonLink
          from="/shelves"
          to="/shelves"
          search={({ locationId }) => ({ locationId, do: 'count' as const })}
          variant="default"
        >
          {t.shelves.count}
        </ButtonLink>
      )}
      {may('deliveries.book') && (
        <ButtonLink to="/shelves/deliveries/new">{t.shelves.receive}</ButtonLink>
      )}
    </PageHead>
  );
}

function Empty() {
  const t = useText();
  return <EmptyState title={t.shelves.empty} hint={t.shelves.emptyHint} />;
}
