import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { day, id, searchOf, text } from '../../app/search.js';
import { needs, shellRoute } from '../../app/shell-route.js';

const costsRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/costs',
  validateSearch: searchOf({
    from: day,
    to: day,
    by: text(40),
    templateId: id,
    dentistId: id,
    reason: text(40),
    cursor: text(2000),
  }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'CostsScreen'),
});

const restorationRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/costs/restorations/$restorationId',
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'RestorationScreen'),
});

export const costsRoutes = [costsRoute, restorationRoute] as const;
