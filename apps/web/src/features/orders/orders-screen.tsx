import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { ButtonLink } from '../../ui/button-link.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { EmptyState } from '../../ui/empty-state.js';
import { FilterSelect, Filters } from '../../ui/filters.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { Day, Money } from '../../ui/values.js';
import { suppliersQuery } from './api/list-goods.js';
import { type OrderSummary, ordersQuery } from './api/list-orders.js';
import { STATE_FILTERS } from './choices.js';
import { OrderState } from './order-state.js';
import { RulesDialog } from './rules-dialog.js';

const route = getRouteApi('/in/ordering/orders');

/** Every order, the latest number first. */
export function OrdersScreen() {
  const w = useText().orders;
  const may = useMay();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const list = useQuery(ordersQuery(search));
  const columns = useColumns();
  const open = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, ...part }), resetScroll: false });
  const filtered = [search.state, search.supplierId, search.late].some((f) => f !== undefined);
  return (
    <>
      <PageHead title={w.title} lead={w.lead}>
        {may('practice.manage') && (
          <Button variant="default" onClick={() => open({ do: 'rules' })}>
            {w.rules}
          </Button>
        )}
        {may('orders.write') && <ButtonLink to="/ordering/orders/new">{w.create}</ButtonLink>}
      </PageHead>
      <OrderFilters />
      <Loaded query={list}>
        {(page) => (
          <DataTable<OrderSummary>
            label={w.title}
            columns={columns}
            rows={page.items}
            rowKey={(row) => row.id}
            stale={list.isPlaceholderData}
            cursor={search.cursor}
            nextCursor={page.nextCursor}
            onCursor={(cursor) => open({ cursor })}
            empty={filtered ? undefined : <NoOrders />}
          />
        )}
      </Loaded>
      {may('practice.manage') && (
        <RulesDialog opened={search.do === 'rules'} onClose={() => open({ do: undefined })} />
      )}
    </>
  );
}

function NoOrders() {
  const t = useText();
  return (
    <EmptyState title={t.orders.empty} hint={t.orders.emptyHint}>
      <ButtonLink to="/ordering" variant="default">
        {t.orders.toProposals}
      </ButtonLink>
    </EmptyState>
  );
}

function OrderFilters() {
  const w = useText().orders;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const suppliers = useQuery(suppliersQuery);
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, cursor: undefined, ...part }), replace: true });
  const named = (state: (typeof STATE_FILTERS)[number]) =>
    state === 'open' ? w.open : w.states[state];
  return (
    <Filters>
      <FilterSelect
        label={w.state}
        value={search.late === undefined ? search.state : 'late'}
        choices={[
          ...STATE_FILTERS.map((value) => ({ value, label: named(value) })),
          { value: 'late', label: w.lateOnly },
        ]}
        onChoose={(chosen) =>
          change(
            chosen === 'late'
              ? { late: '1', state: undefined }
              : { late: undefined, state: chosen },
          )
        }
      />
      <FilterSelect
        label={w.supplier}
        value={search.supplierId}
        choices={(suppliers.data ?? []).map(({ id, name }) => ({ value: id, label: name }))}
        onChoose={(supplierId) => change({ supplierId })}
      />
    </Filters>
  );
}

function useColumns(): Column<OrderSummary>[] {
  const w = useText().orders;
  const { number } = useFormat();
  return [
    {
      id: 'number',
      head: w.columns.number,
      cell: (order) => (
        <Link to="/ordering/orders/$orderId" params={{ orderId: order.id }}>
          {w.number(number(String(order.number)))}
        </Link>
      ),
    },
    { id: 'supplier', head: w.columns.supplier, cell: (order) => order.supplier.name },
    { id: 'state', head: w.columns.state, cell: (order) => <OrderState order={order} /> },
    {
      id: 'outstanding',
      head: w.columns.outstanding,
      cell: (order) => (order.outstandingLines === 0 ? '' : w.linesLeft(order.outstandingLines)),
    },
    {
      id: 'expected',
      head: w.columns.expected,
      cell: (order) => (order.expectedOn === null ? '' : <Day value={order.expectedOn} />),
    },
    {
      ...{ id: 'total', head: w.columns.total, align: 'end' },
      cell: (order) => <Money value={order.total} />,
    },
  ];
}
