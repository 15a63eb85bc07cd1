import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { searchOf, text } from '../../app/search.js';
import { needs, shellRoute } from '../../app/shell-route.js';

const chairsideRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/chairside',
  validateSearch: searchOf({ chart: text(60) }),
  ...needs('visits.post'),
  component: lazyRouteComponent(() => import('./index.js'), 'ChairsideScreen'),
});

export const chairsideRoutes = [chairsideRoute] as const;
