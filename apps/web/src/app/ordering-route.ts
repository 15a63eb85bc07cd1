import { createRoute } from '@tanstack/react-router';
import { OrderingFrame } from './ordering-frame.js';
import { shellRoute } from './shell-route.js';

/** Every screen of ordering is below this route, whichever feature it belongs to. */
export const orderingRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/ordering',
  component: OrderingFrame,
});
