import { Button } from '@mantine/core';
import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { PasswordField } from '../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import type { Person } from './api/list-people.js';
import { changePerson } from './api/save-person.js';
import { passwordError, SHORTEST_PASSWORD } from './person-rules.js';

interface Props {
  readonly person: Person;
  readonly onClose: () => void;
}

export function PasswordForm({ person, onClose }: Props) {
  const t = useText();
  const w = t.setupPeople;
  const { displayName, signInName } = person;
  const { book } = useBooking({
    send: ({ password }: { password: string }) => changePerson(person.id, { password }),
    changes: [['people']],
  });
  const form = useForm({
    initial: { password: '' },
    check: ({ password }) => ({ password: passwordError(password, signInName, t) }),
    send: book,
    onDone: () => {
      notify({ tone: 'done', text: w.passwordSet(displayName) });
      onClose();
    },
  });
  return (
    <Form form={form}>
      <p>{w.newPasswordHint(displayName)}</p>
      <PasswordField
        label={w.newPassword}
        hint={w.passwordHint(SHORTEST_PASSWORD)}
        autoComplete="new-password"
        toggleLabel={t.ui.showPassword}
        {...form.field('password')}
        data-autofocus
      />
      <FormActions>
        <SubmitButton form={form}>{w.setPassword}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}
