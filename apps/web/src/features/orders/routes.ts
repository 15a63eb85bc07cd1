import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { orderingRoute } from '../../app/ordering-route.js';
import { choice, id, searchOf, text } from '../../app/search.js';
import { needs } from '../../app/shell-route.js';
import { ORDER_DIALOGS, STATE_FILTERS } from './choices.js';

const ordersRoute = createRoute({
  getParentRoute: () => orderingRoute,
  path: '/orders',
  validateSearch: searchOf({
    state: choice(...STATE_FILTERS),
    supplierId: id,
    late: choice('1'),
    cursor: text(400),
    do: choice('rules'),
  }),
  ...needs('orders.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'OrdersScreen'),
});

const newOrderRoute = createRoute({
  getParentRoute: () => orderingRoute,
  path: '/orders/new',
  ...needs('orders.write'),
  component: lazyRouteComponent(() => import('./index.js'), 'NewOrderScreen'),
});

const orderRoute = createRoute({
  getParentRoute: () => orderingRoute,
  path: '/orders/$orderId',
  validateSearch: searchOf({ do: choice(...ORDER_DIALOGS), edit: choice('1') }),
  ...needs('orders.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'OrderScreen'),
});

/** Below `orderingRoute`. */
export const ordersRoutes = [ordersRoute, newOrderRoute, orderRoute] as const;
