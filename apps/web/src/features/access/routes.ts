import { createRoute, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { rootRoute } from '../../app/root-route.js';
import { searchOf, text } from '../../app/search.js';

const signInRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/sign-in',
  validateSearch: searchOf({ to: text(2000) }),
  component: lazyRouteComponent(() => import('./index.js'), 'SignInScreen'),
});

const firstStartSearch = searchOf({ token: text() });

const firstStartRoute = createRoute({
  getParentRoute: () => rootRoute,
  path: '/first-start',
  validateSearch: firstStartSearch,
  beforeLoad: ({ search }): void => {
    if (search.token === undefined) throw redirect({ to: '/sign-in' });
  },
  component: lazyRouteComponent(() => import('./index.js'), 'FirstStartScreen'),
});

export const accessRoutes = [signInRoute, firstStartRoute] as const;
