import { getRouteApi } from '@tanstack/react-router';
import { useText } from '../../text/text-provider.js';
import { FilterSelect, Filters, SearchBox } from '../../ui/filters.js';
import type { AlertList } from './api/list-alerts.js';
import { categoriesOf } from './filter-alerts.js';
import { ALERT_KINDS } from './kinds.js';

const route = getRouteApi('/in/today');
const WITHIN = ['0', '30', '60', '90', '180'] as const;

export function TodayFilters({ list }: { readonly list: AlertList }) {
  const t = useText();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, show: undefined, ...part }), replace: true });
  const within = WITHIN.find((days) => days === search.within);
  return (
    <Filters>
      <SearchBox label={t.today.filter.q} value={search.q} onSearch={(q) => change({ q })} />
      <FilterSelect
        label={t.today.filter.kind}
        value={search.kind}
        choices={ALERT_KINDS.map((kind) => ({ value: kind, label: t.today.kinds[kind] }))}
        onChoose={(kind) => change({ kind })}
      />
      <FilterSelect
        label={t.today.filter.category}
        value={search.category}
        choices={categoriesOf(list.alerts).map((name) => ({ value: name, label: name }))}
        onChoose={(category) => change({ category })}
      />
      <FilterSelect
        label={t.today.filter.within}
        value={within}
        all={t.today.withinPractice}
        choices={WITHIN.map((days) => ({ value: days, label: t.today.within(days) }))}
        onChoose={(days) => change({ within: days })}
      />
    </Filters>
  );
}
