import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { RowButton } from '../../ui/row-button.js';
import { StatusMark } from '../../ui/status-mark.js';
import { type Person, peopleQuery } from './api/list-people.js';
import css from './parts.module.css';
import { PersonDialogs } from './person-dialogs.js';
import { RolesTable } from './roles-table.js';

const route = getRouteApi('/in/setup/people');

export function PeopleScreen() {
  const w = useText().setupPeople;
  const { cursor } = route.useSearch();
  const navigate = route.useNavigate();
  const people = useQuery(peopleQuery(cursor));
  const columns = useColumns();
  return (
    <>
      <PageHead title={w.title} lead={w.lead}>
        <Button onClick={() => void navigate({ search: (old) => ({ ...old, new: '1' as const }) })}>
          {w.add}
        </Button>
      </PageHead>
      <Loaded query={people}>
        {(page) => (
          <DataTable
            label={w.title}
            columns={columns}
            rows={page.items}
            rowKey={(row) => row.id}
            stale={people.isPlaceholderData}
            cursor={cursor}
            nextCursor={page.nextCursor}
            onCursor={(next) => void navigate({ search: (old) => ({ ...old, cursor: next }) })}
          />
        )}
      </Loaded>
      <RolesTable />
      <PersonDialogs />
    </>
  );
}

function useColumns(): Column<Person>[] {
  const t = useText();
  const w = t.setupPeople;
  const me = useSession().person.id;
  return [
    {
      id: 'name',
      head: w.columns.name,
      cell: ({ id, displayName }) => (
        <>
          <span className={css.name}>{displayName}</span>
          {id === me && <span className={css.quiet}> ({w.you})</span>}
        </>
      ),
    },
    { id: 'signIn', head: w.columns.signIn, cell: ({ signInName }) => signInName },
    { id: 'role', head: w.columns.role, cell: ({ role }) => t.account.roles[role] },
    {
      id: 'state',
      head: w.columns.state,
      cell: ({ active }) => (
        <StatusMark tone={active ? 'good' : 'quiet'}>
          {active ? w.states.active : w.states.inactive}
        </StatusMark>
      ),
    },
    { id: 'actions', head: '', align: 'end', cell: (person) => <Actions person={person} /> },
  ];
}

function Actions({ person }: { readonly person: Person }) {
  const t = useText();
  const w = t.setupPeople;
  const navigate = route.useNavigate();
  const { id, displayName } = person;
  return (
    <span className={css.rowActions}>
      <RowButton
        label={w.newPasswordOf(displayName)}
        onClick={() => void navigate({ search: (old) => ({ ...old, password: id }) })}
      >
        {w.newPassword}
      </RowButton>
      <RowButton
        label={t.setup.changeOf(displayName)}
        onClick={() => void navigate({ search: (old) => ({ ...old, edit: id }) })}
      >
        {t.setup.change}
      </RowButton>
    </span>
  );
}
