import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choice, searchOf } from '../../app/search.js';
import { setupRoute } from '../../app/setup-route.js';
import { needs } from '../../app/shell-route.js';
import { KINDS } from './kinds.js';

const filesRoute = createRoute({
  getParentRoute: () => setupRoute,
  path: '/files',
  validateSearch: searchOf({ kind: choice(...KINDS) }),
  ...needs('files.import'),
  component: lazyRouteComponent(() => import('./index.js'), 'FilesScreen'),
});

export const filesRoutes = [filesRoute] as const;
