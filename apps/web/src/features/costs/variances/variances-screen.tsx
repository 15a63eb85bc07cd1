import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { drawnShare, micro } from '../../../ui/drawn.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Figure, Figures } from '../../../ui/figure.js';
import { Loaded } from '../../../ui/loaded.js';
import { Section } from '../../../ui/section.js';
import { Money } from '../../../ui/values.js';
import { type VarianceReport, varianceQuery } from '../api/report-variances.js';
import { choiceOf } from '../choice.js';
import { ChoiceFilters } from '../choice-filters.js';
import { GroupToggles } from '../group-toggles.js';
import { type Group, groupsOf, toggled } from '../groups.js';
import headline from '../headline.module.css';
import { ReportFrame } from '../report-frame.js';
import { useSigned } from '../signed-money.js';
import { type Step, WayChart } from '../way-chart.js';
import { LaterInvoices } from './later-invoices.js';
import { VarianceTable } from './variance-table.js';

const route = getRouteApi('/in/costs/variances');

/** What restorations cost beside what their templates plan at the prices of today, and why. */
export function VariancesScreen() {
  const t = useText();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const choice = choiceOf(search);
  const groups = groupsOf(search.by);
  const report = useQuery(varianceQuery(choice, groups.join(',')));
  const change = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, show: undefined, ...part }), replace: true });
  const toggle = (group: Group) =>
    void navigate({
      search: (old) => ({ ...old, show: undefined, by: toggled(groupsOf(old.by), group) }),
      replace: true,
    });
  return (
    <ReportFrame
      screen="variances"
      report="variances"
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
              <Outcome totals={data.totals} />
              <Way totals={data.totals} />
              <GroupToggles groups={groups} onToggle={toggle} />
              <VarianceTable
                rows={data.rows}
                groups={groupsOf(data.groupBy.join(','))}
                stale={report.isPlaceholderData}
              />
            </>
          )
        }
      </Loaded>
      <LaterInvoices period={{ from: choice.from, to: choice.to }} />
    </ReportFrame>
  );
}

interface Props {
  readonly totals: VarianceReport['totals'];
}

function Outcome({ totals }: Props) {
  const t = useText();
  const format = useFormat();
  const signed = useSigned();
  const words = t.costReports.variances;
  const share = (value: string | null) => (value === null ? t.ui.none : format.percent(value));
  const difference = micro(totals.difference);
  const size = difference < 0n ? -difference : difference;
  const part = format.percent(String(drawnShare(size, micro(totals.standardCost))));
  const than = difference > 0n ? words.dearer : difference < 0n ? words.cheaper : words.same;
  return (
    <section className={headline.headline} aria-label={words.difference}>
      <div>
        <p className={headline.label}>{words.difference}</p>
        <p className={headline.middle}>{signed(totals.difference)}</p>
        <p className={headline.spread}>{than(part, format.money(totals.standardCost))}</p>
      </div>
      <div className={headline.rest}>
        <Figures>
          <Figure label={t.costs.figures.restorations}>
            {format.number(String(totals.restorations))}
          </Figure>
          <Figure label={words.actual}>
            <Money value={totals.actualCost} />
          </Figure>
          <Figure label={words.waste}>
            <Money value={totals.wasteCost} /> ({share(totals.wasteShare)})
          </Figure>
          <Figure label={words.retakes}>
            <Money value={totals.retakeCost} /> ({share(totals.retakeShare)})
          </Figure>
        </Figures>
        <p className={headline.quiet}>{words.insideActual}</p>
      </div>
    </section>
  );
}

function Way({ totals }: Props) {
  const t = useText();
  const format = useFormat();
  const signed = useSigned();
  const words = t.costReports.variances;
  const sense = (value: string) =>
    micro(value) > 0n ? ('bad' as const) : micro(value) < 0n ? ('good' as const) : undefined;
  const step = (name: string, value: string): Step => ({
    ...{ name, value, kind: 'step', sense: sense(value) },
  });
  const steps: Step[] = [
    { name: words.standard, kind: 'sum', value: totals.standardCost },
    step(words.price, totals.priceVariance),
    step(words.usage, totals.usageVariance),
    { name: words.actual, kind: 'sum', value: totals.actualCost },
  ];
  const picture = words.picture(
    format.money(totals.standardCost),
    signed(totals.priceVariance),
    signed(totals.usageVariance),
    format.money(totals.actualCost),
  );
  return (
    <Section title={words.way} hint={words.wayHint}>
      <WayChart label={picture} steps={steps} />
    </Section>
  );
}
