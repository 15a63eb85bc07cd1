import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import type { Text } from '../../text/text.js';
import { useText } from '../../text/text-provider.js';
import { ButtonLink } from '../../ui/button-link.js';
import { Caution } from '../../ui/caution.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { EmptyState } from '../../ui/empty-state.js';
import { FilterSelect, Filters, SearchBox } from '../../ui/filters.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { PrintButton } from '../../ui/print-button.js';
import { Amount } from '../../ui/values.js';
import { type PlannedItem, plannedItemsQuery } from './api/planned-items.js';
import { nameOf } from './names.js';
import { NextMark } from './next-mark.js';
import css from './parts.module.css';
import { ITEM_SORTS, type ItemSort, NEXTS, sortItems } from './sort-items.js';

const route = getRouteApi('/in/ordering/items');

/** Where every consumable stands. */
export function ItemsScreen() {
  const t = useText();
  const w = t.orderingItems;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const query = useQuery(plannedItemsQuery);
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, ...part }), replace: true });
  return (
    <>
      <PageHead title={w.title} lead={w.lead}>
        <PrintButton />
      </PageHead>
      {query.data?.items.length !== 0 && (
        <Filters>
          <SearchBox value={search.q} onSearch={(q) => change({ q })} />
          <FilterSelect
            label={w.next}
            value={search.next}
            choices={NEXTS.map((next) => ({ value: next, label: w.nexts[next] }))}
            onChoose={(next) => change({ next })}
          />
        </Filters>
      )}
      <Loaded query={query}>
        {({ items }) =>
          items.length === 0 ? (
            <EmptyState title={w.empty} hint={w.emptyHint}>
              <ButtonLink to="/setup/consumables">{t.ordering.now.toConsumables}</ButtonLink>
            </EmptyState>
          ) : (
            <ItemTable items={items} onSort={(sort) => change({ sort })} />
          )
        }
      </Loaded>
      <Caution />
    </>
  );
}

interface TableProps {
  readonly items: readonly PlannedItem[];
  readonly onSort: (sort: ItemSort | undefined) => void;
}

function ItemTable({ items, onSort }: TableProps) {
  const t = useText();
  const { q, next, sort = 'next' } = route.useSearch();
  const wanted = q?.toLowerCase();
  const shown = items
    .filter((item) => next === undefined || item.next === next)
    .filter((item) => wanted === undefined || textOf(item).includes(wanted));
  return (
    <DataTable<PlannedItem, ItemSort>
      label={t.orderingItems.title}
      columns={columnsOf(t)}
      rows={sortItems(shown, sort)}
      rowKey={({ consumable }) => consumable.id}
      sort={sort}
      onSort={(by) => onSort(by === 'next' ? undefined : by)}
    />
  );
}

function textOf({ consumable }: PlannedItem): string {
  return `${nameOf(consumable)} ${consumable.category}`.toLowerCase();
}

/** A computed part of one has more digits than it deserves. */
const glance = (value: string) =>
  Math.abs(Number(value)) < 1 ? String(Number(Number(value).toPrecision(2))) : value;

/** Beyond a year nobody counts days. */
const YEAR = 366;

function columnsOf(t: Text): Column<PlannedItem, ItemSort>[] {
  const w = t.orderingItems;
  const heads = w.columns;
  const amount = (value: (item: PlannedItem) => string) => (item: PlannedItem) => (
    <Amount value={value(item)} unit={item.consumable.unit} rough />
  );
  const [name, week, left, next] = ITEM_SORTS;
  return [
    {
      ...{ id: 'name', head: heads.name, sort: name },
      cell: ({ consumable }) => (
        <Link
          to="/ordering/items/$consumableId"
          params={{ consumableId: consumable.id }}
          className={css.item}
        >
          {nameOf(consumable)}
        </Link>
      ),
    },
    { id: 'next', head: heads.next, sort: next, cell: (item) => <NextMark item={item} /> },
    {
      ...{ id: 'left', head: heads.left, align: 'end', sort: left },
      cell: ({ runsOutInDays: days }) => (days > YEAR ? w.long : w.days(days)),
    },
    {
      ...{ id: 'week', head: heads.week, align: 'end', sort: week, descending: true },
      cell: amount((item) => Number(item.useInWeek).toPrecision(2)),
    },
    {
      ...{ id: 'onOrder', head: heads.onOrder, align: 'end', wideOnly: true },
      cell: (item) => (item.onOrder === '0' ? '–' : amount((each) => each.onOrder)(item)),
    },
    {
      ...{ id: 'position', head: heads.position, align: 'end' },
      cell: amount((item) => item.position),
    },
    {
      ...{ id: 'point', head: heads.point, align: 'end' },
      cell: (item) =>
        item.reorderPoint === null ? '–' : amount(() => glance(item.reorderPoint ?? '0'))(item),
    },
    {
      ...{ id: 'kind', head: heads.kind, wideOnly: true },
      cell: (item) => classOf(item, t),
    },
  ];
}

/** By how often and how evenly it is used. */
function classOf({ demandClass, diedOut }: PlannedItem, t: Text): string {
  const w = t.orderingItems;
  if (diedOut) return w.died;
  return demandClass === null ? w.never : w.classes[demandClass];
}
