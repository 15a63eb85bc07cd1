import { Button, Checkbox } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { RowButton } from '../../ui/row-button.js';
import { StatusMark } from '../../ui/status-mark.js';
import { type Location, locationsQuery } from './api/list-locations.js';
import { LocationDialogs } from './location-form.js';
import css from './locations.module.css';
import { type PlaceNode, placeTree } from './place-tree.js';

const route = getRouteApi('/in/setup/locations');

export function LocationsScreen() {
  const t = useText();
  const w = t.setupLocations;
  const may = useMay();
  const navigate = route.useNavigate();
  const places = useQuery(locationsQuery);
  return (
    <>
      <PageHead title={w.title} lead={w.lead}>
        {may('catalogue.write') && (
          <Button
            onClick={() => void navigate({ search: (old) => ({ ...old, new: '1' as const }) })}
          >
            {w.add}
          </Button>
        )}
      </PageHead>
      <Loaded query={places}>
        {(page) =>
          page.items.length === 0 ? (
            <EmptyState title={w.empty} hint={w.emptyHint} />
          ) : (
            <Tree places={page.items} />
          )
        }
      </Loaded>
      {may('catalogue.write') && places.data && <LocationDialogs places={places.data.items} />}
    </>
  );
}

function Tree({ places }: { readonly places: readonly Location[] }) {
  const w = useText().setupLocations;
  const { show } = route.useSearch();
  const navigate = route.useNavigate();
  const retired = places.some((place) => !place.active);
  const shown = show === 'all' ? places : places.filter((place) => place.active);
  return (
    <>
      <p className={css.rule}>{w.rule}</p>
      {retired && (
        <Checkbox
          className="tb-screen-only"
          label={w.showAll}
          checked={show === 'all'}
          onChange={(event) => {
            const all = event.currentTarget.checked ? ('all' as const) : undefined;
            void navigate({ search: (old) => ({ ...old, show: all }), replace: true });
          }}
        />
      )}
      <section aria-label={w.tree} className={css.tree}>
        <Branch nodes={placeTree(shown)} above={undefined} />
      </section>
    </>
  );
}

interface BranchProps {
  readonly nodes: readonly PlaceNode[];
  readonly above: string | undefined;
}

function Branch({ nodes, above }: BranchProps) {
  return (
    <ul className={css.branch}>
      {nodes.map((node) => (
        <li key={node.id}>
          <PlaceRow place={node} above={above} />
          {node.below.length > 0 && <Branch nodes={node.below} above={node.name} />}
        </li>
      ))}
    </ul>
  );
}

interface RowProps {
  readonly place: Location;
  readonly above: string | undefined;
}

function PlaceRow({ place, above }: RowProps) {
  const t = useText();
  const w = t.setupLocations;
  const may = useMay();
  const navigate = route.useNavigate();
  const { id, name, kind, active } = place;
  const add = () => void navigate({ search: (old) => ({ ...old, new: '1' as const, below: id }) });
  const change = () => void navigate({ search: (old) => ({ ...old, edit: id }) });
  return (
    <div className={css.row} data-retired={!active || undefined}>
      <KindMark kind={kind} />
      <div className={css.what}>
        <strong>{name}</strong>
        <span className={css.how}>
          {w.kinds[kind]}
          {above !== undefined && ` · ${w.drawsFrom(above)}`}
        </span>
      </div>
      {!active && <StatusMark tone="quiet">{t.setup.state.retired}</StatusMark>}
      {may('catalogue.write') && (
        <div className={css.actions}>
          {active && (
            <RowButton label={`${w.below}: ${name}`} onClick={add}>
              {w.below}
            </RowButton>
          )}
          <RowButton label={t.setup.changeOf(name)} onClick={change}>
            {t.setup.change}
          </RowButton>
        </div>
      )}
    </div>
  );
}

/** A drawing of our own for each kind; the word stands beside it. */
const SHAPES: Readonly<Record<Location['kind'], string>> = {
  store: 'M3 9l9-6 9 6v12H3zM3 12h18M9 21v-5h6v5',
  fridge: 'M6 3h12v18H6zM6 10h12M9 6v2M9 13v3',
  room: 'M4 21V4h11v17M15 8h5v13M2 21h20M11 12v2',
  drawer: 'M3 6h18v12H3zM3 12h18M10 9h4M10 15h4',
};

function KindMark({ kind }: { readonly kind: Location['kind'] }) {
  return (
    <svg className={css.mark} viewBox="0 0 24 24" aria-hidden="true">
      <path d={SHAPES[kind]} />
    </svg>
  );
}
