import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { Dialog } from '../../ui/dialog.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Filters, SearchBox } from '../../ui/filters.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { InUseMark, ShownFilter } from '../../ui/shown-filter.js';
import { Money } from '../../ui/values.js';
import { type PlanSummary, plansQuery } from './api/plans.js';
import css from './fees.module.css';
import { PlanForm } from './plan-form.js';

const route = getRouteApi('/in/setup/plans');

export function PlansScreen() {
  const w = useText().plans;
  const may = useMay();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const list = useQuery(plansQuery(search));
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
      </PageHead>
      <Filters>
        <SearchBox value={search.q} onSearch={(q) => change({ q })} />
        <ShownFilter value={search.show} onChoose={(show) => change({ show })} />
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
      {write && <NewPlan />}
      <p className={css.caution}>{w.caution}</p>
    </>
  );
}

function Nothing({ filtered }: { readonly filtered: boolean }) {
  const t = useText();
  return filtered ? (
    <EmptyState title={t.ui.emptySearch} hint={t.ui.emptySearchHint} />
  ) : (
    <EmptyState title={t.plans.empty} hint={t.plans.emptyHint} />
  );
}

function NewPlan() {
  const w = useText().plans;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const close = () => void navigate({ search: (old) => ({ ...old, new: undefined }) });
  return (
    <Dialog title={w.addTitle} size="xl" opened={search.new !== undefined} onClose={close}>
      <PlanForm
        onClose={close}
        onSaved={({ id }) =>
          void navigate({ to: '/setup/plans/$planId', params: { planId: id }, search: {} })
        }
      />
    </Dialog>
  );
}

function useColumns(): Column<PlanSummary>[] {
  const w = useText().plans;
  const { show } = route.useSearch();
  const { columns } = w;
  const state: Column<PlanSummary> = {
    id: 'state',
    head: columns.state,
    cell: ({ active }) => <InUseMark active={active} />,
  };
  return [
    { id: 'name', head: columns.name, cell: (row) => <NameLink plan={row} /> },
    {
      id: 'network',
      head: columns.network,
      cell: ({ inNetwork }) => (inNetwork ? w.network.in : w.network.out),
    },
    { id: 'ceiling', head: columns.ceiling, cell: (row) => w.ceilingShort[row.feeCeiling] },
    ...(show === undefined ? [] : [state]),
    {
      id: 'deductible',
      head: columns.deductible,
      align: 'end',
      cell: ({ deductible }) => <Money value={deductible} />,
    },
    {
      id: 'maximum',
      head: columns.maximum,
      align: 'end',
      cell: ({ yearlyMaximum }) => <Money value={yearlyMaximum} />,
    },
  ];
}

function NameLink({ plan }: { readonly plan: PlanSummary }) {
  return (
    <Link className={css.name} to="/setup/plans/$planId" params={{ planId: plan.id }} search={{}}>
      {plan.name}
    </Link>
  );
}
