import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import { ButtonLink } from '../../../ui/button-link.js';
import { type Column, DataTable } from '../../../ui/data-table.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { FilterDay, FilterSelect, Filters, SearchBox } from '../../../ui/filters.js';
import { Loaded } from '../../../ui/loaded.js';
import { PageHead } from '../../../ui/page-head.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { Day, Money } from '../../../ui/values.js';
import { type DeliverySummary, deliveriesQuery } from '../api/list-deliveries.js';
import { suppliersQuery } from '../api/list-suppliers.js';
import css from '../parts/parts.module.css';
import { ShelvesNav } from '../parts/shelves-nav.js';

const route = getRouteApi('/in/shelves/deliveries');

/** What came, the latest first. */
export function DeliveriesScreen() {
  const { deliveries, shelves } = useText();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const may = useMay();
  const page = useQuery(deliveriesQuery(search));
  const columns = useColumns();
  const filtered = [search.q, search.supplierId, search.from, search.to].some(Boolean);
  const empty = <EmptyState title={deliveries.empty} hint={deliveries.emptyHint} />;
  return (
    <>
      <PageHead title={deliveries.title} lead={deliveries.lead}>
        {may('deliveries.book') && (
          <ButtonLink to="/shelves/deliveries/new">{shelves.receive}</ButtonLink>
        )}
      </PageHead>
      <ShelvesNav />
      <DeliveryFilters />
      <Loaded query={page}>
        {(data) => (
          <DataTable
            label={deliveries.list}
            columns={columns}
            rows={data.items}
            rowKey={(row) => row.id}
            cursor={search.cursor}
            nextCursor={data.nextCursor}
            onCursor={(to) => void navigate({ search: (old) => ({ ...old, cursor: to }) })}
            stale={page.isPlaceholderData}
            {...(filtered ? {} : { empty })}
          />
        )}
      </Loaded>
    </>
  );
}

function DeliveryFilters() {
  const { filter } = useText().deliveries;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const suppliers = useQuery(suppliersQuery).data ?? [];
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, cursor: undefined, ...part }), replace: true });
  return (
    <Filters>
      <SearchBox label={filter.q} value={search.q} onSearch={(q) => change({ q })} />
      <FilterSelect
        label={filter.supplier}
        value={search.supplierId}
        choices={suppliers.map(({ id, name }) => ({ value: id, label: name }))}
        onChoose={(supplierId) => change({ supplierId })}
      />
      <FilterDay label={filter.from} value={search.from} onChoose={(from) => change({ from })} />
      <FilterDay label={filter.to} value={search.to} onChoose={(to) => change({ to })} />
    </Filters>
  );
}

function Received({ row }: { readonly row: DeliverySummary }) {
  return (
    <Link to="/shelves/deliveries/$deliveryId" params={{ deliveryId: row.id }} className={css.name}>
      <Day value={row.receivedOn} />
    </Link>
  );
}

function State({ row }: { readonly row: DeliverySummary }) {
  const { reversed, standing } = useText().deliveries;
  return row.reversed ? (
    <StatusMark tone="caution">{reversed}</StatusMark>
  ) : (
    <StatusMark tone="good">{standing}</StatusMark>
  );
}

function useColumns(): Column<DeliverySummary>[] {
  const { columns } = useText().deliveries;
  const sum = (
    id: 'goods' | 'freight' | 'discount' | 'landed',
    of: (row: DeliverySummary) => string,
    more: { readonly wideOnly?: boolean } = { wideOnly: true },
  ): Column<DeliverySummary> => ({
    ...{ id, head: columns[id], align: 'end', ...more },
    cell: (row) => <Money value={of(row)} />,
  });
  return [
    { id: 'day', head: columns.day, cell: (row) => <Received row={row} /> },
    { id: 'supplier', head: columns.supplier, cell: (row) => row.supplier.name },
    {
      id: 'reference',
      head: columns.reference,
      cell: (row) => row.reference ?? <span className={css.quiet}>–</span>,
    },
    { id: 'lines', head: columns.lines, align: 'end', cell: (row) => String(row.lineCount) },
    sum('goods', (row) => row.goodsTotal),
    sum('freight', (row) => row.freight),
    sum('discount', (row) => row.discount),
    sum('landed', (row) => row.landedTotal, {}),
    { id: 'state', head: columns.state, cell: (row) => <State row={row} /> },
  ];
}
