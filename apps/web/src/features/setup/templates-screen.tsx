import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { ButtonLink } from '../../ui/button-link.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Filters, SearchBox } from '../../ui/filters.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { type TemplateSummary, templatesQuery } from './api/list-templates.js';
import css from './parts.module.css';
import { InUseMark, ShownFilter } from './shown-filter.js';

const route = getRouteApi('/in/setup/templates');

export function TemplatesScreen() {
  const t = useText();
  const w = t.setupTemplates;
  const may = useMay();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const list = useQuery(templatesQuery(search));
  const columns = useColumns();
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, cursor: undefined, ...part }), replace: true });
  const filtered = search.q !== undefined || search.show !== undefined;
  return (
    <>
      <PageHead title={w.title} lead={w.lead}>
        {may('templates.write') && (
          <ButtonLink to="/setup/templates/new" search={{}}>
            {w.add}
          </ButtonLink>
        )}
      </PageHead>
      <Filters>
        <SearchBox value={search.q} onSearch={(q) => change({ q })} />
        <ShownFilter value={search.show} onChoose={(show) => change({ show })} />
      </Filters>
      <Loaded query={list}>
        {(page) => (
          <DataTable
            label={w.title}
            columns={columns}
            rows={page.items}
            rowKey={(row) => row.id}
            stale={list.isPlaceholderData}
            cursor={search.cursor}
            nextCursor={page.nextCursor}
            onCursor={(cursor) => void navigate({ search: (old) => ({ ...old, cursor }) })}
            {...(filtered ? {} : { empty: <EmptyState title={w.empty} hint={w.emptyHint} /> })}
          />
        )}
      </Loaded>
    </>
  );
}

function useColumns(): Column<TemplateSummary>[] {
  const w = useText().setupTemplates;
  return [
    {
      id: 'name',
      head: w.columns.name,
      cell: ({ id, name }) => (
        <Link
          className={css.name}
          to="/setup/templates/$templateId"
          params={{ templateId: id }}
          search={{}}
        >
          {name}
        </Link>
      ),
    },
    { id: 'version', head: w.columns.version, align: 'end', cell: (row) => row.latestVersion },
    { id: 'state', head: w.columns.state, cell: ({ active }) => <InUseMark active={active} /> },
  ];
}
