import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { EmptyState } from '../../ui/empty-state.js';
import { FilterSelect, Filters } from '../../ui/filters.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { PrintButton } from '../../ui/print-button.js';
import rowCss from '../../ui/row-button.module.css';
import { Moment } from '../../ui/values.js';
import { type AuditEntry, auditQuery } from './api/list-audit-entries.js';
import { peopleQuery } from './api/list-people.js';
import own from './audit.module.css';
import { AuditDetails } from './audit-details.js';
import { AUDIT_KINDS } from './audit-kinds.js';
import css from './parts.module.css';

const route = getRouteApi('/in/setup/audit');

export function AuditScreen() {
  const w = useText().setupAudit;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const list = useQuery(auditQuery(search));
  const columns = useColumns();
  return (
    <>
      <PageHead title={w.title} lead={w.lead}>
        <PrintButton />
      </PageHead>
      <AuditFilters />
      <Loaded query={list}>
        {(page) => (
          <>
            <Narrowed entries={page.items} />
            <DataTable
              label={w.title}
              columns={columns}
              rows={page.items}
              rowKey={(row) => row.id}
              marked={search.entry}
              stale={list.isPlaceholderData}
              cursor={search.cursor}
              nextCursor={page.nextCursor}
              onCursor={(cursor) => void navigate({ search: (old) => ({ ...old, cursor }) })}
              empty={<EmptyState title={w.nothing} />}
            />
          </>
        )}
      </Loaded>
    </>
  );
}

function AuditFilters() {
  const w = useText().setupAudit;
  const may = useMay();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const people = useQuery({ ...peopleQuery(undefined, 500), enabled: may('people.manage') });
  const change = (part: Partial<typeof search>) =>
    void navigate({
      search: (old) => ({ ...old, cursor: undefined, entry: undefined, ...part }),
      replace: true,
    });
  return (
    <Filters>
      <FilterSelect
        label={w.kind}
        value={search.kind}
        choices={AUDIT_KINDS.map((kind) => ({ value: kind, label: w.kinds[kind] }))}
        onChoose={(kind) => change({ kind, subject: undefined })}
      />
      {people.data && (
        <FilterSelect
          label={w.person}
          value={search.person}
          choices={people.data.items.map(({ id, displayName }) => ({
            value: id,
            label: displayName,
          }))}
          onChoose={(person) => change({ person })}
        />
      )}
    </Filters>
  );
}

/** Says that only one thing or person is shown, and leads back. */
function Narrowed({ entries }: { readonly entries: readonly AuditEntry[] }) {
  const w = useText().setupAudit;
  const { subject, person } = route.useSearch();
  const navigate = route.useNavigate();
  if (subject === undefined && person === undefined) return null;
  const name = entries.find(({ personId }) => personId === person)?.personName;
  const words = [
    ...(subject === undefined ? [] : [w.narrowed]),
    ...(person === undefined || !name ? [] : [w.narrowedPerson(name)]),
  ];
  return (
    <p className={own.narrowed}>
      {words.join(' · ')}
      <Button
        variant="subtle"
        className={`${rowCss.rowAction ?? ''} tb-screen-only`}
        onClick={() =>
          void navigate({
            search: (old) => ({
              ...old,
              subject: undefined,
              person: undefined,
              cursor: undefined,
            }),
          })
        }
      >
        {w.widen}
      </Button>
    </p>
  );
}

function useColumns(): Column<AuditEntry>[] {
  const w = useText().setupAudit;
  const names: Readonly<Record<string, string>> = w.actions;
  return [
    {
      id: 'when',
      head: w.columns.when,
      cell: ({ recordedAt }) => <Moment value={recordedAt} />,
    },
    { id: 'who', head: w.columns.who, cell: (entry) => <Who entry={entry} /> },
    {
      id: 'what',
      head: w.columns.what,
      cell: ({ action }) => <span className={css.name}>{names[action] ?? action}</span>,
    },
    {
      id: 'details',
      head: w.columns.details,
      cell: (entry) => <AuditDetails entry={entry} what={names[entry.action] ?? entry.action} />,
    },
  ];
}

function Who({ entry: { personId, personName } }: { readonly entry: AuditEntry }) {
  const w = useText().setupAudit;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  if (personId === null) return <span className={css.quiet}>{w.nobody}</span>;
  const name = personName ?? personId;
  if (search.person === personId) return name;
  return (
    <button
      type="button"
      className={own.linkButton}
      title={w.onlyPerson(name)}
      onClick={() =>
        void navigate({ search: (old) => ({ ...old, person: personId, cursor: undefined }) })
      }
    >
      {name}
    </button>
  );
}
