import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choice, day, id, searchOf, text, whole } from '../../app/search.js';
import { needs, shellRoute } from '../../app/shell-route.js';
import { REASONS } from './choice.js';
import { ROW_SORTS } from './sort-rows.js';

/** Which restorations are meant; the same words on every screen of costs. */
const CHOSEN = {
  from: day,
  to: day,
  templateId: id,
  reason: choice(...REASONS),
  dentistId: id,
};

const costsRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/costs',
  validateSearch: searchOf({
    ...CHOSEN,
    by: text(40),
    sort: choice(...ROW_SORTS),
    show: whole(1, 100_000),
    months: choice('table'),
  }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'CostsScreen'),
});

const restorationsRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/costs/restorations',
  validateSearch: searchOf({
    ...CHOSEN,
    visitId: id,
    sort: choice('date', 'cost'),
    cursor: text(2000),
  }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'RestorationsScreen'),
});

const restorationRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/costs/restorations/$restorationId',
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'RestorationScreen'),
});

const wasteRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/costs/waste',
  validateSearch: searchOf({ from: day, to: day, why: text(60) }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'WasteScreen'),
});

const usageRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/costs/templates',
  validateSearch: searchOf({ templateId: id, version: whole(1, 100_000), last: whole(1, 1000) }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'UsageScreen'),
});

export const costsRoutes = [
  costsRoute,
  restorationsRoute,
  restorationRoute,
  wasteRoute,
  usageRoute,
] as const;
