import { createRoute, lazyRouteComponent, redirect } from '@tanstack/react-router';
import { choice, id, searchOf, text, whole } from '../../app/search.js';
import { setupRoute } from '../../app/setup-route.js';
import { needs } from '../../app/shell-route.js';
import { AUDIT_KINDS } from './audit-kinds.js';
import { CONSUMABLE_SORTS, SUPPLIER_SORTS, TEMPLATE_SORTS } from './sorts.js';

const startRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/',
  beforeLoad: (): void => {
    throw redirect({ to: '/setup/consumables', replace: true });
  },
});

/** What every list keeps in its address; `show` is what is no longer in use. */
const LIST = {
  q: text(120),
  show: choice('retired', 'all'),
  cursor: text(2000),
  new: choice('1'),
} as const;

const consumablesRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/consumables',
  validateSearch: searchOf({
    ...LIST,
    category: text(80),
    sort: choice(...CONSUMABLE_SORTS),
  }),
  ...needs('catalogue.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'ConsumablesScreen'),
});

const consumableRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/consumables/$consumableId',
  validateSearch: searchOf({ edit: choice('1'), pack: text(42) }),
  ...needs('catalogue.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'ConsumableScreen'),
});

const suppliersRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/suppliers',
  validateSearch: searchOf({ ...LIST, edit: id, sort: choice(...SUPPLIER_SORTS) }),
  ...needs('catalogue.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'SuppliersScreen'),
});

const locationsRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/locations',
  validateSearch: searchOf({ show: choice('all'), new: choice('1'), below: id, edit: id }),
  ...needs('catalogue.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'LocationsScreen'),
});

const templatesRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/templates',
  validateSearch: searchOf({
    ...{ q: LIST.q, show: LIST.show, cursor: LIST.cursor },
    sort: choice(...TEMPLATE_SORTS),
  }),
  ...needs('templates.read'),
  component: lazyRouteComponent(() => import('./templates.js'), 'TemplatesScreen'),
});

/** The example that a template is tried on; `teeth` is read by `readExample`. */
const EXAMPLE = {
  teeth: text(400),
  shades: text(400),
  people: whole(1, 10),
  room: id,
  setting: choice('1'),
} as const;

const newTemplateRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/templates/new',
  validateSearch: searchOf(EXAMPLE),
  ...needs('templates.write'),
  component: lazyRouteComponent(() => import('./templates.js'), 'NewTemplateScreen'),
});

const templateRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/templates/$templateId',
  validateSearch: searchOf({ ...EXAMPLE, version: whole(1, 1_000_000), rename: choice('1') }),
  ...needs('templates.read'),
  component: lazyRouteComponent(() => import('./templates.js'), 'TemplateScreen'),
});

const peopleRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/people',
  validateSearch: searchOf({ cursor: text(2000), new: choice('1'), edit: id, password: id }),
  ...needs('people.manage'),
  component: lazyRouteComponent(() => import('./index.js'), 'PeopleScreen'),
});

const practiceRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/practice',
  ...needs('practice.manage'),
  component: lazyRouteComponent(() => import('./index.js'), 'PracticeScreen'),
});

const messagesRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/messages',
  validateSearch: searchOf({ cursor: text(2000) }),
  ...needs('practice.manage'),
  component: lazyRouteComponent(() => import('./index.js'), 'MessagesScreen'),
});

const tokensRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/tokens',
  validateSearch: searchOf({ new: choice('1') }),
  ...needs('tokens.own'),
  component: lazyRouteComponent(() => import('./index.js'), 'TokensScreen'),
});

const auditRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/audit',
  validateSearch: searchOf({
    kind: choice(...AUDIT_KINDS),
    subject: text(200),
    person: id,
    cursor: text(2000),
    entry: id,
  }),
  ...needs('audit.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'AuditScreen'),
});

/** Below `setupRoute`. */
export const setupRoutes = [
  startRoute,
  consumablesRoute,
  consumableRoute,
  suppliersRoute,
  locationsRoute,
  templatesRoute,
  newTemplateRoute,
  templateRoute,
  peopleRoute,
  practiceRoute,
  messagesRoute,
  tokensRoute,
  auditRoute,
] as const;
