import { Button } from '@mantine/core';
import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { CheckField, SelectField, TextField } from '../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import type { Person, Role } from './api/list-people.js';
import { changePerson } from './api/save-person.js';
import { ROLES } from './person-rules.js';

interface Props {
  readonly person: Person;
  readonly onClose: () => void;
}

type Values = { displayName: string; role: Role; active: boolean };

export function ChangePersonForm({ person, onClose }: Props) {
  const t = useText();
  const w = t.setupPeople;
  const { book } = useBooking({
    send: ({ displayName, ...rest }: Values) =>
      changePerson(person.id, { displayName: displayName.trim(), ...rest }),
    changes: [['people'], ['dentists'], ['session']],
  });
  const form = useForm({
    initial: { displayName: person.displayName, role: person.role, active: person.active },
    check: ({ displayName }) => ({
      displayName: displayName.trim() === '' ? t.ui.required : undefined,
    }),
    send: book,
    explain: ({ code }) => (code === 'last_owner' ? w.lastOwner : undefined),
    onDone: ({ displayName }) => {
      notify({ tone: 'done', text: t.setup.saved(displayName) });
      onClose();
    },
  });
  return (
    <Form form={form}>
      <TextField label={w.name} {...form.field('displayName')} maxLength={120} data-autofocus />
      <SelectField
        label={w.role}
        choices={ROLES.map((role) => ({ value: role, label: t.account.roles[role] }))}
        {...form.field('role')}
      />
      <CheckField label={w.active} hint={w.activeHint} {...form.flag('active')} />
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}
