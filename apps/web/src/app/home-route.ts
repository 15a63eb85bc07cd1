import { createRoute, redirect } from '@tanstack/react-router';
import { landingOf } from './nav.js';
import { shellRoute } from './shell-route.js';

/** '/' is where the role's work is. */
export const homeRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/',
  beforeLoad: ({ context }): void => {
    throw redirect({ to: landingOf(context.session), replace: true });
  },
});
