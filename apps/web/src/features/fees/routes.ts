import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choice, day, id, searchOf, text } from '../../app/search.js';
import { setupRoute } from '../../app/setup-route.js';
import { needs } from '../../app/shell-route.js';

/** What every list keeps in its address; `show` is what is no longer in use. */
const LIST = {
  q: text(120),
  show: choice('retired', 'all'),
  cursor: text(2000),
  new: choice('1'),
} as const;

const feeListRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/fees',
  validateSearch: searchOf({ ...LIST, on: day }),
  ...needs('pricing.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'FeesScreen'),
});

const feeRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/fees/$feeId',
  validateSearch: searchOf({ edit: choice('1'), new: choice('1') }),
  ...needs('pricing.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'FeeScreen'),
});

const planListRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/plans',
  validateSearch: searchOf(LIST),
  ...needs('pricing.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'PlansScreen'),
});

const planRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/plans/$planId',
  validateSearch: searchOf({
    edit: choice('1'),
    /** New terms: about what. */
    new: choice('fee', 'class'),
    /** The example: a fee, why it is made, on which day, and what is left of the year. */
    fee: id,
    reason: choice('fracture', 'wear', 'cosmetic'),
    on: day,
    deductible: text(20),
    maximum: text(20),
  }),
  ...needs('pricing.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'PlanScreen'),
});

const balancesRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/balances',
  validateSearch: searchOf({
    chart: text(60),
    plan: id,
    on: day,
    cursor: text(2000),
    new: choice('1'),
  }),
  ...needs('pricing.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'BalancesScreen'),
});

const ratesRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/rates',
  validateSearch: searchOf({ new: choice('1') }),
  ...needs('costs.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'RatesScreen'),
});

/** Below `setupRoute`. */
export const feesRoutes = [
  feeListRoute,
  feeRoute,
  planListRoute,
  planRoute,
  balancesRoute,
  ratesRoute,
] as const;
