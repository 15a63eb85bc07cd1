import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Money } from '../../ui/values.js';
import type { CostReport } from './groups.js';
import css from './headline.module.css';

/** The one figure that matters, how far the others lie from it, and what it all came to. */
export function Headline({ report }: { readonly report: CostReport }) {
  const t = useText();
  const format = useFormat();
  const { totals, visitsMaterialCost } = report;
  const words = t.costs.figures;
  return (
    <section className={css.headline} aria-label={t.costs.middle}>
      <div>
        <p className={css.label}>{t.costs.middle}</p>
        <p className={css.middle}>{format.money(totals.p50)}</p>
        <p className={css.spread}>
          {t.costs.eightOfTen(format.money(totals.p10), format.money(totals.p90))}
        </p>
        <p className={css.quiet}>
          {t.costs.extremes(format.money(totals.min), format.money(totals.max))}
        </p>
      </div>
      <div className={css.rest}>
        <Figures>
          <Figure label={words.restorations}>{format.number(String(totals.restorations))}</Figure>
          <Figure label={words.visits}>{format.number(String(totals.visits))}</Figure>
          <Figure label={words.total}>
            <Money value={totals.total} />
          </Figure>
          <Figure label={words.mean}>
            <Money value={totals.mean} />
          </Figure>
          <Figure label={words.retakes}>
            <Money value={totals.retakeCost} />
          </Figure>
        </Figures>
        {visitsMaterialCost !== null && (
          <p className={css.quiet}>
            {visitsMaterialCost === totals.total
              ? t.costs.agrees
              : t.costs.differs(format.money(visitsMaterialCost))}
          </p>
        )}
      </div>
    </section>
  );
}
