import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choice, day, id, searchOf, text, whole } from '../../app/search.js';
import { needs, shellRoute } from '../../app/shell-route.js';
import { CHAIR_TIME_SORTS } from './chair-time/chair-time-sorts.js';
import { REASONS } from './choice.js';
import { CONTRIBUTION_SORTS, SHARE_BASES } from './earned/earned-choices.js';
import { ROW_SORTS } from './sort-rows.js';
import { VARIANCE_SORTS } from './variances/variance-sorts.js';

/** Which restorations are meant; the same words on every screen of costs. */
const CHOSEN = {
  from: day,
  to: day,
  templateId: id,
  reason: choice(...REASONS),
  dentistId: id,
};

/** How a grouped report is compared, and how much of its table is shown. */
const TABLE = { by: text(40), show: whole(1, 100_000) };

const costsRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/costs',
  validateSearch: searchOf({
    ...CHOSEN,
    ...TABLE,
    sort: choice(...ROW_SORTS),
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

const variancesRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/costs/variances',
  validateSearch: searchOf({ ...CHOSEN, ...TABLE, sort: choice(...VARIANCE_SORTS) }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'VariancesScreen'),
});

const chairTimeRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/costs/chair-time',
  validateSearch: searchOf({ from: day, to: day, ...TABLE, sort: choice(...CHAIR_TIME_SORTS) }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'ChairTimeScreen'),
});

const contributionsRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/costs/contributions',
  validateSearch: searchOf({ ...CHOSEN, ...TABLE, sort: choice(...CONTRIBUTION_SORTS) }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'ContributionsScreen'),
});

const suppliesRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/costs/supplies',
  validateSearch: searchOf({ from: day, to: day, of: choice(...SHARE_BASES) }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'SuppliesScreen'),
});

const habitsRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/costs/habits',
  validateSearch: searchOf({ from: day, to: day }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'HabitsScreen'),
});

const pricesRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/costs/prices',
  validateSearch: searchOf({ from: day, to: day, consumableId: id, show: whole(1, 100_000) }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'PricesScreen'),
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
  validateSearch: searchOf({
    templateId: id,
    version: whole(1, 100_000),
    last: whole(1, 1000),
    do: choice('version'),
  }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'UsageScreen'),
});

export const costsRoutes = [
  costsRoute,
  restorationsRoute,
  restorationRoute,
  variancesRoute,
  chairTimeRoute,
  contributionsRoute,
  suppliesRoute,
  habitsRoute,
  wasteRoute,
  pricesRoute,
  usageRoute,
] as const;
