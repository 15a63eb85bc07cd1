import { MantineProvider } from '@mantine/core';
import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { makeQueryClient } from '../api/queries.js';
import type { Language } from '../text/language.js';
import type { Text } from '../text/text.js';
import { TextProvider } from '../text/text-provider.js';
import { makeRouter } from './router.js';
import { signedInHint } from './session.js';
import { cssVariables, theme, themeMemory } from './theme.js';

const queries = makeQueryClient({ onSignedOut: () => toSignIn() });
const router = makeRouter(queries);

/** The session ended in the middle of work: sign in, then come back to this address. */
function toSignIn(): void {
  const { href, pathname } = router.state.location;
  if (pathname === '/sign-in') return;
  signedInHint.clear();
  queries.removeQueries();
  void router.navigate({ to: '/sign-in', search: { to: href }, replace: true });
}

interface Props {
  readonly first: { readonly language: Language; readonly text: Text };
}

export function App({ first }: Props) {
  return (
    <MantineProvider
      theme={theme}
      cssVariablesResolver={cssVariables}
      colorSchemeManager={themeMemory}
      defaultColorScheme="auto"
    >
      <TextProvider first={first}>
        <QueryClientProvider client={queries}>
          <RouterProvider router={router} />
        </QueryClientProvider>
      </TextProvider>
    </MantineProvider>
  );
}
