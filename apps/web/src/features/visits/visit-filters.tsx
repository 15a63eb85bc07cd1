import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { FilterDay, FilterSelect, Filters, SearchBox } from '../../ui/filters.js';
import { dentistsQuery } from './api/list-dentists.js';
import { roomsQuery } from './api/list-rooms.js';
import css from './visits.module.css';

const route = getRouteApi('/in/visits');

export function VisitFilters({ wrong }: { readonly wrong: string | undefined }) {
  const t = useText();
  const may = useMay();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const dentists = useQuery(dentistsQuery).data?.items ?? [];
  const rooms = useQuery({ ...roomsQuery, enabled: may('catalogue.read') }).data?.items ?? [];
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, cursor: undefined, ...part }), replace: true });
  return (
    <>
      <Filters>
        <SearchBox label={t.visits.chart} value={search.q} onSearch={(q) => change({ q })} />
        <FilterSelect
          label={t.visits.dentist}
          value={search.dentistId}
          choices={dentists.map(({ id, displayName }) => ({ value: id, label: displayName }))}
          onChoose={(dentistId) => change({ dentistId })}
        />
        <FilterSelect
          label={t.visits.room}
          value={search.locationId}
          choices={rooms
            .filter(({ kind }) => kind === 'room')
            .map(({ id, name }) => ({ value: id, label: name }))}
          onChoose={(locationId) => change({ locationId })}
        />
        <FilterDay
          label={t.visits.from}
          value={search.from}
          onChoose={(from) => change({ from })}
        />
        <FilterDay label={t.visits.to} value={search.to} onChoose={(to) => change({ to })} />
        <FilterSelect
          label={t.visits.state}
          value={search.stock}
          choices={[
            { value: 'short', label: t.visits.short },
            { value: 'settled', label: t.visits.settled },
          ]}
          onChoose={(stock) => change({ stock })}
        />
      </Filters>
      {wrong !== undefined && (
        <p role="alert" className={css.wrong}>
          {wrong}
        </p>
      )}
    </>
  );
}
