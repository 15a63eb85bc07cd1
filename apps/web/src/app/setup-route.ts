import { createRoute } from '@tanstack/react-router';
import { SetupFrame } from './setup-frame.js';
import { shellRoute } from './shell-route.js';

/** Every screen of the set-up is below this route, whichever feature it belongs to. */
export const setupRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/setup',
  component: SetupFrame,
});
