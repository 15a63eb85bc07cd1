import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { Loaded } from '../../ui/loaded.js';
import { type Person, personQuery } from './api/list-people.js';
import { ChangePersonForm } from './change-person-form.js';
import { NewPersonForm } from './new-person-form.js';
import { PasswordForm } from './password-form.js';

const route = getRouteApi('/in/setup/people');

/** The dialogs that the address opens. */
export function PersonDialogs() {
  const t = useText();
  const w = t.setupPeople;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const close = () =>
    void navigate({
      search: (old) => ({ ...old, new: undefined, edit: undefined, password: undefined }),
    });
  return (
    <>
      <Dialog title={w.addTitle} opened={search.new !== undefined} onClose={close}>
        <NewPersonForm onClose={close} />
      </Dialog>
      <Dialog title={t.setup.change} opened={search.edit !== undefined} onClose={close}>
        <OfPerson id={search.edit}>
          {(person) => <ChangePersonForm person={person} onClose={close} />}
        </OfPerson>
      </Dialog>
      <Dialog title={w.newPassword} opened={search.password !== undefined} onClose={close}>
        <OfPerson id={search.password}>
          {(person) => <PasswordForm person={person} onClose={close} />}
        </OfPerson>
      </Dialog>
    </>
  );
}

interface Props {
  readonly id: string | undefined;
  readonly children: (person: Person) => ReactNode;
}

function OfPerson({ id, children }: Props) {
  const person = useQuery({ ...personQuery(id ?? ''), enabled: id !== undefined });
  return id === undefined ? null : <Loaded query={person}>{children}</Loaded>;
}
