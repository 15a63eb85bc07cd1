import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMay } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { ButtonLink } from '../../../ui/button-link.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Loaded } from '../../../ui/loaded.js';
import { type ContributionReport, contributionQuery } from '../api/report-contributions.js';
import { choiceOf } from '../choice.js';
import { ChoiceFilters } from '../choice-filters.js';
import { useRowName } from '../group-columns.js';
import { GroupToggles } from '../group-toggles.js';
import { type Group, groupsOf, toggled } from '../groups.js';
import { ReportFrame } from '../report-frame.js';
import { largestFirst } from '../sort-rows.js';
import { ContributionHead, ContributionWay } from './contribution-head.js';
import { ContributionSpread } from './contribution-spread.js';
import { ContributionTable } from './contribution-table.js';

const route = getRouteApi('/in/costs/contributions');

const DRAWN = 16;

/** What restorations leave after material, and how far it lies apart. */
export function ContributionsScreen() {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const choice = choiceOf(search);
  const groups = groupsOf(search.by);
  const report = useQuery(contributionQuery(choice, groups.join(',')));
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, show: undefined, ...part }), replace: true });
  const toggle = (group: Group) =>
    void navigate({
      search: (old) => ({ ...old, show: undefined, by: toggled(groupsOf(old.by), group) }),
      replace: true,
    });
  return (
    <ReportFrame
      screen="contributions"
      report="contributions"
      asked={{ ...choice, groupBy: groups.join(',') }}
      from={choice.from}
      to={choice.to}
    >
      <ChoiceFilters choice={choice} onChange={change} />
      <Loaded query={report}>
        {(data) =>
          data.totals.restorations === 0 ? (
            <NoFees without={data.totals.withoutFee} />
          ) : (
            <>
              <ContributionHead totals={data.totals} />
              <ContributionWay totals={data.totals} />
              <GroupToggles groups={groups} onToggle={toggle} />
              <ByGroup report={data} stale={report.isPlaceholderData} />
            </>
          )
        }
      </Loaded>
    </ReportFrame>
  );
}

/** Nothing in this choice, or nothing whose fee anybody knows. */
function NoFees({ without }: { readonly without: number }) {
  const t = useText();
  const format = useFormat();
  const may = useMay();
  const words = t.costReports.contributions;
  if (without === 0) return <EmptyState title={t.costs.empty} hint={t.costs.emptyHint} />;
  return (
    <EmptyState title={words.noFees(format.number(String(without)))} hint={words.noFeesHint}>
      {may('pricing.read') && (
        <ButtonLink to="/setup/fees" variant="default">
          {words.toFees}
        </ButtonLink>
      )}
    </EmptyState>
  );
}

interface ByGroupProps {
  readonly report: ContributionReport;
  readonly stale: boolean;
}

function ByGroup({ report, stale }: ByGroupProps) {
  const t = useText();
  const groups = groupsOf(report.groupBy.join(','));
  const nameOf = useRowName(groups);
  const by = groups.map((group) => t.costs.groups[group]).join(', ');
  const drawn = largestFirst(report.rows, (row) => BigInt(row.restorations)).slice(0, DRAWN);
  return (
    <>
      <ContributionSpread
        title={t.costReports.contributions.spread(by)}
        rows={drawn}
        nameOf={nameOf}
      />
      <ContributionTable rows={report.rows} groups={groups} stale={stale} />
    </>
  );
}
