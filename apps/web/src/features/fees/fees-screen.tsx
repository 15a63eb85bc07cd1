import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { Dialog } from '../../ui/dialog.js';
import { EmptyState } from '../../ui/empty-state.js';
import { FilterDay, Filters, SearchBox } from '../../ui/filters.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { PrintButton } from '../../ui/print-button.js';
import { InUseMark, ShownFilter } from '../../ui/shown-filter.js';
import { Money } from '../../ui/values.js';
import { type Fee, feesQuery } from './api/list-fees.js';
import { NewFeeForm } from './fee-form.js';
import css from './fees.module.css';
import { useUsedFor } from './used-for.js';

const route = getRouteApi('/in/setup/fees');

export function FeesScreen() {
  const w = useText().fees;
  const may = useMay();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const list = useQuery(feesQuery(search));
  const columns = useColumns();
  const goTo = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, ...part }) });
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, cursor: undefined, ...part }), replace: true });
  const write = may('pricing.write');
  return (
    <>
      <PageHead title={w.title} lead={w.lead}>
        {write && <Button onClick={() => goTo({ new: '1' })}>{w.add}</Button>}
        <PrintButton />
      </PageHead>
      <Filters>
        <SearchBox value={search.q} onSearch={(q) => change({ q })} />
        <ShownFilter value={search.show} onChoose={(show) => change({ show })} />
        <FilterDay label={w.on} value={search.on} onChoose={(on) => change({ on })} />
      </Filters>
      <Loaded query={list}>
        {(page) => (
          <DataTable
            label={w.title}
            columns={columns}
            rows={page.items}
            rowKey={(row) => row.id}
            stale={list.isPlaceholderData}
            cursor={search.cursor}
            nextCursor={page.nextCursor}
            onCursor={(cursor) => goTo({ cursor })}
            empty={<Nothing filtered={search.q !== undefined || search.show !== undefined} />}
          />
        )}
      </Loaded>
      {write && <NewFee />}
    </>
  );
}

function Nothing({ filtered }: { readonly filtered: boolean }) {
  const t = useText();
  return filtered ? (
    <EmptyState title={t.ui.emptySearch} hint={t.ui.emptySearchHint} />
  ) : (
    <EmptyState title={t.fees.empty} hint={t.fees.emptyHint} />
  );
}

function NewFee() {
  const w = useText().fees;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const close = () => void navigate({ search: (old) => ({ ...old, new: undefined }) });
  return (
    <Dialog title={w.addTitle} size="xl" opened={search.new !== undefined} onClose={close}>
      <NewFeeForm
        onClose={close}
        onSaved={({ id }) =>
          void navigate({ to: '/setup/fees/$feeId', params: { feeId: id }, search: {} })
        }
      />
    </Dialog>
  );
}

function useColumns(): Column<Fee>[] {
  const w = useText().fees;
  const format = useFormat();
  const usedFor = useUsedFor();
  const { on, show } = route.useSearch();
  const { columns } = w;
  const state: Column<Fee> = {
    id: 'state',
    head: columns.state,
    cell: ({ active }) => <InUseMark active={active} />,
  };
  return [
    { id: 'code', head: columns.code, cell: (row) => <CodeLink fee={row} /> },
    { id: 'name', head: columns.name, cell: ({ name }) => name },
    {
      id: 'class',
      head: columns.feeClass,
      cell: ({ feeClass }) => feeClass ?? <span className={css.quiet}>{w.noClass}</span>,
    },
    { id: 'for', head: columns.usedFor, wideOnly: true, cell: usedFor },
    ...(show === undefined ? [] : [state]),
    {
      id: 'price',
      head: on === undefined ? columns.price : columns.priceOn(format.day(on)),
      align: 'end',
      cell: ({ current }) =>
        current === null ? (
          <span className={css.quiet}>{w.noPrice}</span>
        ) : (
          <Money value={current.fee} />
        ),
    },
  ];
}

function CodeLink({ fee }: { readonly fee: Fee }) {
  return (
    <Link className={css.name} to="/setup/fees/$feeId" params={{ feeId: fee.id }} search={{}}>
      {fee.code}
    </Link>
  );
}
