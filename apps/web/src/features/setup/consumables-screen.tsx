import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { Dialog } from '../../ui/dialog.js';
import { EmptyState } from '../../ui/empty-state.js';
import { FilterSelect, Filters, SearchBox } from '../../ui/filters.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { InUseMark, ShownFilter } from '../../ui/shown-filter.js';
import { Amount } from '../../ui/values.js';
import { categoriesQuery } from './api/list-categories.js';
import { type Consumable, consumablesQuery } from './api/list-consumables.js';
import { ConsumableForm } from './consumable-form.js';
import { attributesOf } from './consumable-words.js';
import css from './parts.module.css';
import type { ConsumableSort } from './sorts.js';

const route = getRouteApi('/in/setup/consumables');

export function ConsumablesScreen() {
  const w = useText().setupCatalogue;
  const may = useMay();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const list = useQuery(consumablesQuery(search));
  const columns = useColumns(search.show !== undefined);
  const goTo = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, ...part }) });
  const write = may('catalogue.write');
  return (
    <>
      <PageHead title={w.title} lead={w.lead}>
        {write && <Button onClick={() => goTo({ new: '1' })}>{w.add}</Button>}
      </PageHead>
      <ConsumableFilters />
      <Loaded query={list}>
        {(page) => (
          <DataTable<Consumable, ConsumableSort>
            label={w.title}
            columns={columns}
            rows={page.items}
            rowKey={(row) => row.id}
            stale={list.isPlaceholderData}
            sort={search.sort ?? 'name'}
            bothWays
            onSort={(sort) => goTo({ sort: sort === 'name' ? undefined : sort, cursor: undefined })}
            cursor={search.cursor}
            nextCursor={page.nextCursor}
            onCursor={(cursor) => goTo({ cursor })}
            empty={<Nothing />}
          />
        )}
      </Loaded>
      {write && <NewConsumable />}
    </>
  );
}

function ConsumableFilters() {
  const w = useText().setupCatalogue;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const categories = useQuery(categoriesQuery).data?.items ?? [];
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, cursor: undefined, ...part }), replace: true });
  return (
    <Filters>
      <SearchBox value={search.q} onSearch={(q) => change({ q })} />
      <FilterSelect
        label={w.category}
        value={search.category}
        choices={categories.map(({ name, consumables }) => ({
          value: name,
          label: w.anyCategory(name, consumables),
        }))}
        onChoose={(category) => change({ category })}
      />
      <ShownFilter value={search.show} onChoose={(show) => change({ show })} />
    </Filters>
  );
}

function Nothing() {
  const t = useText();
  const { q, category, show } = route.useSearch();
  const w = t.setupCatalogue;
  if (q === undefined && category === undefined && show === undefined) {
    return <EmptyState title={w.empty} hint={w.emptyHint} />;
  }
  return <EmptyState title={t.ui.emptySearch} hint={t.ui.emptySearchHint} />;
}

function NewConsumable() {
  const w = useText().setupCatalogue;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const close = () => void navigate({ search: (old) => ({ ...old, new: undefined }) });
  return (
    <Dialog title={w.addTitle} size="xl" opened={search.new !== undefined} onClose={close}>
      <ConsumableForm
        category={search.category ?? ''}
        onClose={close}
        onSaved={({ id }) =>
          void navigate({
            to: '/setup/consumables/$consumableId',
            params: { consumableId: id },
            search: {},
          })
        }
      />
    </Dialog>
  );
}

function useColumns(withState: boolean): Column<Consumable, ConsumableSort>[] {
  const t = useText();
  const w = t.setupCatalogue;
  const figure = (value: string | null, unit: string) =>
    value === null ? <span className={css.quiet}>–</span> : <Amount value={value} unit={unit} />;
  const state: Column<Consumable, ConsumableSort> = {
    id: 'state',
    head: w.columns.state,
    cell: ({ active }) => <InUseMark active={active} />,
  };
  return [
    {
      ...{ id: 'name', head: w.columns.name, sort: 'name' },
      cell: (row) => <NameLink consumable={row} />,
    },
    {
      ...{ id: 'category', head: w.columns.category, sort: 'category' },
      cell: ({ category }) => category,
    },
    {
      id: 'unit',
      head: w.columns.unit,
      wideOnly: true,
      cell: ({ stockUnit }) => w.units[stockUnit],
    },
    {
      id: 'reorder',
      sort: 'reorderAt',
      head: w.columns.reorder,
      align: 'end',
      cell: ({ reorderAt, stockUnit }) => figure(reorderAt, stockUnit),
    },
    {
      id: 'upTo',
      sort: 'reorderUpTo',
      head: w.columns.upTo,
      align: 'end',
      cell: ({ reorderUpTo, stockUnit }) => figure(reorderUpTo, stockUnit),
    },
    {
      id: 'life',
      head: w.columns.life,
      align: 'end',
      wideOnly: true,
      cell: ({ lifeAfterOpening: life }) =>
        life ? w.lifeOf(life.value, life.unit) : <span className={css.quiet}>{w.untilLabel}</span>,
    },
    ...(withState ? [state] : []),
  ];
}

function NameLink({ consumable }: { readonly consumable: Consumable }) {
  const attributes = attributesOf(consumable);
  return (
    <>
      <Link
        className={css.name}
        to="/setup/consumables/$consumableId"
        params={{ consumableId: consumable.id }}
        search={{}}
      >
        {consumable.name}
      </Link>
      {attributes !== '' && <span className={css.attributes}>{attributes}</span>}
    </>
  );
}
