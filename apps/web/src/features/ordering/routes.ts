import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { orderingRoute } from '../../app/ordering-route.js';
import { choice, id, searchOf, text } from '../../app/search.js';
import { setupRoute } from '../../app/setup-route.js';
import { needs } from '../../app/shell-route.js';

const nowRoute = createRoute({
  getParentRoute: () => orderingRoute,
  path: '/',
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'ToOrderScreen'),
});

const itemsRoute = createRoute({
  getParentRoute: () => orderingRoute,
  path: '/items',
  validateSearch: searchOf({
    q: text(120),
    next: choice('order now', 'held back', 'no offer', 'order later', 'nothing expected'),
    sort: choice('name', 'week', 'left', 'next'),
  }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'ItemsScreen'),
});

const itemRoute = createRoute({
  getParentRoute: () => orderingRoute,
  path: '/items/$consumableId',
  validateSearch: searchOf({
    history: choice('table'),
    fan: choice('table'),
    do: choice('mark', 'stand-in'),
  }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'ItemScreen'),
});

const settingsRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/ordering',
  validateSearch: searchOf({ supplier: id, of: id, pack: id }),
  ...needs('orders.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'OrderingSettingsScreen'),
});

/** Below `orderingRoute`. */
export const orderingRoutes = [nowRoute, itemsRoute, itemRoute] as const;

/** Below `setupRoute`. */
export const orderingSettingsRoutes = [settingsRoute] as const;
