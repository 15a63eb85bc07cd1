import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { micro } from '../../../ui/drawn.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Figure, Figures } from '../../../ui/figure.js';
import { Filters } from '../../../ui/filters.js';
import { Loaded } from '../../../ui/loaded.js';
import { type PriceReport, pricesQuery } from '../api/report-prices.js';
import headline from '../headline.module.css';
import { PeriodFilter } from '../period-filter.js';
import { ReportFrame } from '../report-frame.js';
import { useSigned } from '../signed-money.js';
import { Changes, Consumables } from './price-tables.js';

const route = getRouteApi('/in/costs/prices');

/** Which prices rose, and what that did to the cost of what was used. */
export function PricesScreen() {
  const t = useText();
  const { from, to } = route.useSearch();
  const navigate = route.useNavigate();
  const report = useQuery(pricesQuery({ from, to }));
  const words = t.costReports.prices;
  return (
    <ReportFrame screen="prices" report="price-changes" asked={{ from, to }} from={from} to={to}>
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
          data.consumables.length === 0 ? (
            <EmptyState title={words.empty} hint={words.emptyHint} />
          ) : (
            <>
              <Effect report={data} />
              <Consumables report={data} stale={report.isPlaceholderData} />
              <Changes report={data} stale={report.isPlaceholderData} />
            </>
          )
        }
      </Loaded>
    </ReportFrame>
  );
}

function Effect({ report }: { readonly report: PriceReport }) {
  const t = useText();
  const format = useFormat();
  const signed = useSigned();
  const words = t.costReports.prices;
  const rose = report.consumables.filter(({ change }) => micro(change) > 0n).length;
  const fell = report.consumables.filter(({ change }) => micro(change) < 0n).length;
  return (
    <section className={headline.headline} aria-label={words.together}>
      <div>
        <p className={headline.label}>{words.together}</p>
        <p className={headline.middle}>{signed(report.effect)}</p>
        <p className={headline.spread}>
          {t.costReports.period(format.day(report.from), format.day(report.to))}
        </p>
        <p className={headline.quiet}>{words.togetherHint}</p>
      </div>
      <div className={headline.rest}>
        <Figures>
          <Figure label={words.rose}>{format.number(String(rose))}</Figure>
          <Figure label={words.fell}>{format.number(String(fell))}</Figure>
        </Figures>
      </div>
    </section>
  );
}
