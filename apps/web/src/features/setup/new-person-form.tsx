import { Button } from '@mantine/core';
import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { PasswordField, SelectField, TextField } from '../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import type { Role } from './api/list-people.js';
import { createPerson } from './api/save-person.js';
import { passwordError, ROLES, SHORTEST_PASSWORD } from './person-rules.js';

const EMPTY = { displayName: '', signInName: '', password: '', role: 'assistant' as Role };

function useNewPersonForm(onClose: () => void) {
  const t = useText();
  const { book } = useBooking({
    send: ({ displayName, signInName, password, role }: typeof EMPTY, key) =>
      createPerson({
        id: key,
        displayName: displayName.trim(),
        signInName: signInName.trim(),
        password,
        role,
      }),
    changes: [['people'], ['dentists']],
  });
  return useForm({
    initial: EMPTY,
    check: ({ displayName, signInName, password }) => ({
      displayName: displayName.trim() === '' ? t.ui.required : undefined,
      signInName: signInName.trim() === '' ? t.ui.required : undefined,
      password: passwordError(password, signInName, t),
    }),
    send: book,
    onDone: ({ displayName }) => {
      notify({ tone: 'done', text: t.setup.saved(displayName) });
      onClose();
    },
  });
}

export function NewPersonForm({ onClose }: { readonly onClose: () => void }) {
  const t = useText();
  const w = t.setupPeople;
  const form = useNewPersonForm(onClose);
  return (
    <Form form={form}>
      <TextField label={w.name} {...form.field('displayName')} maxLength={120} data-autofocus />
      <SelectField
        label={w.role}
        choices={ROLES.map((role) => ({ value: role, label: t.account.roles[role] }))}
        {...form.field('role')}
      />
      <TextField label={w.signInName} hint={w.signInNameHint} {...form.field('signInName')} />
      <PasswordField
        label={w.password}
        hint={w.passwordHint(SHORTEST_PASSWORD)}
        autoComplete="new-password"
        toggleLabel={t.ui.showPassword}
        {...form.field('password')}
      />
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}
