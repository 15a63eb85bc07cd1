import { createRoute, type ErrorComponentProps, redirect } from '@tanstack/react-router';
import type { Permission, Session } from '../api/client.js';
import { isNotSignedIn } from '../api/problem.js';
import { rootRoute } from './root-route.js';
import { isAllowed, sessionQuery } from './session.js';
import { Shell } from './shell.js';
import { CrashScreen, NotAllowedScreen, NotFoundScreen } from './trouble-screens.js';

/** Everything that needs somebody signed in is below this route: id 'in'. */
export const shellRoute = createRoute({
  getParentRoute: () => rootRoute,
  id: 'in',
  beforeLoad: async ({ context, location }): Promise<{ session: Session }> => {
    try {
      return { session: await context.queries.ensureQueryData(sessionQuery) };
    } catch (error) {
      if (!isNotSignedIn(error)) throw error;
      throw redirect({ to: '/sign-in', search: { to: location.href } });
    }
  },
  component: Shell,
  notFoundComponent: NotFoundScreen,
  errorComponent: CrashScreen,
});

class NotAllowed extends Error {
  override readonly name = 'NotAllowed';
}

/** For a screen's route: `...needs('costs.read')` keeps out whoever lacks every permission. */
export function needs(...anyOf: readonly Permission[]) {
  return {
    beforeLoad: ({ context }: { readonly context: { readonly session: Session } }) => {
      if (!isAllowed(context.session, ...anyOf)) throw new NotAllowed();
    },
    errorComponent: ({ error }: ErrorComponentProps) =>
      error instanceof NotAllowed ? <NotAllowedScreen /> : <CrashScreen error={error} />,
  };
}
