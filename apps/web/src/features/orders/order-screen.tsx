import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useState } from 'react';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { Section } from '../../ui/section.js';
import { Day, Money } from '../../ui/values.js';
import { type Order, orderQuery, paperOf } from './api/get-order.js';
import { DraftEditor } from './draft-editor.js';
import { OrderDialogs } from './order-dialogs.js';
import { OrderHistory } from './order-history.js';
import { OrderLines } from './order-lines.js';
import { OrderState } from './order-state.js';
import { OrderSteps } from './order-steps.js';
import css from './orders.module.css';

const route = getRouteApi('/in/ordering/orders/$orderId');

/** One order: what is to be done with it, its lines, and what happened. */
export function OrderScreen() {
  const { orderId } = route.useParams();
  const order = useQuery(orderQuery(orderId));
  return <Loaded query={order}>{(data) => <OrderPage key={data.id} order={data} />}</Loaded>;
}

function OrderPage({ order }: { readonly order: Order }) {
  const t = useText();
  const w = t.orders;
  const { number } = useFormat();
  const may = useMay();
  const { edit } = route.useSearch();
  const [typed, setTyped] = useState(false);
  const draft = order.state === 'draft' || (order.state === 'approved' && edit !== undefined);
  return (
    <>
      <PageHead title={w.number(number(String(order.number)))} lead={<Lead order={order} />}>
        <OrderSteps order={order} typed={typed} />
      </PageHead>
      <InTheWay order={order} />
      <Facts order={order} />
      {draft && may('orders.write') ? (
        <DraftEditor order={order} onTyped={setTyped} />
      ) : (
        <Section title={w.lines} aside={<Papers order={order} />}>
          <OrderLines order={order} />
          {order.note !== null && <p>{order.note}</p>}
        </Section>
      )}
      <Section title={w.history}>
        <OrderHistory order={order} />
      </Section>
      <OrderDialogs order={order} />
      <Caution />
    </>
  );
}

function Lead({ order }: { readonly order: Order }) {
  const w = useText().orders.leads;
  const { day } = useFormat();
  const { state, supplier } = order;
  switch (state) {
    case 'approved':
      return w.approved(supplier.name, order.approvedBy?.name ?? '');
    case 'sent':
      return w.sent(supplier.name, day(order.orderedOn ?? ''));
    default:
      return w[state](supplier.name);
  }
}

function Papers({ order }: { readonly order: Order }) {
  const w = useText().orders;
  return (
    <span className={`${css.papers ?? ''} tb-screen-only`}>
      <a href={paperOf(order.id, 'pdf')} target="_blank" rel="noreferrer">
        {w.pdf}
      </a>
      <a href={paperOf(order.id, 'csv')} download>
        {w.csv}
      </a>
    </span>
  );
}

function InTheWay({ order }: { readonly order: Order }) {
  const w = useText().orders;
  const may = useMay();
  const inTheWay = order.limits?.inTheWay ?? null;
  if (inTheWay === null || !may('orders.approve')) return null;
  return (
    <p className={css.warning}>
      <OverWords order={order} />
      {may('orders.exceed') && <> {w.over}</>}
    </p>
  );
}

function OverWords({ order: { limits } }: { readonly order: Order }) {
  const w = useText().orders;
  const { money } = useFormat();
  const parts = [
    ...(limits?.overLimit == null ? [] : [w.overLimit(money(limits.overLimit))]),
    ...(limits?.overBudget == null ? [] : [w.overBudget(money(limits.overBudget))]),
  ];
  return <>{parts.join(' ')}</>;
}

function Facts({ order }: { readonly order: Order }) {
  const w = useText().orders;
  return (
    <div className={css.facts}>
      <p>
        <OrderState order={order} />
      </p>
      <Figures>
        <Figure label={w.facts.total} large>
          <Money value={order.total} />
        </Figure>
        <Figure label={w.facts.goods}>
          <Money value={order.goods} />
        </Figure>
        <Figure label={w.facts.freight}>
          <Money value={order.freight} />
        </Figure>
        {order.expectedOn !== null && (
          <Figure label={w.facts.expected} tone={order.daysLate === null ? undefined : 'danger'}>
            <Day value={order.expectedOn} />
          </Figure>
        )}
        {order.orderedOn !== null && (
          <Figure label={w.facts.arrival}>{w.arrivals[order.arrival]}</Figure>
        )}
        {order.limits?.budgetLeft != null && (
          <Figure label={w.facts.budget}>
            <Money value={order.limits.budgetLeft} />
          </Figure>
        )}
        {order.reference !== null && <Figure label={w.facts.reference}>{order.reference}</Figure>}
      </Figures>
      {order.unpriced > 0 && <p className={css.quiet}>{w.unpriced(order.unpriced)}</p>}
    </div>
  );
}
