import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useText } from '../../../text/text-provider.js';
import { FilterSelect, Filters, SearchBox } from '../../../ui/filters.js';
import { categoriesQuery } from '../api/list-categories.js';
import { placesQuery } from '../api/list-places.js';
import { Chip, Chips } from '../parts/chip.js';

const route = getRouteApi('/in/shelves');

export function OverviewFilters() {
  const { filter } = useText().shelves;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const categories = useQuery(categoriesQuery).data ?? [];
  const places = useQuery(placesQuery).data ?? [];
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, cursor: undefined, ...part }), replace: true });
  return (
    <>
      <Filters>
        <SearchBox label={filter.q} value={search.q} onSearch={(q) => change({ q })} />
        <FilterSelect
          label={filter.category}
          value={search.category}
          choices={categories.map((name) => ({ value: name, label: name }))}
          onChoose={(category) => change({ category })}
        />
        <FilterSelect
          label={filter.location}
          value={search.locationId}
          choices={places.map(({ id, name }) => ({ value: id, label: name }))}
          onChoose={(locationId) => change({ locationId })}
        />
      </Filters>
      {search.shade !== undefined && (
        <Chips>
          <Chip
            from="/shelves"
            to="/shelves"
            search={(old) => ({ ...old, shade: undefined, cursor: undefined })}
          >
            {filter.onlyShade(search.shade)}
          </Chip>
        </Chips>
      )}
    </>
  );
}
