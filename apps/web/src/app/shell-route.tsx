import { createRoute, redirect } from '@tanstack/react-router';
import type { Permission, Session } from '../api/client.js';
import { isNotSignedIn } from '../api/problem.js';
import { rootRoute } from './root-route.js';
import { sessionQuery, signedInHint } from './session.js';
import { Shell } from './shell.js';
import { CrashScreen, NotFoundScreen } from './trouble-screens.js';

/** Everything that needs somebody signed in is below this route: id 'in'. */
export const shellRoute = createRoute({
  getParentRoute: () => rootRoute,
  id: 'in',
  beforeLoad: async ({ context, location }): Promise<{ session: Session }> => {
    const toSignIn = () => redirect({ to: '/sign-in', search: { to: location.href } });
    if (!signedInHint.isSet()) throw toSignIn();
    try {
      return { session: await context.queries.ensureQueryData(sessionQuery) };
    } catch (error) {
      if (!isNotSignedIn(error)) throw error;
      signedInHint.clear();
      throw toSignIn();
    }
  },
  component: Shell,
  notFoundComponent: NotFoundScreen,
  errorComponent: CrashScreen,
});

declare module '@tanstack/react-router' {
  interface StaticDataRouteOption {
    /** Any of these opens the screen; the shell shows it to nobody else. */
    readonly needs?: readonly Permission[];
  }
}

/** For a screen's route: `...needs('costs.read')` keeps out whoever has none of these. */
export function needs(...anyOf: readonly Permission[]) {
  return { staticData: { needs: anyOf } };
}
