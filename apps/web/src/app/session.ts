import { queryOptions, useSuspenseQuery } from '@tanstack/react-query';
import { answerOf, api, type Permission, type Session } from '../api/client.js';

const HINT = 'traybook.signed-in';

/**
 * The cookie of a session cannot be seen from here. Whoever has never signed in on this device, or has
 * signed out, is led to the sign-in without asking the service for a session that is not there.
 */
export const signedInHint = {
  isSet: () => localStorage.getItem(HINT) !== null,
  set: () => localStorage.setItem(HINT, 'yes'),
  clear: () => localStorage.removeItem(HINT),
};

/** Who is signed in, of which practice, and what they may do. */
export const sessionQuery = queryOptions({
  queryKey: ['session'],
  queryFn: ({ signal }): Promise<Session> => answerOf(api.GET('/api/session', { signal })),
  staleTime: 5 * 60_000,
  meta: { quiet: true },
});

/** The session; only below the shell, which has waited for it. */
export function useSession(): Session {
  return useSuspenseQuery(sessionQuery).data;
}

export function isAllowed(session: Session, ...anyOf: readonly Permission[]): boolean {
  return anyOf.some((permission) => session.permissions.includes(permission));
}

/** `const may = useMay(); may('stock.handle') && <Button …>`: what a role may not do is not shown. */
export function useMay(): (permission: Permission) => boolean {
  const session = useSession();
  return (permission) => isAllowed(session, permission);
}
