import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { micro } from '../../../ui/drawn.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Filters } from '../../../ui/filters.js';
import { Loaded } from '../../../ui/loaded.js';
import { Section } from '../../../ui/section.js';
import { type HabitReport, habitsQuery } from '../api/report-habits.js';
import headline from '../headline.module.css';
import { PeriodFilter } from '../period-filter.js';
import { RankedBars } from '../ranked-bars.js';
import { ReportFrame } from '../report-frame.js';
import { rankedBy, sumOf } from '../sums.js';
import { HabitList } from './habit-list.js';
import { kindOf } from './habit-words.js';

const route = getRouteApi('/in/costs/habits');

/** What the practice does that costs most without any use, and what would change it. */
export function HabitsScreen() {
  const t = useText();
  const { from, to } = route.useSearch();
  const navigate = route.useNavigate();
  const report = useQuery(habitsQuery({ from, to }));
  const words = t.costReports.habits;
  return (
    <ReportFrame screen="habits" report="habits" asked={{ from, to }} from={from} to={to}>
      <Filters>
        <PeriodFilter
          from={from}
          to={to}
          all={t.costReports.year}
          onChange={(days) =>
            void navigate({ search: (old) => ({ ...old, ...days }), replace: true })
          }
        />
      </Filters>
      <Loaded query={report}>
        {(data) =>
          data.habits.length === 0 ? (
            <EmptyState title={words.empty} hint={words.emptyHint} />
          ) : (
            <div aria-busy={report.isPlaceholderData}>
              <Together report={data} />
              <HabitList report={data} />
              <Kinds report={data} />
            </div>
          )
        }
      </Loaded>
    </ReportFrame>
  );
}

interface Props {
  readonly report: HabitReport;
}

function Together({ report }: Props) {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.habits;
  const yearly = sumOf(report.habits.map((habit) => habit.savedPerYear));
  const period = t.costReports.period(format.day(report.from), format.day(report.to));
  return (
    <section className={headline.headline} aria-label={words.together}>
      <div>
        <p className={headline.label}>{words.together}</p>
        <p className={headline.middle}>{words.aYear(format.money(yearly))}</p>
        <p className={headline.spread}>
          {words.inPeriod(
            format.money(sumOf(report.habits.map((habit) => habit.cost))),
            format.money(report.materialCost),
          )}
        </p>
        <p className={headline.quiet}>
          {period} {words.yearHint}
        </p>
      </div>
    </section>
  );
}

function Kinds({ report }: Props) {
  const t = useText();
  const words = t.costReports.habits;
  const nameOf = ({ kind }: { readonly kind: string }) => {
    const known = kindOf(kind);
    return known === undefined ? kind : words.kinds[known].name;
  };
  const rows = report.kinds.filter(({ cost }) => micro(cost) > 0n);
  return (
    <Section title={words.byKind} hint={words.byKindHint}>
      <RankedBars label={words.byKind} rows={rankedBy(rows, nameOf)} />
    </Section>
  );
}
