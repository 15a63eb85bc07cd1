import type { QueryClient } from '@tanstack/react-query';
import { createRouter } from '@tanstack/react-router';
import { accessRoutes } from '../features/access/routes.js';
import { chairsideRoutes } from '../features/chairside/routes.js';
import { costsRoutes } from '../features/costs/routes.js';
import { feesRoutes } from '../features/fees/routes.js';
import { filesRoutes } from '../features/files/routes.js';
import { foresightRoutes } from '../features/foresight/routes.js';
import { orderingRoutes, orderingSettingsRoutes } from '../features/ordering/routes.js';
import { ordersRoutes } from '../features/orders/routes.js';
import { quotesRoutes } from '../features/quotes/routes.js';
import { setupRoutes } from '../features/setup/routes.js';
import { shelvesRoutes } from '../features/shelves/routes.js';
import { todayRoutes } from '../features/today/routes.js';
import { traceRoutes } from '../features/trace/routes.js';
import { visitsRoutes } from '../features/visits/routes.js';
import { homeRoute } from './home-route.js';
import { orderingRoute } from './ordering-route.js';
import { rootRoute } from './root-route.js';
import { parseSearch, writeSearch } from './search.js';
import { setupRoute } from './setup-route.js';
import { shellRoute } from './shell-route.js';

const tree = rootRoute.addChildren([
  ...accessRoutes,
  shellRoute.addChildren([
    homeRoute,
    ...todayRoutes,
    ...chairsideRoutes,
    ...visitsRoutes,
    ...shelvesRoutes,
    orderingRoute.addChildren([...orderingRoutes, ...ordersRoutes, ...foresightRoutes]),
    ...costsRoutes,
    ...quotesRoutes,
    ...traceRoutes,
    setupRoute.addChildren([
      ...setupRoutes,
      ...orderingSettingsRoutes,
      ...feesRoutes,
      ...filesRoutes,
    ]),
  ]),
]);

export function makeRouter(queries: QueryClient) {
  return createRouter({
    routeTree: tree,
    context: { queries },
    parseSearch,
    stringifySearch: writeSearch,
    defaultPreload: 'intent',
    defaultPreloadStaleTime: 0,
    scrollRestoration: true,
  });
}

export type AppRouter = ReturnType<typeof makeRouter>;

declare module '@tanstack/react-router' {
  interface Register {
    router: AppRouter;
  }
}
