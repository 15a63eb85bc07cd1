import type { QueryClient } from '@tanstack/react-query';
import { createRootRouteWithContext, Outlet } from '@tanstack/react-router';
import { CrashScreen, NotFoundScreen } from './trouble-screens.js';

export interface RouterContext {
  readonly queries: QueryClient;
}

export const rootRoute = createRootRouteWithContext<RouterContext>()({
  component: Outlet,
  notFoundComponent: NotFoundScreen,
  errorComponent: CrashScreen,
});
