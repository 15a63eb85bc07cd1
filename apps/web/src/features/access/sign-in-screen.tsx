import { useQueryClient } from '@tanstack/react-query';
import { getRouteApi, useRouter } from '@tanstack/react-router';
import { sessionQuery, signedInHint } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { PasswordField, TextField } from '../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { useForm } from '../../ui/use-form.js';
import { signIn } from './api/sign-in.js';
import { Doorway } from './doorway.js';

const route = getRouteApi('/sign-in');

export function SignInScreen() {
  const t = useText();
  const { to } = route.useSearch();
  const router = useRouter();
  const queries = useQueryClient();
  const form = useForm({
    initial: { signInName: '', password: '' },
    check: ({ signInName, password }) => ({
      signInName: signInName.trim() === '' ? t.ui.required : undefined,
      password: password === '' ? t.ui.required : undefined,
    }),
    send: signIn,
    explain: (problem) => {
      if (problem.code === 'wrong_credentials') return t.signIn.wrong;
      if (problem.code !== 'too_many_attempts') return undefined;
      return t.signIn.throttled(Number(/\d+/.exec(problem.detail)?.[0] ?? 15));
    },
    onDone: (session) => {
      queries.clear();
      queries.setQueryData(sessionQuery.queryKey, session);
      signedInHint.set();
      router.history.replace(ownAddress(to));
    },
  });
  return (
    <Doorway title={t.signIn.title} lead={to === undefined || to === '/' ? t.app.claim : undefined}>
      <Form form={form}>
        <TextField label={t.signIn.name} {...form.field('signInName')} autoComplete="username" />
        <PasswordField
          label={t.signIn.password}
          {...form.field('password')}
          autoComplete="current-password"
          toggleLabel={t.ui.showPassword}
        />
        <FormActions>
          <SubmitButton form={form}>{t.signIn.submit}</SubmitButton>
        </FormActions>
      </Form>
    </Doorway>
  );
}

/** Only addresses of our own: whoever made the link must not lead people elsewhere. */
function ownAddress(to: string | undefined): string {
  return to?.startsWith('/') && !to.startsWith('//') && !to.startsWith('/\\') ? to : '/';
}
