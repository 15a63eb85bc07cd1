import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Moment } from '../../ui/values.js';
import type { Order } from './api/get-order.js';
import css from './orders.module.css';

type OrderEvent = Order['events'][number];

/** What happened with an order, who did it and when, the first thing first. */
export function OrderHistory({ order }: { readonly order: Order }) {
  const w = useText().orders;
  return (
    <ol className={css.history}>
      {order.events.map((event) => (
        <li key={event.id} className={css.event}>
          <p>
            <strong>{w.events[event.kind]}</strong>
          </p>
          <p className={css.quiet}>
            <Moment value={event.at} />, {event.by.name}
          </p>
          <Details event={event} />
          {event.note !== null && <p>{event.note}</p>}
        </li>
      ))}
    </ol>
  );
}

function Details({ event: { figures } }: { readonly event: OrderEvent }) {
  const w = useText().orders;
  const { currency, money, day, amount } = useFormat();
  const names: Readonly<Record<string, string>> = w.figures;
  const ways: Readonly<Record<string, string>> = w.ways;
  const shown = (value: string, unit: string) => {
    if (unit === currency) return money(value);
    if (unit === 'day') return day(value);
    return unit === '' ? (ways[value] ?? value) : amount(value, unit);
  };
  if (figures.length === 0) return null;
  const parts = figures.map(({ name, value, unit }) =>
    name === 'way' ? shown(value, unit) : `${names[name] ?? name} ${shown(value, unit)}`,
  );
  return <p className={css.quiet}>{parts.join(' · ')}</p>;
}
