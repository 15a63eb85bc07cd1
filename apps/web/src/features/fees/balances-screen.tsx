import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMay, useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { EmptyState } from '../../ui/empty-state.js';
import { FilterDay, FilterSelect, Filters, SearchBox } from '../../ui/filters.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { Section } from '../../ui/section.js';
import { balancesQuery } from './api/balances.js';
import { plansQuery } from './api/plans.js';
import { BalanceForm } from './balance-form.js';
import { BalanceTable, isOfEarlierYear } from './balance-table.js';
import { ChartBalances } from './chart-balances.js';
import css from './fees.module.css';

const route = getRouteApi('/in/setup/balances');

/** What is left of patients' plans; of one chart with everything that was ever entered. */
export function BalancesScreen() {
  const w = useText().balances;
  const may = useMay();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const write = may('balances.write');
  return (
    <>
      <PageHead title={w.title} lead={w.lead}>
        {write && (
          <Button
            onClick={() => void navigate({ search: (old) => ({ ...old, new: '1' as const }) })}
          >
            {w.add}
          </Button>
        )}
      </PageHead>
      <BalanceFilters />
      {search.chart === undefined ? <EveryChart /> : <OneChart chart={search.chart} />}
      {write && <NewBalance />}
    </>
  );
}

function BalanceFilters() {
  const w = useText().balances;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const plans = useQuery(plansQuery({ show: 'all', limit: 500 })).data?.items ?? [];
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, cursor: undefined, ...part }), replace: true });
  return (
    <Filters>
      <SearchBox label={w.chart} value={search.chart} onSearch={(chart) => change({ chart })} />
      <FilterSelect
        label={w.plan}
        value={search.plan}
        all={w.anyPlan}
        choices={plans.map(({ id, name }) => ({ value: id, label: name }))}
        onChoose={(plan) => change({ plan })}
      />
      <FilterDay label={w.on} value={search.on} onChoose={(on) => change({ on })} />
    </Filters>
  );
}

/** One line for each chart and plan: what counts. */
function EveryChart() {
  const w = useText().balances;
  const search = route.useSearch();
  const { today } = useSession();
  const navigate = route.useNavigate();
  const list = useQuery(balancesQuery('counting', search));
  const on = search.on ?? today;
  const filtered = search.plan !== undefined || search.on !== undefined;
  return (
    <Section title={w.counting}>
      <Loaded query={list}>
        {(page) => (
          <>
            <BalanceTable
              label={w.counting}
              rows={page.items}
              on={on}
              stale={list.isPlaceholderData}
              cursor={search.cursor}
              nextCursor={page.nextCursor}
              onCursor={(cursor) => void navigate({ search: (old) => ({ ...old, cursor }) })}
              onChart={(chart) =>
                void navigate({ search: (old) => ({ ...old, cursor: undefined, chart }) })
              }
              empty={
                filtered ? (
                  <EmptyState title={w.nothing} hint={w.nothingHint} />
                ) : (
                  <EmptyState title={w.empty} hint={w.emptyHint} />
                )
              }
            />
            {page.items.some(({ asOf }) => isOfEarlierYear(asOf, on)) && (
              <p className={css.note}>{w.lastYearHint}</p>
            )}
          </>
        )}
      </Loaded>
    </Section>
  );
}

/** What counts for each plan of a chart, and all that was entered for it. */
function OneChart({ chart }: { readonly chart: string }) {
  const w = useText().balances;
  const search = route.useSearch();
  const { today } = useSession();
  const navigate = route.useNavigate();
  const { cursor: _, ...first } = search;
  const counting = useQuery(balancesQuery('counting', first));
  const history = useQuery(balancesQuery('all', search));
  const counts = new Set(counting.data?.items.map(({ id }) => id));
  return (
    <>
      <Section title={w.countingOf(chart)}>
        <Loaded query={counting}>
          {({ items }) =>
            items.length === 0 ? (
              <EmptyState title={w.nothing} hint={w.nothingHint} />
            ) : (
              <ChartBalances items={items} on={search.on ?? today} />
            )
          }
        </Loaded>
      </Section>
      <Section title={w.history} hint={w.historyHint}>
        <Loaded query={history}>
          {(page) => (
            <BalanceTable
              label={w.history}
              rows={page.items}
              on={search.on ?? today}
              counts={counts}
              stale={history.isPlaceholderData}
              cursor={search.cursor}
              nextCursor={page.nextCursor}
              onCursor={(cursor) => void navigate({ search: (old) => ({ ...old, cursor }) })}
              empty={<p className={css.note}>{w.empty}</p>}
            />
          )}
        </Loaded>
      </Section>
    </>
  );
}

function NewBalance() {
  const w = useText().balances;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const close = () => void navigate({ search: (old) => ({ ...old, new: undefined }) });
  return (
    <Dialog title={w.addTitle} size="lg" opened={search.new !== undefined} onClose={close}>
      <BalanceForm
        chart={search.chart ?? ''}
        planId={search.plan ?? ''}
        onClose={close}
        onSaved={({ chartReference }) =>
          void navigate({ search: { chart: chartReference }, replace: true })
        }
      />
    </Dialog>
  );
}
