import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useText } from '../../../text/text-provider.js';
import { ButtonLink } from '../../../ui/button-link.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Loaded } from '../../../ui/loaded.js';
import { PageHead } from '../../../ui/page-head.js';
import { holdingQuery } from '../api/list-holdings.js';
import { placesQuery } from '../api/list-places.js';
import { ShelvesNav } from '../parts/shelves-nav.js';
import { LabelsForm } from './labels-form.js';

const route = getRouteApi('/in/shelves/labels');

/** Labels of the practice's own: for places, and for the holding that the address names. */
export function LabelsScreen() {
  const { labels } = useText().scan;
  const { holdingId } = route.useSearch();
  const places = useQuery(placesQuery);
  return (
    <>
      <PageHead title={labels.title} lead={labels.lead} />
      <ShelvesNav />
      <Loaded query={places}>
        {(all) => {
          const active = all.filter((place) => place.active);
          if (active.length === 0 && holdingId === undefined) return <NoPlaces />;
          return holdingId === undefined ? (
            <LabelsForm places={active} holding={undefined} />
          ) : (
            <WithHolding holdingId={holdingId} places={active} />
          );
        }}
      </Loaded>
    </>
  );
}

function NoPlaces() {
  const { labels } = useText().scan;
  return (
    <EmptyState title={labels.noPlaces} hint={labels.noPlacesHint}>
      <ButtonLink to="/setup/locations">{labels.toPlaces}</ButtonLink>
    </EmptyState>
  );
}

interface Props {
  readonly holdingId: string;
  readonly places: Parameters<typeof LabelsForm>[0]['places'];
}

function WithHolding({ holdingId, places }: Props) {
  const holding = useQuery(holdingQuery(holdingId));
  return (
    <Loaded query={holding}>
      {(one) => <LabelsForm key={holdingId} places={places} holding={one} />}
    </Loaded>
  );
}
