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

const bookedRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/visits/booked',
  // `form`: the booking that is changed, or a new one; `drop`: the one that will not take place.
  validateSearch: searchOf({ week: day, form: text(60), drop: id }),
  ...needs('visits.read'),
  component: lazyRouteComponent(() => import('./booked/index.js'), 'BookedScreen'),
});

export const visitsRoutes = [visitsRoute, bookedRoute, visitRoute] as const;
