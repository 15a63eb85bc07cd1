import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { micro } from '../../../ui/drawn.js';
import { Figure, Figures } from '../../../ui/figure.js';
import { Section } from '../../../ui/section.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { Money } from '../../../ui/values.js';
import type { ContributionReport } from '../api/report-contributions.js';
import headline from '../headline.module.css';
import { type Step, WayChart } from '../way-chart.js';
import css from './contribution-head.module.css';

interface Props {
  readonly totals: ContributionReport['totals'];
}

/** The restoration in the middle, and what of the figures nobody recorded. */
export function ContributionHead({ totals }: Props) {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.contributions;
  const { p10, p50, p90 } = totals;
  const count = (n: number) => format.number(String(n));
  return (
    <section className={headline.headline} aria-label={words.middle}>
      <div>
        <p className={headline.label}>{words.middle}</p>
        <p className={headline.middle}>{p50 === null ? t.ui.none : format.money(p50)}</p>
        {p10 !== null && p90 !== null && (
          <p className={headline.spread}>
            {words.eightOfTen(format.money(p10), format.money(p90))}
          </p>
        )}
      </div>
      <div className={headline.rest}>
        <Figures>
          <Figure label={t.costs.figures.restorations}>{count(totals.restorations)}</Figure>
          <Figure label={words.income}>
            <Money value={totals.income} />
          </Figure>
          <Figure label={words.contribution}>
            <Money value={totals.contribution} />
          </Figure>
          <Figure label={words.perHour}>
            <Money value={totals.contributionPerHour} />
          </Figure>
        </Figures>
        <div className={css.notes}>
          {totals.fromFeeList > 0 && (
            <StatusMark tone="accent">
              {words.fromFeeList(
                count(totals.fromFeeList),
                count(totals.restorations),
                format.money(totals.feeListIncome),
              )}
            </StatusMark>
          )}
          {totals.withoutFee > 0 && (
            <StatusMark tone="caution">
              {words.withoutFee(count(totals.withoutFee), format.money(totals.withoutFeeMaterial))}
            </StatusMark>
          )}
        </div>
      </div>
    </section>
  );
}

/** From the fee over what nobody pays and what the material costs to what is left. */
export function ContributionWay({ totals }: Props) {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.contributions;
  const minus = (value: string) => (micro(value) === 0n ? value : `-${value}`);
  const writeOff: Step[] =
    micro(totals.writeOff) === 0n
      ? []
      : [
          { name: words.writeOff, kind: 'step', value: minus(totals.writeOff), sense: 'bad' },
          { name: words.income, kind: 'sum', value: totals.income },
        ];
  const steps: Step[] = [
    { name: words.fee, kind: 'sum', value: totals.fee },
    ...writeOff,
    { name: words.material, kind: 'step', value: minus(totals.material), sense: 'bad' },
    { name: words.contribution, kind: 'sum', value: totals.contribution },
  ];
  return (
    <Section title={words.way} hint={words.wayHint}>
      <WayChart
        label={words.wayPicture(format.money(totals.fee), format.money(totals.contribution))}
        steps={steps}
      />
    </Section>
  );
}
