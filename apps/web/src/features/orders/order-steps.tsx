import { Button } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import type { Permission } from '../../api/client.js';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { ButtonLink } from '../../ui/button-link.js';
import type { Order } from './api/get-order.js';
import type { OrderDialog } from './choices.js';

const route = getRouteApi('/in/ordering/orders/$orderId');

interface Step {
  readonly dialog: OrderDialog;
  readonly needs: Permission;
  readonly main?: boolean;
}

/** What can be done with an order in each state; the main thing last, where the eye ends. */
const STEPS: Readonly<Record<Order['state'], readonly Step[]>> = {
  draft: [
    { dialog: 'cancel', needs: 'orders.write' },
    { dialog: 'approve', needs: 'orders.approve', main: true },
  ],
  approved: [
    { dialog: 'cancel', needs: 'orders.write' },
    { dialog: 'withdraw', needs: 'orders.approve' },
    { dialog: 'send', needs: 'orders.write', main: true },
  ],
  sent: [
    { dialog: 'close', needs: 'orders.write' },
    { dialog: 'answer', needs: 'orders.write' },
    { dialog: 'chase', needs: 'orders.write' },
  ],
  closed: [],
  cancelled: [],
};

interface Props {
  readonly order: Order;
  /** Something is typed that is not saved: nothing is done with the order meanwhile. */
  readonly typed: boolean;
}

export function OrderSteps({ order, typed }: Props) {
  const w = useText().orders.steps;
  const may = useMay();
  const navigate = route.useNavigate();
  const { edit } = route.useSearch();
  const barred = order.limits?.inTheWay != null && !may('orders.exceed');
  return (
    <>
      {order.state === 'approved' && edit === undefined && may('orders.write') && (
        <Button
          variant="default"
          onClick={() => void navigate({ search: { edit: '1' }, replace: true })}
        >
          {w.change}
        </Button>
      )}
      {STEPS[order.state]
        .filter(({ needs }) => may(needs))
        .map(({ dialog, main = false }) => (
          <Button
            // One main button through all states: the keyboard stays on it when a step is done.
            key={main ? 'main' : dialog}
            variant={main ? 'filled' : 'default'}
            disabled={typed || (dialog === 'approve' && barred)}
            onClick={() =>
              void navigate({ search: (old) => ({ ...old, do: dialog }), resetScroll: false })
            }
          >
            {w[dialog]}
          </Button>
        ))}
      {order.state === 'sent' && may('deliveries.book') && (
        <ButtonLink to="/shelves/deliveries/new" search={{ orderId: order.id }}>
          {w.receive}
        </ButtonLink>
      )}
    </>
  );
}
