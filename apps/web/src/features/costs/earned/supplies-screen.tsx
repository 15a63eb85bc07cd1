import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Figure, Figures } from '../../../ui/figure.js';
import { FilterSelect, Filters } from '../../../ui/filters.js';
import { Loaded } from '../../../ui/loaded.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { Money } from '../../../ui/values.js';
import { type SupplyReport, suppliesQuery } from '../api/report-supplies.js';
import headline from '../headline.module.css';
import { PeriodFilter } from '../period-filter.js';
import { ReportFrame } from '../report-frame.js';
import css from './contribution-head.module.css';
import { SHARE_BASES } from './earned-choices.js';
import { SupplyMonths } from './supply-months.js';

const route = getRouteApi('/in/costs/supplies');

/** Which part of what is charged goes into supplies, month by month. */
export function SuppliesScreen() {
  const t = useText();
  const { from, to, of = 'fees' } = route.useSearch();
  const navigate = route.useNavigate();
  const report = useQuery(suppliesQuery({ from, to }, of));
  const words = t.costReports.supplies;
  const change = (part: { from?: string | undefined; to?: string | undefined }) =>
    void navigate({ search: (old) => ({ ...old, ...part }), replace: true });
  return (
    <ReportFrame
      screen="supplies"
      report="supply-share"
      asked={{ from, to, shareOf: of }}
      from={from}
      to={to}
    >
      <Filters>
        <PeriodFilter from={from} to={to} onChange={change} />
        <FilterSelect
          label={words.shareOf}
          value={of === 'fees' ? undefined : of}
          all={words.bases.fees}
          choices={SHARE_BASES.filter((base) => base !== 'fees').map((base) => ({
            value: base,
            label: words.bases[base],
          }))}
          onChoose={(base) =>
            void navigate({ search: (old) => ({ ...old, of: base }), replace: true })
          }
        />
      </Filters>
      <Loaded query={report}>
        {(data) =>
          data.rows.length === 0 ? (
            <EmptyState title={words.empty} hint={words.emptyHint} />
          ) : (
            <>
              <Share report={data} />
              <SupplyMonths report={data} stale={report.isPlaceholderData} />
            </>
          )
        }
      </Loaded>
    </ReportFrame>
  );
}

function Share({ report }: { readonly report: SupplyReport }) {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.supplies;
  const { totals, shareOf } = report;
  const share = (value: string | null) => (value === null ? t.ui.none : format.percent(value));
  const base = shareOf === 'fees' ? totals.fees : totals.income;
  const count = (n: number) => format.number(String(n));
  return (
    <section className={headline.headline} aria-label={words.share[shareOf]}>
      <div>
        <p className={headline.label}>{words.share[shareOf]}</p>
        <p className={headline.middle}>{share(totals.materialShare)}</p>
        <p className={headline.spread}>
          {words.of(format.money(totals.material), format.money(base))}
        </p>
      </div>
      <div className={headline.rest}>
        <Figures>
          <Figure label={words.bought}>
            <Money value={totals.bought} /> ({share(totals.boughtShare)})
          </Figure>
          <Figure label={words.waste}>
            <Money value={totals.waste} /> ({share(totals.wasteShare)})
          </Figure>
        </Figures>
        <div className={css.notes}>
          {totals.fromFeeList > 0 && (
            <StatusMark tone="accent">
              {t.costReports.contributions.fromFeeList(
                count(totals.fromFeeList),
                count(totals.restorations),
                format.money(totals.feeListFees),
              )}
            </StatusMark>
          )}
          {totals.withoutFee > 0 && (
            <StatusMark tone="caution">
              {t.costReports.contributions.withoutFee(
                count(totals.withoutFee),
                format.money(totals.withoutFeeMaterial),
              )}
            </StatusMark>
          )}
        </div>
      </div>
    </section>
  );
}
