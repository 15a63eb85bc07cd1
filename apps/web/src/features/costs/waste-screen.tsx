import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Filters } from '../../ui/filters.js';
import { Loaded } from '../../ui/loaded.js';
import { Section } from '../../ui/section.js';
import { Money } from '../../ui/values.js';
import { wasteQuery } from './api/report-waste.js';
import headline from './headline.module.css';
import { PeriodFilter } from './period-filter.js';
import { RankedBars } from './ranked-bars.js';
import { ReportFrame } from './report-frame.js';
import { rankedBy, type WasteReport } from './sums.js';
import css from './waste-screen.module.css';
import { ThrownAway, WasteMonths } from './waste-tables.js';

const route = getRouteApi('/in/costs/waste');

/** What was paid for and helped nobody. */
export function WasteScreen() {
  const t = useText();
  const { from, to } = route.useSearch();
  const navigate = route.useNavigate();
  const report = useQuery(wasteQuery({ from, to }));
  const change = (part: { from?: string | undefined; to?: string | undefined }) =>
    void navigate({ search: (old) => ({ ...old, ...part }), replace: true });
  return (
    <ReportFrame screen="waste" report="waste" asked={{ from, to }} from={from} to={to}>
      <Filters>
        <PeriodFilter from={from} to={to} onChange={change} />
      </Filters>
      <Loaded query={report}>
        {(data) =>
          isNothing(data) ? (
            <EmptyState title={t.costs.waste.empty} hint={t.costs.waste.emptyHint} />
          ) : (
            <Waste report={data} />
          )
        }
      </Loaded>
    </ReportFrame>
  );
}

function isNothing(report: WasteReport): boolean {
  const { writeOffs, chairside, retakes } = report;
  return writeOffs.length === 0 && chairside.length === 0 && retakes.extraAttempts === 0;
}

function Waste({ report }: { readonly report: WasteReport }) {
  const t = useText();
  const words = t.costs.waste;
  return (
    <>
      <WrongShade report={report} />
      <div className={css.parts}>
        <Section title={words.byReason} aside={<Money value={report.writeOffCost} />}>
          <RankedBars
            label={words.byReason}
            rows={rankedBy(report.writeOffs, ({ reason }) => words.reasons[reason] ?? reason)}
          />
        </Section>
        <Section
          title={words.byCategory}
          hint={words.byCategoryHint}
          aside={<Money value={report.chairsideCost} />}
        >
          <RankedBars
            label={words.byCategory}
            rows={rankedBy(report.chairside, (row) => row.category)}
          />
        </Section>
      </div>
      <ThrownAway report={report} />
      <WasteMonths report={report} />
    </>
  );
}

function WrongShade({ report }: { readonly report: WasteReport }) {
  const t = useText();
  const format = useFormat();
  const words = t.costs.waste;
  const { wrongShade, retakes } = report;
  const count = (n: number) => format.number(String(n));
  return (
    <section className={headline.headline} aria-label={words.wrongShade}>
      <div>
        <p className={headline.label}>{words.wrongShade}</p>
        <p className={headline.middle}>{format.money(wrongShade.total)}</p>
      </div>
      <dl className={css.wrong}>
        <div>
          <dt>{words.retakes(count(retakes.restorations), count(retakes.extraAttempts))}</dt>
          <dd>
            <Money value={wrongShade.retakeCost} />
          </dd>
        </div>
        <div>
          <dt>{words.opened}</dt>
          <dd>
            <Money value={wrongShade.writeOffCost} />
          </dd>
        </div>
      </dl>
      <Figures>
        <Figure label={words.thrown}>
          <Money value={report.writeOffCost} />
        </Figure>
        <Figure label={words.chairside}>
          <Money value={report.chairsideCost} />
        </Figure>
      </Figures>
    </section>
  );
}
