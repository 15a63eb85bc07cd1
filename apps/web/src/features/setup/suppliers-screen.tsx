import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Filters, SearchBox } from '../../ui/filters.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { RowButton } from '../../ui/row-button.js';
import { InUseMark, ShownFilter } from '../../ui/shown-filter.js';
import { type Supplier, suppliersQuery } from './api/list-suppliers.js';
import type { SupplierSort } from './sorts.js';
import { SupplierDialogs } from './supplier-form.js';

const route = getRouteApi('/in/setup/suppliers');

export function SuppliersScreen() {
  const w = useText().setupSuppliers;
  const may = useMay();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const list = useQuery(suppliersQuery(search));
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, cursor: undefined, ...part }), replace: true });
  const open = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, ...part }) });
  const columns = useColumns((id) => open({ edit: id }));
  return (
    <>
      <PageHead title={w.title} lead={w.lead}>
        {may('catalogue.write') && <Button onClick={() => open({ new: '1' })}>{w.add}</Button>}
      </PageHead>
      <Filters>
        <SearchBox value={search.q} onSearch={(q) => change({ q })} />
        <ShownFilter value={search.show} onChoose={(show) => change({ show })} />
      </Filters>
      <Loaded query={list}>
        {(page) => (
          <DataTable<Supplier, SupplierSort>
            label={w.title}
            columns={columns}
            rows={page.items}
            rowKey={(row) => row.id}
            marked={search.edit}
            stale={list.isPlaceholderData}
            sort={search.sort ?? 'name'}
            bothWays
            onSort={(sort) => change({ sort: sort === 'name' ? undefined : sort })}
            cursor={search.cursor}
            nextCursor={page.nextCursor}
            onCursor={(cursor) => open({ cursor })}
            empty={<Nothing filtered={search.q !== undefined || search.show !== undefined} />}
          />
        )}
      </Loaded>
      {may('catalogue.write') && <SupplierDialogs />}
    </>
  );
}

function Nothing({ filtered }: { readonly filtered: boolean }) {
  const t = useText();
  const w = t.setupSuppliers;
  return filtered ? (
    <EmptyState title={t.ui.emptySearch} hint={t.ui.emptySearchHint} />
  ) : (
    <EmptyState title={w.empty} hint={w.emptyHint} />
  );
}

function useColumns(onChange: (id: string) => void): Column<Supplier, SupplierSort>[] {
  const t = useText();
  const may = useMay();
  const w = t.setupSuppliers.columns;
  const change: Column<Supplier, SupplierSort> = {
    id: 'change',
    head: '',
    align: 'end',
    cell: ({ id, name }) => (
      <RowButton label={t.setup.changeOf(name)} onClick={() => onChange(id)}>
        {t.setup.change}
      </RowButton>
    ),
  };
  return [
    { id: 'name', head: w.name, sort: 'name', cell: ({ name }) => <strong>{name}</strong> },
    {
      ...{ id: 'email', head: w.email, sort: 'email' },
      cell: ({ email }) => email ?? t.ui.notStated,
    },
    { id: 'state', head: w.state, cell: ({ active }) => <InUseMark active={active} /> },
    ...(may('catalogue.write') ? [change] : []),
  ];
}
