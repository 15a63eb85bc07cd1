import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Figure, Figures } from '../../ui/figure.js';
import { FilterSelect, Filters } from '../../ui/filters.js';
import { Loaded } from '../../ui/loaded.js';
import { Section } from '../../ui/section.js';
import { Money } from '../../ui/values.js';
import { templateChoicesQuery } from './api/list-choices.js';
import { type UsageRow, usageQuery } from './api/report-usage.js';
import { ReportFrame } from './report-frame.js';
import { SuggestionSection } from './suggestion/suggestion-section.js';
import { sumOf } from './sums.js';
import { differenceOf, versionOf, versionsOf } from './usage.js';
import css from './usage-screen.module.css';
import { UsageTable } from './usage-table.js';

const route = getRouteApi('/in/costs/templates');

const LAST = ['20', '50', '200', '1000'] as const;
const USUAL = '200';

/** What a template plans beside what was really used. */
export function UsageScreen() {
  const t = useText();
  const { templateId, last = USUAL } = route.useSearch();
  const templates = useQuery(templateChoicesQuery);
  const chosen = templateId ?? templates.data?.items[0]?.id;
  return (
    <ReportFrame screen="templates" report="template-usage" asked={{ templateId: chosen, last }}>
      <Loaded query={templates}>
        {({ items }) =>
          chosen === undefined ? (
            <EmptyState title={t.costs.usage.empty} hint={t.costs.usage.emptyHint} />
          ) : (
            <Usage templateId={chosen} templates={items} />
          )
        }
      </Loaded>
    </ReportFrame>
  );
}

interface UsageProps {
  readonly templateId: string;
  readonly templates: readonly { readonly id: string; readonly name: string }[];
}

function Usage({ templateId, templates }: UsageProps) {
  const t = useText();
  const format = useFormat();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const report = useQuery(usageQuery(templateId, search.last ?? USUAL));
  const versions = versionsOf(report.data?.rows ?? []);
  const words = t.costs.usage;
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, ...part }), replace: true });
  return (
    <>
      <Filters>
        <FilterSelect
          label={words.template}
          value={templateId}
          all={t.ui.choose}
          choices={templates.map(({ id, name }) => ({ value: id, label: name }))}
          onChoose={(id) => change({ templateId: id, version: undefined })}
        />
        {versions.length > 1 && (
          <FilterSelect
            label={words.version}
            value={search.version ?? versions[0]?.version}
            all={t.ui.choose}
            choices={versions.map(({ version, latest }) => ({
              value: version,
              label: (latest ? words.versionNow : words.versionOld)(Number(version)),
            }))}
            onChoose={(version) => change({ version })}
          />
        )}
        <FilterSelect
          label={words.last}
          value={search.last ?? USUAL}
          all={t.ui.choose}
          choices={LAST.map((n) => ({ value: n, label: words.lastOf(format.number(n)) }))}
          onChoose={(last) => change({ last })}
        />
      </Filters>
      <SuggestionSection templateId={templateId} last={search.last ?? USUAL} />
      <Loaded query={report}>
        {({ rows }) => <OneVersion rows={versionOf(rows, search.version)} />}
      </Loaded>
    </>
  );
}

function OneVersion({ rows }: { readonly rows: readonly UsageRow[] }) {
  const t = useText();
  const format = useFormat();
  const may = useMay();
  const [first] = rows;
  const words = t.costs.usage;
  if (!first) return <EmptyState title={words.empty} hint={words.emptyHint} />;
  const more = rows.filter((row) => differenceOf(row) > 0n).length;
  const less = rows.filter((row) => differenceOf(row) < 0n).length;
  const version = (first.latest ? words.versionNow : words.versionOld)(first.version);
  return (
    <Section
      title={words.table(first.templateName)}
      hint={words.over(format.number(String(first.restorations)))}
      aside={version}
    >
      <div className={css.figures}>
        <Figures>
          <Figure label={words.costOfOne} large>
            <Money value={sumOf(rows.map((row) => row.cost))} />
          </Figure>
        </Figures>
        <p>
          {words.more(more)}, {words.less(less)}.{' '}
          {may('templates.read') && (
            <Link to="/setup/templates/$templateId" params={{ templateId: first.templateId }}>
              {words.edit}
            </Link>
          )}
        </p>
      </div>
      <UsageTable rows={rows} />
    </Section>
  );
}
