import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { orderingRoute } from '../../app/ordering-route.js';
import { choice, id, searchOf, whole } from '../../app/search.js';
import { needs } from '../../app/shell-route.js';

const whatIfRoute = createRoute({
  getParentRoute: () => orderingRoute,
  path: '/what-if',
  validateSearch: searchOf({ item: id }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'WhatIfScreen'),
});

const suppliersRoute = createRoute({
  getParentRoute: () => orderingRoute,
  path: '/suppliers',
  validateSearch: searchOf({ prices: choice('all') }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'SuppliersScreen'),
});

const proofRoute = createRoute({
  getParentRoute: () => orderingRoute,
  path: '/proof',
  validateSearch: searchOf({ replay: id, show: whole(1, 100_000) }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'ProofScreen'),
});

/** Below `orderingRoute`. */
export const foresightRoutes = [whatIfRoute, suppliersRoute, proofRoute] as const;
