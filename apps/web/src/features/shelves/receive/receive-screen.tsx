import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMemo } from 'react';
import { newKey } from '../../../api/idempotency.js';
import { useSession } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import { Loaded } from '../../../ui/loaded.js';
import { PageHead } from '../../../ui/page-head.js';
import { type Place, placesQuery } from '../api/list-places.js';
import { presentationsQuery } from '../api/list-presentations.js';
import { oneSummaryQuery } from '../api/list-summary.js';
import { type Supplier, suppliersQuery } from '../api/list-suppliers.js';
import { readKept } from '../parts/kept.js';
import parts from '../parts/parts.module.css';
import { emptyLine, isUntouched, type Product, type Values } from './lines.js';
import { ReceiveForm } from './receive-form.js';
import { KEPT } from './use-receive.js';

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
  const { consumableId } = route.useSearch();
  const sellers = suppliers.filter(({ active }) => active);
  return consumableId === undefined ? (
    <WithProduct suppliers={sellers} places={places} product={null} />
  ) : (
    <Wanted suppliers={sellers} places={places} consumableId={consumableId} />
  );
}

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
  return <ReceiveForm {...start} suppliers={suppliers} places={places} />;
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
  return isForm ? (kept as Values) : undefined;
}
