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
import { InUseMark, ShownFilter } from '../../ui/shown-filter.js';
import { type TemplateSummary, templatesQuery } from './api/list-templates.js';
import css from './parts.module.css';
import type { TemplateSort } from './sorts.js';

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
          <DataTable<TemplateSummary, TemplateSort>
            label={w.title}
            columns={columns}
            rows={page.items}
            rowKey={(row) => row.id}
            stale={list.isPlaceholderData}
            sort={search.sort ?? 'name'}
            bothWays
            onSort={(sort) => change({ sort: sort === 'name' ? undefined : sort })}
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

function useColumns(): Column<TemplateSummary, TemplateSort>[] {
  const w = useText().setupTemplates;
  return [
    {
      ...{ id: 'name', head: w.columns.name, sort: 'name' },
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
    {
      ...{ id: 'version', head: w.columns.version, sort: 'version', align: 'end' },
      cell: (row) => row.latestVersion,
    },
    { id: 'state', head: w.columns.state, cell: ({ active }) => <InUseMark active={active} /> },
  ];
}
