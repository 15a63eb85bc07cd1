import { Link } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { Money } from '../../ui/values.js';
import type { Order, OrderLine } from './api/get-order.js';
import { goodsName } from './api/list-goods.js';
import css from './orders.module.css';
import { Why } from './proposed-list.js';

/** The lines of an order with what came of each. */
export function OrderLines({ order }: { readonly order: Order }) {
  const w = useText().orders;
  const columns = useColumns(order.orderedOn !== null);
  return (
    <DataTable<OrderLine>
      label={w.lines}
      columns={columns}
      rows={order.lines}
      rowKey={(line) => line.id}
    />
  );
}

function useColumns(wasSent: boolean): Column<OrderLine>[] {
  const w = useText().orders;
  const { number } = useFormat();
  const packs = (count: number) => number(String(count));
  const followed: Column<OrderLine>[] = [
    {
      ...{ id: 'received', head: w.columns.received, align: 'end' },
      cell: (line) => packs(line.received),
    },
    {
      ...{ id: 'left', head: w.columns.left, align: 'end' },
      cell: (line) => packs(line.outstanding),
    },
  ];
  return [
    { id: 'goods', head: w.columns.goods, cell: (line) => <Goods line={line} /> },
    {
      ...{ id: 'packs', head: w.columns.packs, align: 'end' },
      cell: (line) => packs(line.packs),
    },
    ...(wasSent ? followed : []),
    {
      ...{ id: 'price', head: w.columns.price, align: 'end' },
      cell: (line) => <Money value={line.packPrice} />,
    },
    {
      ...{ id: 'amount', head: w.columns.amount, align: 'end' },
      cell: (line) => <Money value={line.total} />,
    },
  ];
}

function Goods({ line }: { readonly line: OrderLine }) {
  const w = useText().orders;
  const { amount } = useFormat();
  const { name, articleCode } = line.presentation;
  const packs = (count: number) => amount(String(count), 'packs');
  return (
    <div className={css.goods}>
      <strong>{goodsName(line.consumable)}</strong>
      <span className={css.quiet}>
        {[name, ...(articleCode === null ? [] : [w.article(articleCode)])].join(', ')}
      </span>
      {line.cancelled > 0 && (
        <span className={css.quiet}>{w.notComing(packs(line.cancelled))}</span>
      )}
      {line.surplus > 0 && <span className={css.quiet}>{w.surplus(packs(line.surplus))}</span>}
      <Arrivals line={line} />
      <Why line={line} title={w.why} />
    </div>
  );
}

function Arrivals({ line: { arrivals } }: { readonly line: OrderLine }) {
  const w = useText().orders;
  const { amount, day, money } = useFormat();
  return arrivals.map((each) => (
    <span key={`${each.deliveryId} ${each.packs} ${each.packPrice}`} className={css.quiet}>
      {w.came}{' '}
      <Link to="/shelves/deliveries/$deliveryId" params={{ deliveryId: each.deliveryId }}>
        {w.delivery(
          amount(String(each.packs), 'packs'),
          day(each.receivedOn),
          money(each.packPrice),
        )}
      </Link>
    </span>
  ));
}
