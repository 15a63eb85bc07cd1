import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import chart from '../../ui/chart/chart.module.css';
import { Section } from '../../ui/section.js';
import type { SupplierLead } from './api/list-proposals.js';
import { leadWords } from './line-words.js';
import css from './parts.module.css';

interface Props {
  readonly lead: SupplierLead;
  readonly supplierName: string | null;
}

/** How long goods of a supplier take, as chances of the working days, and how that is known. */
export function LeadSection({ lead, supplierName }: Props) {
  const w = useText().orderingItem.delivery;
  return (
    <Section title={w.title} {...(supplierName === null ? {} : { aside: supplierName })}>
      <LeadBars lead={lead} />
    </Section>
  );
}

/** Rarer days are left to the tail. */
const SHOWN = 0.01;

/** In a sentence, and a bar for each day. */
export function LeadBars({ lead }: { readonly lead: SupplierLead }) {
  const t = useText();
  const w = t.orderingItem.delivery;
  const format = useFormat();
  const shown = lead.workingDays.filter(({ chance }) => Number(chance) >= SHOWN);
  const most = Math.max(...shown.map(({ chance }) => Number(chance)));
  return (
    <>
      <p className={css.words}>
        {w.mean(format.number(Number(lead.mean).toFixed(1)), lead.p90)} {leadWords(lead, format, t)}
      </p>
      <p className={css.caption}>{w.picture}</p>
      <ul className={css.bars} aria-label={w.picture}>
        {shown.map(({ days, chance }) => (
          <li key={days}>
            <span>{format.number(String(days))}</span>
            <svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
              <path
                className={chart.bar}
                d={`M0 0H${((Number(chance) / most) * 100).toFixed(1)}V10H0Z`}
              />
            </svg>
            <span>{format.percent(chance)}</span>
          </li>
        ))}
      </ul>
    </>
  );
}
