import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choice, day, id, searchOf, text, whole } from '../../app/search.js';
import { needs, shellRoute } from '../../app/shell-route.js';

const quotesRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/quotes',
  validateSearch: searchOf({
    r: text(6000),
    chart: text(60),
    plan: id,
    ded: text(20),
    max: text(20),
    day,
    target: text(20),
    setup: whole(0, 240),
    rate: text(20),
    way: choice('together', 'apart', 'insured', 'cosmetic'),
    lang: choice('en', 'de'),
    fixed: text(20),
    profit: text(20),
    hours: text(20),
    n: text(300),
  }),
  ...needs('pricing.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'QuotesScreen'),
});

export const quotesRoutes = [quotesRoute] as const;
