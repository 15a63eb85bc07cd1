import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choice, searchOf, text, whole } from '../../app/search.js';
import { needs, shellRoute } from '../../app/shell-route.js';
import { ALERT_KINDS } from './kinds.js';

const todayRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/today',
  validateSearch: searchOf({
    kind: choice(...ALERT_KINDS),
    category: text(80),
    q: text(120),
    within: whole(0, 3650),
    show: whole(1, 100_000),
    snoozed: choice('true'),
    off: text(200),
  }),
  ...needs('alerts.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'TodayScreen'),
});

export const todayRoutes = [todayRoute] as const;
