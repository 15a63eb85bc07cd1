import { Button } from '@mantine/core';
import { useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { api, done } from '../api/client.js';
import { useText } from '../text/text-provider.js';
import { useReport } from '../ui/use-report.js';
import css from './account-panel.module.css';
import { LanguageSwitch, ThemeSwitch } from './preferences.js';
import { signedInHint, useSession } from './session.js';

/** Who is signed in and where; language, appearance, the way out. */
export function AccountPanel() {
  const t = useText();
  const { person, practice } = useSession();
  return (
    <section className={css.panel} aria-label={t.account.title}>
      <div>
        <p className={css.name}>{person.displayName}</p>
        <p className={css.quiet}>{t.account.roles[person.role]}</p>
        <p className={css.quiet}>{practice.name}</p>
      </div>
      <LanguageSwitch />
      <ThemeSwitch />
      <SignOutButton />
    </section>
  );
}

function SignOutButton() {
  const t = useText();
  const queries = useQueryClient();
  const navigate = useNavigate();
  const report = useReport();
  const signOut = async () => {
    await done(api.DELETE('/api/session'));
    signedInHint.clear();
    await navigate({ to: '/sign-in', search: {} });
    queries.clear();
  };
  return (
    <Button variant="default" size="sm" onClick={() => void signOut().catch(report)}>
      {t.account.signOut}
    </Button>
  );
}
