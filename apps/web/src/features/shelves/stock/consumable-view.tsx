import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { useMay } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import { ButtonLink } from '../../../ui/button-link.js';
import { Caution } from '../../../ui/caution.js';
import { DataTable } from '../../../ui/data-table.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Loaded } from '../../../ui/loaded.js';
import { PageHead } from '../../../ui/page-head.js';
import { PrintButton } from '../../../ui/print-button.js';
import { Section } from '../../../ui/section.js';
import { holdingsQuery } from '../api/list-holdings.js';
import { type Consumable, oneSummaryQuery } from '../api/list-summary.js';
import css from '../parts/parts.module.css';
import { nameOf } from '../parts/what.js';
import { ConsumableFigures } from './consumable-figures.js';
import own from './holdings.module.css';
import { useHoldingColumns } from './holdings-columns.js';
import { OpenShortfalls } from './open-shortfalls.js';

const route = getRouteApi('/in/shelves');

interface Props {
  readonly consumableId: string;
  readonly scan: ReactNode;
}

/** One consumable: its figures, every lot and container, what is owed. */
export function ConsumableView({ consumableId, scan }: Props) {
  const summary = useQuery(oneSummaryQuery(consumableId));
  return (
    <>
      <BackToShelves />
      <Loaded query={summary}>
        {(row) =>
          row === null ? (
            <Missing />
          ) : (
            <>
              <Head consumable={row.consumable} scan={scan} />
              <ConsumableFigures row={row} />
              <Holdings consumableId={consumableId} />
              <OpenShortfalls consumableId={consumableId} />
              <Further consumable={row.consumable} />
            </>
          )
        }
      </Loaded>
      <Caution />
    </>
  );
}

function BackToShelves() {
  const t = useText();
  return (
    <Link
      from="/shelves"
      to="/shelves"
      search={({ q, category, shade, locationId, sort, cursor }) => ({
        ...{ q, category, shade, locationId, sort, cursor },
      })}
      className={`${css.back ?? ''} tb-screen-only`}
    >
      ← {t.shelves.all}
    </Link>
  );
}

function Missing() {
  const t = useText();
  return <EmptyState title={t.shelves.missing} hint={t.shelves.missingHint} />;
}

interface HeadProps {
  readonly consumable: Consumable;
  readonly scan: ReactNode;
}

function Head({ consumable, scan }: HeadProps) {
  const t = useText();
  const may = useMay();
  return (
    <PageHead title={nameOf(consumable)} lead={consumable.category}>
      <PrintButton />
      {scan}
      {may('stock.handle') && (
        <ButtonLink
          from="/shelves"
          to="/shelves"
          search={(old) => ({ ...old, holdingId: undefined, do: 'count' as const })}
          variant="default"
        >
          {t.shelves.count}
        </ButtonLink>
      )}
      {may('deliveries.book') && (
        <ButtonLink to="/shelves/deliveries/new" search={{ consumableId: consumable.id }}>
          {t.shelves.receive}
        </ButtonLink>
      )}
    </PageHead>
  );
}

function Holdings({ consumableId }: { readonly consumableId: string }) {
  const { holdings } = useText().shelves;
  const { after, holdingId } = route.useSearch();
  const navigate = route.useNavigate();
  const page = useQuery(holdingsQuery(consumableId, after));
  const columns = useHoldingColumns();
  return (
    <Section title={holdings.title} hint={holdings.hint}>
      <div className={own.table}>
        <Loaded query={page}>
          {(data) => (
            <DataTable
              label={holdings.list}
              columns={columns}
              rows={data.items}
              rowKey={(row) => row.id}
              marked={holdingId}
              cursor={after}
              nextCursor={data.nextCursor}
              onCursor={(to) => void navigate({ search: (old) => ({ ...old, after: to }) })}
              stale={page.isPlaceholderData}
              empty={<EmptyState title={holdings.empty} hint={holdings.emptyHint} />}
            />
          )}
        </Loaded>
      </div>
    </Section>
  );
}

function Further({ consumable }: { readonly consumable: Consumable }) {
  const { further } = useText().shelves;
  const may = useMay();
  const { id, shade } = consumable;
  return (
    <p className={`${own.further ?? ''} tb-screen-only`}>
      <Link to="/shelves/movements" search={{ consumableId: id }}>
        {further.movements}
      </Link>
      {shade !== null && (
        <Link to="/shelves" search={{ shade }}>
          {further.shade(shade)}
        </Link>
      )}
      {may('catalogue.write') && (
        <Link to="/setup/consumables/$consumableId" params={{ consumableId: id }}>
          {further.buying}
        </Link>
      )}
    </p>
  );
}
