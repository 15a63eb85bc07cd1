import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { PrintButton } from '../../ui/print-button.js';
import { AlertGroupSection } from './alert-group.js';
import { type AlertList, alertsQuery } from './api/list-alerts.js';
import { filterAlerts, groupByKind } from './filter-alerts.js';
import { PutOffLink } from './put-off-link.js';
import { SnoozeDialog } from './snooze-dialog.js';
import { Tally } from './tally.js';
import { TodayFilters } from './today-filters.js';

const route = getRouteApi('/in/today');

/** What needs somebody, the most urgent first, each with the one thing that settles it. */
export function TodayScreen() {
  const { within, snoozed } = route.useSearch();
  const list = useQuery(alertsQuery(within, snoozed));
  return (
    <Loaded query={list}>
      {(data) => {
        const none = data.alerts.length === 0 && data.snoozed === 0;
        const nothing = none && within === undefined && snoozed === undefined;
        return nothing ? <NothingToDo asOf={data.asOf} /> : <Work list={data} />;
      }}
    </Loaded>
  );
}

function NothingToDo({ asOf }: { readonly asOf: string }) {
  const t = useText();
  return (
    <>
      <Head asOf={asOf} />
      <EmptyState title={t.today.empty} hint={t.today.emptyHint} />
    </>
  );
}

function Head({ asOf }: { readonly asOf: string }) {
  const t = useText();
  const format = useFormat();
  return (
    <PageHead title={t.today.title} lead={t.today.lead(format.day(asOf))}>
      <PrintButton />
    </PageHead>
  );
}

function Work({ list }: { readonly list: AlertList }) {
  const t = useText();
  const search = route.useSearch();
  const shown = filterAlerts(list.alerts, search);
  return (
    <>
      <Head asOf={list.asOf} />
      <Tally alerts={list.alerts} />
      <TodayFilters list={list} />
      <PutOffLink list={list} />
      {groupByKind(shown).map((group) => (
        <AlertGroupSection key={group.kind} group={group} asOf={list.asOf} />
      ))}
      {shown.length === 0 && <EmptyState title={t.ui.emptySearch} hint={t.ui.emptySearchHint} />}
      <SnoozeDialog list={list} />
      <Caution />
    </>
  );
}
