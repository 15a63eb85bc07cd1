import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { Section } from '../../ui/section.js';
import { Moment } from '../../ui/values.js';
import { type ImportRun, importsQuery } from './api/imports.js';
import { BringIn } from './bring-in.js';
import { FileLinks } from './file-links.js';
import css from './files.module.css';
import { type FileKind, KINDS } from './kinds.js';

const route = getRouteApi('/in/setup/files');

/** Lists from files into the book, and the book as files. */
export function FilesScreen() {
  const w = useText().files;
  const { kind } = route.useSearch();
  const navigate = route.useNavigate();
  return (
    <>
      <PageHead title={w.title} lead={w.lead} />
      <Section title={w.bring.title} hint={w.bring.hint}>
        <BringIn
          key={kind ?? ''}
          kind={kind}
          onKind={(next) => void navigate({ search: { kind: next }, replace: true })}
        />
      </Section>
      <Section title={w.take.title} hint={w.take.hint}>
        <dl className={css.take}>
          {KINDS.map((each) => (
            <div key={each}>
              <dt>{w.kinds[each]}</dt>
              <dd>
                <FileLinks kind={each} label={w.take.label} />
              </dd>
            </div>
          ))}
        </dl>
      </Section>
      <Section title={w.log.title}>
        <Lately />
      </Section>
      <p className={css.caution}>{w.caution}</p>
    </>
  );
}

function Lately() {
  const w = useText().files;
  const runs = useQuery(importsQuery);
  const columns: Column<ImportRun>[] = [
    { id: 'file', head: w.log.file, cell: (run) => run.fileName },
    { id: 'kind', head: w.log.kind, wideOnly: true, cell: (run) => w.kinds[run.kind as FileKind] },
    { id: 'when', head: w.log.when, cell: (run) => <Moment value={run.startedAt} /> },
    { id: 'who', head: w.log.who, wideOnly: true, cell: (run) => run.importedBy },
    { id: 'outcome', head: w.log.outcome, cell: (run) => <Outcome run={run} /> },
  ];
  return (
    <Loaded query={runs}>
      {({ items }) => (
        <DataTable
          label={w.log.title}
          columns={columns}
          rows={items}
          rowKey={(run) => run.id}
          empty={<EmptyState title={w.log.empty} hint={w.log.emptyHint} />}
        />
      )}
    </Loaded>
  );
}

function Outcome({ run }: { readonly run: ImportRun }) {
  const w = useText().files;
  if (run.state === 'done') return w.run.done(run.newRows, run.changedRows, run.sameRows);
  if (run.state === 'running') return w.log.running;
  if (run.state === 'broken off') return w.log.broken;
  return (
    <>
      {w.log.refused}
      {run.reason !== null && <span className={css.reason}>{run.reason}</span>}
    </>
  );
}
