import { useQueries, useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMemo } from 'react';
import { newKey } from '../../../api/idempotency.js';
import { useSession } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import { ButtonLink } from '../../../ui/button-link.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Loaded } from '../../../ui/loaded.js';
import { PageHead } from '../../../ui/page-head.js';
import { type Order, orderQuery } from '../api/get-order.js';
import { type Place, placesQuery } from '../api/list-places.js';
import { presentationsQuery } from '../api/list-presentations.js';
import { oneSummaryQuery } from '../api/list-summary.js';
import { type Supplier, suppliersQuery } from '../api/list-suppliers.js';
import { readKept } from '../parts/kept.js';
import parts from '../parts/parts.module.css';
import { emptyLine, isUntouched, type Product, type Values } from './lines.js';
import { orderLines } from './order-lines.js';
import css from './receive.module.css';
import { ReceiveForm } from './receive-form.js';

const route = getRouteApi('/in/shelves/deliveries/new');

/** Taking a delivery into stock. */
export function ReceiveScreen() {
  const { deliveries, receive } = useText();
  const suppliers = useQuery(suppliersQuery);
  const places = useQuery(placesQuery);
  return (
    <>
      <Link to="/shelves/deliveries" className={parts.back}>
        ← {deliveries.back}
      </Link>
      <PageHead title={receive.title} lead={receive.lead} />
      <Loaded query={suppliers}>
        {(sellers) => (
          <Loaded query={places}>
            {(all) => <Started suppliers={sellers} places={all.filter(({ active }) => active)} />}
          </Loaded>
        )}
      </Loaded>
    </>
  );
}

interface Props {
  readonly suppliers: readonly Supplier[];
  readonly places: readonly Place[];
}

function Started({ suppliers, places }: Props) {
  const { consumableId, orderId } = route.useSearch();
  const sellers = suppliers.filter(({ active }) => active);
  if (sellers.length === 0 || places.length === 0) {
    return <NotYet noSupplier={sellers.length === 0} />;
  }
  if (orderId !== undefined) {
    return <AgainstOrder suppliers={sellers} places={places} orderId={orderId} />;
  }
  return consumableId === undefined ? (
    <WithProduct suppliers={sellers} places={places} product={null} />
  ) : (
    <Wanted suppliers={sellers} places={places} consumableId={consumableId} />
  );
}

/** A delivery comes from somebody and goes somewhere; a new practice has to say so first. */
function NotYet({ noSupplier }: { readonly noSupplier: boolean }) {
  const { receiveMore: words } = useText();
  return (
    <EmptyState title={words.notYet} hint={words.notYetHint}>
      {noSupplier ? (
        <ButtonLink to="/setup/suppliers">{words.toSuppliers}</ButtonLink>
      ) : (
        <ButtonLink to="/setup/locations">{words.toPlaces}</ButtonLink>
      )}
    </EmptyState>
  );
}

/** The address names an order: what it still waits for stands on the lines. */
function AgainstOrder({ orderId, ...rest }: Props & { readonly orderId: string }) {
  const order = useQuery(orderQuery(orderId));
  return <Loaded query={order}>{(found) => <OrderGoods {...rest} order={found} />}</Loaded>;
}

function OrderGoods({ order, suppliers, places }: Props & { readonly order: Order }) {
  const { receiveMore: words } = useText();
  const { today } = useSession();
  const waiting = order.lines.filter(({ outstanding }) => outstanding > 0);
  const found = useQueries({
    queries: waiting.map(({ consumable }) => presentationsQuery(consumable.id)),
    combine: (results) => ({
      isReady: results.every(({ isSuccess }) => isSuccess),
      packs: results.flatMap(({ data }) => data ?? []),
    }),
  });
  const start = useMemo(() => {
    if (!found.isReady) return undefined;
    const blank = () => {
      const form = blankForm(today, suppliers, places);
      const place = form.lines[0]?.locationId ?? '';
      const lines = orderLines(order, found.packs, place);
      return { ...form, supplierId: order.supplier.id, lines };
    };
    return { blank, initial: readKept(keptFor(order.id), asValues) ?? blank() };
  }, [found.isReady, found.packs, order, today, suppliers, places]);
  if (waiting.length === 0) return <p>{words.orderDone(order.number)}</p>;
  if (!start) return null;
  return (
    <>
      <p className={css.order}>
        <Link to="/ordering/orders/$orderId" params={{ orderId: order.id }}>
          {words.order(order.number)}
        </Link>
        {`. ${words.orderHint}`}
      </p>
      <ReceiveForm {...start} kept={keptFor(order.id)} suppliers={suppliers} places={places} />
    </>
  );
}

const KEPT = 'receive';
const keptFor = (orderId: string) => `${KEPT}.${orderId}`;

/** The address names what is to come: its usual pack stands on the first line. */
function Wanted({ consumableId, ...rest }: Props & { readonly consumableId: string }) {
  const summary = useQuery(oneSummaryQuery(consumableId));
  const ways = useQuery(presentationsQuery(consumableId));
  return (
    <Loaded query={summary}>
      {(row) => (
        <Loaded query={ways}>
          {([presentation]) => (
            <WithProduct
              {...rest}
              product={row && presentation ? { consumable: row.consumable, presentation } : null}
            />
          )}
        </Loaded>
      )}
    </Loaded>
  );
}

interface ProductProps extends Props {
  readonly product: Product | null;
}

function WithProduct({ suppliers, places, product }: ProductProps) {
  const { today } = useSession();
  const { packs = '' } = route.useSearch();
  const start = useMemo(() => {
    const blank = () => blankForm(today, suppliers, places);
    const kept = readKept(KEPT, asValues) ?? blank();
    return { blank, initial: withLine(kept, product, packs, suppliers) };
  }, [today, suppliers, places, product, packs]);
  return <ReceiveForm {...start} kept={KEPT} suppliers={suppliers} places={places} />;
}

function blankForm(
  today: string,
  suppliers: readonly Supplier[],
  places: readonly Place[],
): Values {
  const store = places.find(({ kind }) => kind === 'store') ?? places[0];
  const only = suppliers.length === 1 ? suppliers[0] : undefined;
  return {
    supplierId: only?.id ?? '',
    receivedOn: today,
    reference: '',
    freight: '',
    duty: '',
    discount: '',
    spreadKey: 'value',
    lines: [emptyLine(newKey(), store?.id ?? '')],
  };
}

/** The wanted product on a line of its own, unless it stands there already. */
function withLine(
  values: Values,
  product: Product | null,
  packs: string,
  suppliers: readonly Supplier[],
): Values {
  if (!product) return values;
  const { id, supplierId } = product.presentation;
  if (values.lines.some((line) => line.product?.presentation.id === id)) return values;
  const place = values.lines.at(-1)?.locationId ?? '';
  const line = { ...emptyLine(newKey(), place), product, packs };
  const sold = suppliers.some((supplier) => supplier.id === supplierId) ? supplierId : null;
  return {
    ...values,
    supplierId: values.supplierId || (sold ?? ''),
    lines: [...values.lines.filter((one) => !isUntouched(one)), line],
  };
}

function asValues(kept: unknown): Values | undefined {
  const isForm =
    typeof kept === 'object' && kept !== null && 'lines' in kept && Array.isArray(kept.lines);
  if (!isForm) return undefined;
  const values = kept as Values;
  // What an older page of this tab had kept lacks what was added since.
  const lines = values.lines.map((line) => ({ ...emptyLine(line.key, line.locationId), ...line }));
  return { ...values, duty: values.duty ?? '', lines };
}
