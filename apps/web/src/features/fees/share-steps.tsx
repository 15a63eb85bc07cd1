import { formatMoney, isZero, type Money, money } from '#lib/measure';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import css from './fees.module.css';
import type { Meaning } from './meaning.js';
import { usePrecise } from './use-precise.js';

/** How it came to what the plan pays, and what limits what may be asked. */
export function ShareSteps({ meaning }: { readonly meaning: Meaning }) {
  const t = useText();
  const w = t.plans.steps;
  const amount = useAmount();
  const { share, reason } = meaning;
  return (
    <ul className={css.steps}>
      {share.covered ? (
        <Counted meaning={meaning} />
      ) : (
        <li>{w.notCovered(t.fees.reasons[reason])}</li>
      )}
      {share.exhausted && <li>{w.exhausted}</li>}
      {!share.exhausted && share.planPays < share.uncapped && (
        <li>{w.capped(amount(share.planPays))}</li>
      )}
      <li>{share.limit === null ? w.free : w.limit(amount(share.limit))}</li>
    </ul>
  );
}

function useAmount() {
  const format = useFormat();
  return (value: Money) => format.money(formatMoney(value));
}

function Counted({ meaning: { share, coverage, price } }: { readonly meaning: Meaning }) {
  const w = useText().plans.steps;
  const amount = useAmount();
  const precise = usePrecise();
  const { base, deductibleUsed, uncapped } = share;
  const which = base < money(price) ? w.baseLower : w.baseFee;
  return (
    <li>
      {w.base(amount(base), which) +
        (isZero(deductibleUsed) ? '' : w.deductible(amount(deductibleUsed))) +
        w.share(precise.percent(coverage ?? '0'), amount(uncapped))}
    </li>
  );
}
