import { createRoute, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { searchOf, text } from '../../app/search.js';
import { needs, shellRoute } from '../../app/shell-route.js';

const frameRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/setup',
  component: lazyRouteComponent(() => import('./index.js'), 'SetupFrame'),
});

const startRoute = createRoute({
  getParentRoute: () => frameRoute,
  path: '/',
  beforeLoad: (): void => {
    throw redirect({ to: '/setup/consumables', replace: true });
  },
});

const list = searchOf({ q: text(120), cursor: text(2000), new: text(1) });

const consumablesRoute = createRoute({
  getParentRoute: () => frameRoute,
  path: '/consumables',
  validateSearch: searchOf({ q: text(120), category: text(80), cursor: text(2000), new: text(1) }),
  ...needs('catalogue.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'ConsumablesScreen'),
});

const consumableRoute = createRoute({
  getParentRoute: () => frameRoute,
  path: '/consumables/$consumableId',
  ...needs('catalogue.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'ConsumableScreen'),
});

const suppliersRoute = createRoute({
  getParentRoute: () => frameRoute,
  path: '/suppliers',
  validateSearch: list,
  ...needs('catalogue.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'SuppliersScreen'),
});

const locationsRoute = createRoute({
  getParentRoute: () => frameRoute,
  path: '/locations',
  validateSearch: list,
  ...needs('catalogue.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'LocationsScreen'),
});

const templatesRoute = createRoute({
  getParentRoute: () => frameRoute,
  path: '/templates',
  validateSearch: list,
  ...needs('templates.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'TemplatesScreen'),
});

const templateRoute = createRoute({
  getParentRoute: () => frameRoute,
  path: '/templates/$templateId',
  ...needs('templates.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'TemplateScreen'),
});

const peopleRoute = createRoute({
  getParentRoute: () => frameRoute,
  path: '/people',
  validateSearch: list,
  ...needs('people.manage'),
  component: lazyRouteComponent(() => import('./index.js'), 'PeopleScreen'),
});

const practiceRoute = createRoute({
  getParentRoute: () => frameRoute,
  path: '/practice',
  ...needs('practice.manage'),
  component: lazyRouteComponent(() => import('./index.js'), 'PracticeScreen'),
});

export const setupRoutes = [
  frameRoute.addChildren([
    startRoute,
    consumablesRoute,
    consumableRoute,
    suppliersRoute,
    locationsRoute,
    templatesRoute,
    templateRoute,
    peopleRoute,
    practiceRoute,
  ]),
] as const;
