import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choice, day, id, searchOf, text } from '../../app/search.js';
import { needs, shellRoute } from '../../app/shell-route.js';

const visitsRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/visits',
  validateSearch: searchOf({
    q: text(60),
    dentistId: id,
    locationId: id,
    from: day,
    to: day,
    stock: choice('short', 'settled'),
    cursor: text(2000),
  }),
  ...needs('visits.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'VisitsScreen'),
});

const visitRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/visits/$visitId',
  ...needs('visits.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'VisitScreen'),
});

export const visitsRoutes = [visitsRoute, visitRoute] as const;
