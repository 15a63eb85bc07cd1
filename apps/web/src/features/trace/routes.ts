import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choice, id, searchOf, text } from '../../app/search.js';
import { needs, shellRoute } from '../../app/shell-route.js';

const traceRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/trace',
  validateSearch: searchOf({
    q: text(60),
    lotId: id,
    visitId: id,
    chart: text(60),
    cursor: text(2000),
    rows: choice('200', '500'),
    moves: choice('all'),
    do: choice('hold'),
  }),
  ...needs('trace.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'TraceScreen'),
});

export const traceRoutes = [traceRoute] as const;
