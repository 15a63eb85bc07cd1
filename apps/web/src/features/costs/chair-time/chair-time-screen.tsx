import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { micro } from '../../../ui/drawn.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Figure, Figures } from '../../../ui/figure.js';
import { Filters } from '../../../ui/filters.js';
import { Loaded } from '../../../ui/loaded.js';
import { Section } from '../../../ui/section.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { Money } from '../../../ui/values.js';
import { type ChairTimeReport, chairTimeQuery } from '../api/report-chair-time.js';
import { useRowName } from '../group-columns.js';
import { GroupToggles } from '../group-toggles.js';
import { type Group, groupsOf, toggled } from '../groups.js';
import headline from '../headline.module.css';
import { PeriodFilter } from '../period-filter.js';
import { RankedBars } from '../ranked-bars.js';
import { ReportFrame } from '../report-frame.js';
import { rankedBy } from '../sums.js';
import { Capacity } from './capacity.js';
import { ChairTimeTable } from './chair-time-table.js';
import { useDuration } from './duration.js';

const route = getRouteApi('/in/costs/chair-time');

const DRAWN = 12;

/** What the time at the chair costs, and what of it nobody used. */
export function ChairTimeScreen() {
  const t = useText();
  const { from, to, by } = route.useSearch();
  const navigate = route.useNavigate();
  const groups = groupsOf(by);
  const report = useQuery(chairTimeQuery({ from, to }, groups.join(',')));
  const words = t.costReports.chairTime;
  const toggle = (group: Group) =>
    void navigate({
      search: (old) => ({ ...old, show: undefined, by: toggled(groupsOf(old.by), group) }),
      replace: true,
    });
  return (
    <ReportFrame
      screen="chairTime"
      report="chair-time"
      asked={{ from, to, groupBy: groups.join(',') }}
      from={from}
      to={to}
    >
      <Filters>
        <PeriodFilter
          from={from}
          to={to}
          all={t.costReports.year}
          onChange={(days) =>
            void navigate({
              search: (old) => ({ ...old, show: undefined, ...days }),
              replace: true,
            })
          }
        />
      </Filters>
      <Loaded query={report}>
        {(data) => (
          <>
            <InUse report={data} />
            {data.capacity.minutes > 0 && (
              <Capacity title={words.capacity} capacity={data.capacity} />
            )}
            {data.assistantCapacity !== null && (
              <Capacity title={words.assistantCapacity} capacity={data.assistantCapacity} />
            )}
            {data.totals.restorations === 0 ? (
              <EmptyState title={t.costs.empty} hint={t.costs.emptyHint} />
            ) : (
              <>
                <GroupToggles groups={groups} onToggle={toggle} />
                <ByGroup report={data} stale={report.isPlaceholderData} />
              </>
            )}
          </>
        )}
      </Loaded>
    </ReportFrame>
  );
}

function InUse({ report }: { readonly report: ChairTimeReport }) {
  const t = useText();
  const format = useFormat();
  const duration = useDuration();
  const words = t.costReports.chairTime;
  const { totals, capacity } = report;
  const share = capacity.usedShare;
  return (
    <section className={headline.headline} aria-label={words.inUse}>
      <div>
        <p className={headline.label}>{share === null ? words.chairTime : words.inUse}</p>
        <p className={headline.middle}>
          {share === null ? duration(totals.minutes) : format.percent(share)}
        </p>
        <p className={headline.spread}>
          {share === null
            ? words.noCapacity
            : words.usedOf(duration(capacity.usedMinutes), duration(capacity.minutes))}
        </p>
        <p className={headline.quiet}>
          {t.costReports.period(format.day(report.from), format.day(report.to))}{' '}
          {share === null && (
            <Link to="/setup/rates" className="tb-screen-only">
              {words.toRates}
            </Link>
          )}
        </p>
      </div>
      <div className={headline.rest}>
        <Figures>
          <Figure label={t.costs.figures.restorations}>
            {format.number(String(totals.restorations))}
          </Figure>
          <Figure label={words.chairTime}>{duration(totals.minutes)}</Figure>
          <Figure label={words.cost}>
            <Money value={totals.cost} />
          </Figure>
          {totals.assistantMinutes > 0 && (
            <>
              <Figure label={words.assistants}>{duration(totals.assistantMinutes)}</Figure>
              <Figure label={words.assistantCost}>
                <Money value={totals.assistantCost} />
              </Figure>
            </>
          )}
        </Figures>
        {share !== null && totals.minutesWithoutRate > 0 && (
          <StatusMark tone="caution">
            {words.noRate(duration(totals.minutesWithoutRate))}
          </StatusMark>
        )}
      </div>
    </section>
  );
}

interface ByGroupProps {
  readonly report: ChairTimeReport;
  readonly stale: boolean;
}

function ByGroup({ report, stale }: ByGroupProps) {
  const t = useText();
  const groups = groupsOf(report.groupBy.join(','));
  const nameOf = useRowName(groups);
  const by = groups.map((group) => t.costs.groups[group]).join(', ');
  const title = t.costReports.chairTime.by(by);
  return (
    <>
      {micro(report.totals.cost) > 0n && (
        <Section title={title}>
          <RankedBars label={title} rows={rankedBy(report.rows, nameOf).slice(0, DRAWN)} />
        </Section>
      )}
      <ChairTimeTable
        rows={report.rows}
        groups={groups}
        period={{ from: report.from, to: report.to }}
        stale={stale}
      />
    </>
  );
}
