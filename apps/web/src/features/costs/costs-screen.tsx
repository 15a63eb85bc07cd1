import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Loaded } from '../../ui/loaded.js';
import { Section } from '../../ui/section.js';
import { costReportQuery } from './api/report-costs.js';
import { type Choice, choiceOf } from './choice.js';
import { ChoiceFilters } from './choice-filters.js';
import css from './costs-screen.module.css';
import { useRowName } from './group-columns.js';
import { GroupTable } from './group-table.js';
import { GroupToggles } from './group-toggles.js';
import { type CostReport, type Group, groupsOf, toggled } from './groups.js';
import { Headline } from './headline.js';
import { MonthSection } from './month-chart.js';
import { RankedBars } from './ranked-bars.js';
import { ReportFrame } from './report-frame.js';
import { sortRows } from './sort-rows.js';
import { SplitBar } from './split-bar.js';
import { SpreadChart } from './spread-chart.js';
import { rankedBy } from './sums.js';

const route = getRouteApi('/in/costs');

/** So many rows are drawn; the table has all of them. */
const DRAWN = 16;

/** What restorations cost, with how far the costs lie apart. */
export function CostsScreen() {
  const t = useText();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const choice = choiceOf(search);
  const groups = groupsOf(search.by);
  const report = useQuery(costReportQuery(choice, groups.join(',')));
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, show: undefined, ...part }), replace: true });
  // From the address of the moment: two taps in a row may come before the screen is drawn again.
  const toggle = (group: Group) =>
    void navigate({
      search: ({ show: _show, sort: _sort, by, ...old }) => ({
        ...old,
        by: toggled(groupsOf(by), group),
      }),
      replace: true,
    });
  return (
    <ReportFrame
      screen="report"
      report="restoration-costs"
      asked={{ ...choice, groupBy: groups.join(',') }}
      from={choice.from}
      to={choice.to}
    >
      <ChoiceFilters choice={choice} onChange={change} />
      <Loaded query={report}>
        {(data) =>
          data.totals.restorations === 0 ? (
            <EmptyState title={t.costs.empty} hint={t.costs.emptyHint} />
          ) : (
            <>
              <Headline report={data} />
              <GroupToggles groups={groups} onToggle={toggle} />
              <Report report={data} stale={report.isPlaceholderData} />
              <Months choice={choice} hidden={groups.length === 1 && groups[0] === 'month'} />
              <Parts report={data} />
            </>
          )
        }
      </Loaded>
    </ReportFrame>
  );
}

interface ReportProps {
  readonly report: CostReport;
  readonly stale: boolean;
}

function Report({ report, stale }: ReportProps) {
  const t = useText();
  const format = useFormat();
  const search = route.useSearch();
  const groups = groupsOf(report.groupBy.join(','));
  const sort = search.sort ?? (groups[0] === 'month' ? 'name' : 'total');
  const rows = sortRows(report.rows, sort);
  const nameOf = useRowName(groups);
  const largest = new Set(sortRows(report.rows, 'total').slice(0, DRAWN));
  const drawn = rows.length <= 2 * DRAWN ? rows : rows.filter((row) => largest.has(row));
  const by = groups.map((group) => t.costs.groups[group]).join(', ');
  const some = t.costs.spread.some(drawn.length, format.number(String(rows.length)));
  return (
    <>
      <Section
        title={t.costs.spread.title(by)}
        {...(drawn.length < rows.length ? { hint: some } : {})}
      >
        <SpreadChart rows={drawn} nameOf={nameOf} />
      </Section>
      <GroupTable rows={rows} groups={groups} sort={sort} stale={stale} />
    </>
  );
}

function Months({ choice, hidden }: { readonly choice: Choice; readonly hidden: boolean }) {
  const { months } = route.useSearch();
  const report = useQuery({ ...costReportQuery(choice, 'month'), enabled: !hidden });
  const rows = report.data?.rows ?? [];
  if (hidden || rows.length < 2) return null;
  return <MonthSection rows={rows} asTable={months === 'table'} />;
}

function Parts({ report: { totals } }: { readonly report: CostReport }) {
  const t = useText();
  const { categories, split } = t.costs;
  return (
    <div className={css.parts}>
      <Section title={categories.title} hint={categories.hint}>
        <RankedBars
          label={categories.title}
          rows={rankedBy(totals.categories, (row) => row.category)}
        />
      </Section>
      <Section title={split.title} hint={split.hint}>
        <SplitBar own={totals.ownCost} shared={totals.sharedCost} />
      </Section>
    </div>
  );
}
