import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { id, searchOf, text } from '../../app/search.js';
import { needs, shellRoute } from '../../app/shell-route.js';

const traceRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/trace',
  validateSearch: searchOf({ q: text(120), lotId: id, visitId: id, chart: text(60) }),
  ...needs('trace.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'TraceScreen'),
});

export const traceRoutes = [traceRoute] as const;
