import { MutationCache, QueryCache, QueryClient } from '@tanstack/react-query';
import { isNotSignedIn, mayPass } from './problem.js';

declare module '@tanstack/react-query' {
  interface Register {
    /** `quiet`: whoever asks shows the error itself; nothing goes to the notices. */
    readonly queryMeta: { readonly quiet?: boolean };
  }
}

interface Reactions {
  /** The session has ended: to the sign-in, keeping the wanted address. */
  readonly onSignedOut: () => void;
}

/** The one memory of what the service answered. */
export function makeQueryClient({ onSignedOut }: Reactions): QueryClient {
  const onError = (error: Error) => {
    if (isNotSignedIn(error)) onSignedOut();
  };
  return new QueryClient({
    queryCache: new QueryCache({
      onError: (error, query) => {
        if (query.meta?.quiet !== true) onError(error);
      },
    }),
    mutationCache: new MutationCache({ onError }),
    defaultOptions: {
      queries: {
        staleTime: 15_000,
        retry: (failures, error) => failures < 2 && mayPass(error),
        networkMode: 'always',
      },
      mutations: { retry: false, networkMode: 'always' },
    },
  });
}
