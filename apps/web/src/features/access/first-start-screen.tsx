import { useQuery, useQueryClient } from '@tanstack/react-query';
import { getRouteApi, Link, useNavigate } from '@tanstack/react-router';
import { sessionQuery, signedInHint } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { EmptyState } from '../../ui/empty-state.js';
import { PasswordField, SearchSelectField, SelectField, TextField } from '../../ui/fields.js';
import { FieldGroup, FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { Loaded } from '../../ui/loaded.js';
import { useForm } from '../../ui/use-form.js';
import { firstStart, linkQuery } from './api/first-start.js';
import { signIn } from './api/sign-in.js';
import { Doorway } from './doorway.js';
import {
  checkFirstStart,
  EMPTY_BOOK,
  type FirstStartValues,
  SHORTEST_PASSWORD,
} from './first-start.js';
import { currencies, timeZones } from './places.js';

const route = getRouteApi('/first-start');

export function FirstStartScreen() {
  const t = useText();
  const { token = '' } = route.useSearch();
  const link = useQuery(linkQuery(token));
  return (
    <Loaded query={link}>
      {({ good }) =>
        good ? (
          <Doorway title={t.firstStart.title} lead={t.firstStart.lead} wide>
            <FirstStartForm token={token} />
          </Doorway>
        ) : (
          <Doorway title={t.firstStart.title}>
            <EmptyState title={t.firstStart.badLink} hint={t.firstStart.badLinkHint}>
              <Link to="/sign-in">{t.firstStart.toSignIn}</Link>
            </EmptyState>
          </Doorway>
        )
      }
    </Loaded>
  );
}

async function openBook(token: string, values: FirstStartValues) {
  const owner = {
    displayName: values['owner.displayName'].trim(),
    signInName: values['owner.signInName'].trim(),
    password: values['owner.password'],
  };
  const practice = {
    name: values['practice.name'].trim(),
    timeZone: values['practice.timeZone'],
    currency: values['practice.currency'],
    toothNotation: values['practice.toothNotation'],
  };
  await firstStart({ token, practice, owner });
  return signIn({ signInName: owner.signInName, password: owner.password });
}

function FirstStartForm({ token }: { readonly token: string }) {
  const t = useText();
  const navigate = useNavigate();
  const queries = useQueryClient();
  const form = useForm({
    initial: EMPTY_BOOK,
    check: (values) => checkFirstStart(values, t),
    send: (values) => openBook(token, values),
    onDone: (session) => {
      queries.clear();
      queries.setQueryData(sessionQuery.queryKey, session);
      signedInHint.set();
      void navigate({ to: '/', replace: true });
    },
  });
  return (
    <Form form={form}>
      <PracticeFields form={form} />
      <OwnerFields form={form} />
      <FormActions>
        <SubmitButton form={form}>{t.firstStart.submit}</SubmitButton>
      </FormActions>
    </Form>
  );
}

type Fields = Pick<ReturnType<typeof useForm<FirstStartValues, unknown>>, 'field'>;

function PracticeFields({ form }: { readonly form: Fields }) {
  const t = useText();
  const w = t.firstStart;
  return (
    <FieldGroup title={w.practice}>
      <TextField
        label={w.practiceName}
        {...form.field('practice.name')}
        autoComplete="organization"
      />
      <FieldRow>
        <SearchSelectField
          label={w.timeZone}
          hint={w.timeZoneHint}
          choices={timeZones()}
          {...form.field('practice.timeZone')}
        />
        <SearchSelectField
          label={w.currency}
          hint={w.currencyHint}
          choices={currencies(document.documentElement.lang)}
          {...form.field('practice.currency')}
        />
      </FieldRow>
      <SelectField
        label={w.notation}
        choices={[
          { value: 'iso', label: w.notations.iso },
          { value: 'universal', label: w.notations.universal },
        ]}
        {...form.field('practice.toothNotation')}
      />
    </FieldGroup>
  );
}

function OwnerFields({ form }: { readonly form: Fields }) {
  const t = useText();
  const w = t.firstStart;
  return (
    <FieldGroup title={w.owner} hint={w.ownerHint}>
      <TextField label={w.ownerName} {...form.field('owner.displayName')} autoComplete="name" />
      <FieldRow>
        <TextField
          label={w.signInName}
          hint={w.signInNameHint}
          {...form.field('owner.signInName')}
          autoComplete="username"
        />
        <PasswordField
          label={w.password}
          hint={w.passwordHint(SHORTEST_PASSWORD)}
          {...form.field('owner.password')}
          autoComplete="new-password"
          toggleLabel={t.ui.showPassword}
        />
      </FieldRow>
    </FieldGroup>
  );
}
