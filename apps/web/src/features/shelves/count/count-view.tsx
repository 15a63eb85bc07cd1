import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { useText } from '../../../text/text-provider.js';
import { Busy } from '../../../ui/busy.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { FilterSelect, Filters } from '../../../ui/filters.js';
import { Loaded } from '../../../ui/loaded.js';
import { PageHead } from '../../../ui/page-head.js';
import { countedQuery, type Holding } from '../api/list-holdings.js';
import { placesQuery } from '../api/list-places.js';
import { oneSummaryQuery } from '../api/list-summary.js';
import { nameOf } from '../parts/what.js';
import { CountEntry } from './count-entry.js';
import { CountReview } from './count-review.js';
import { useCount } from './use-count.js';

const route = getRouteApi('/in/shelves');

/** Counting a location, or everything of one consumable: what the book expects, what is there. */
export function CountView() {
  const { consumableId, locationId } = route.useSearch();
  const scope = consumableId ?? locationId;
  return (
    <>
      <Head />
      {scope === undefined ? <Where /> : <Counted key={scope} scope={scope} />}
    </>
  );
}

function Head() {
  const { counting } = useText();
  const { consumableId, locationId } = route.useSearch();
  const place = useQuery(placesQuery).data?.find(({ id }) => id === locationId)?.name;
  const of = useQuery({ ...oneSummaryQuery(consumableId ?? ''), enabled: !!consumableId }).data;
  const where = of ? nameOf(of.consumable) : place;
  const title = where === undefined ? counting.titleOpen : counting.title(where);
  return <PageHead title={title} lead={counting.lead} />;
}

function Where() {
  const { counting } = useText();
  return (
    <>
      <Filters>
        <PlaceChoice />
      </Filters>
      <EmptyState title={counting.where} hint={counting.whereHint} />
    </>
  );
}

function PlaceChoice() {
  const { shelves, ui } = useText();
  const { locationId } = route.useSearch();
  const navigate = route.useNavigate();
  const places = useQuery(placesQuery).data ?? [];
  return (
    <FilterSelect
      label={shelves.filter.location}
      all={ui.choose}
      value={locationId}
      choices={places.map(({ id, name }) => ({ value: id, label: name }))}
      onChoose={(to) => void navigate({ search: (old) => ({ ...old, locationId: to }) })}
    />
  );
}

function Counted({ scope }: { readonly scope: string }) {
  const { consumableId, locationId } = route.useSearch();
  const of = consumableId === undefined ? { locationId } : { consumableId };
  const query = useInfiniteQuery(countedQuery(of));
  const holdings = query.data?.pages.flatMap(({ items }) => items) ?? [];
  if (query.data === undefined && query.error === null) return <Busy />;
  return (
    <Loaded query={query}>
      {() =>
        holdings.length === 0 ? (
          <Nothing choice={consumableId === undefined} />
        ) : (
          <CountSteps
            scope={scope}
            holdings={holdings}
            where={consumableId === undefined ? <PlaceChoice /> : null}
            more={query.hasNextPage ? () => void query.fetchNextPage() : undefined}
          />
        )
      }
    </Loaded>
  );
}

function Nothing({ choice }: { readonly choice: boolean }) {
  const { counting } = useText();
  return (
    <>
      {choice && (
        <Filters>
          <PlaceChoice />
        </Filters>
      )}
      <EmptyState title={counting.empty} hint={counting.emptyHint} />
    </>
  );
}

interface StepsProps {
  readonly scope: string;
  readonly holdings: readonly Holding[];
  /** Shows the next page; undefined when everything is shown. */
  readonly more: (() => void) | undefined;
  readonly where: ReactNode;
}

function CountSteps({ scope, ...rest }: StepsProps) {
  const count = useCount(scope, rest.holdings);
  const review = count.reviewing && count.read.lines.length > 0;
  return review ? <CountReview count={count} /> : <CountEntry count={count} {...rest} />;
}
