import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { type Money as Amount, formatMoney, isZero, money } from '#lib/measure';
import { useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { asDecimal } from '../../ui/decimal-text.js';
import { Figure, Figures } from '../../ui/figure.js';
import { FilterDay, FilterSelect, Filters } from '../../ui/filters.js';
import { Section } from '../../ui/section.js';
import { useTyped } from '../../ui/use-typed.js';
import { Money } from '../../ui/values.js';
import { AmountBox } from './amount-box.js';
import { allFeesQuery, type Fee } from './api/list-fees.js';
import type { Plan } from './api/plans.js';
import css from './fees.module.css';
import { type Meaning, meaningOf } from './meaning.js';
import { ShareSentence } from './share-sentence.js';
import { ShareSteps } from './share-steps.js';
import { REASONS } from './terms.js';
import { useCoin } from './use-coin.js';

const route = getRouteApi('/in/setup/plans/$planId');

interface Props {
  readonly plan: Plan;
}

/** One fee under the plan: on a day, for a reason, with what is left of the patient's year. */
export function PlanExample({ plan }: Props) {
  const w = useText().plans;
  const { on } = route.useSearch();
  const fees = (useQuery(allFeesQuery(on)).data?.items ?? []).filter(
    ({ active, current }) => active && current !== null,
  );
  return (
    <Section title={w.example} hint={w.exampleHint}>
      {fees.length === 0 ? (
        <p className={css.note}>{w.exampleNoFees}</p>
      ) : (
        <>
          <ExampleFields plan={plan} fees={fees} />
          <Result plan={plan} fees={fees} />
        </>
      )}
    </Section>
  );
}

interface PartProps extends Props {
  readonly fees: readonly Fee[];
}

function ExampleFields({ plan, fees }: PartProps) {
  const t = useText();
  const w = t.plans;
  const typed = useTyped();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const left = useLeft(plan);
  const change = (part: Partial<typeof search>) =>
    void navigate({
      search: (old) => ({ ...old, ...part }),
      replace: true,
      resetScroll: false,
    });
  const [usual, ...others] = REASONS;
  const chosen = fees.find(({ id }) => id === search.fee);
  return (
    <div className={css.example}>
      <Filters>
        <FilterSelect
          label={w.exampleFee}
          value={search.fee}
          all={t.ui.choose}
          choices={fees.map(({ id, code, name }) => ({ value: id, label: `${code} · ${name}` }))}
          onChoose={(fee) => change({ fee })}
        />
        {(chosen?.reason ?? null) === null && (
          <FilterSelect
            label={w.exampleReason}
            value={search.reason}
            all={t.fees.reasons[usual]}
            choices={others.map((reason) => ({ value: reason, label: t.fees.reasons[reason] }))}
            onChoose={(reason) => change({ reason })}
          />
        )}
        <AmountBox
          label={w.exampleDeductible}
          value={search.deductible ?? typed(plan.deductible)}
          error={left.deductibleError}
          onType={(deductible) => change({ deductible })}
        />
        {plan.yearlyMaximum !== null && (
          <AmountBox
            label={w.exampleMaximum}
            value={search.maximum ?? typed(plan.yearlyMaximum)}
            error={left.maximumError}
            onType={(maximum) => change({ maximum })}
          />
        )}
        <FilterDay label={w.exampleOn} value={search.on} onChoose={(on) => change({ on })} />
      </Filters>
    </div>
  );
}

/** What is left of the year as the address says it; by default the whole year. */
function useLeft(plan: Plan) {
  const t = useText();
  const search = route.useSearch();
  const read = (typed: string | undefined, whole: string) => {
    const text = typed === undefined ? whole : asDecimal(typed);
    if (text === undefined || text.startsWith('-')) return { error: t.ui.decimal };
    if (money(text) > money(whole)) return { error: t.plans.moreThanWhole };
    return { amount: money(text) };
  };
  const deductible = read(search.deductible, plan.deductible);
  const maximum =
    plan.yearlyMaximum === null ? { amount: null } : read(search.maximum, plan.yearlyMaximum);
  const problem = 'error' in deductible || 'error' in maximum;
  return {
    deductibleError: deductible.error,
    maximumError: 'error' in maximum ? maximum.error : undefined,
    left: problem
      ? undefined
      : { deductible: deductible.amount as Amount, maximum: maximum.amount as Amount | null },
  };
}

function Result({ plan, fees }: PartProps) {
  const w = useText().plans;
  const search = route.useSearch();
  const { today } = useSession();
  const { step } = useCoin();
  const { left } = useLeft(plan);
  const fee = fees.find(({ id }) => id === search.fee);
  if (!fee) return <p className={css.quiet}>{w.examplePick}</p>;
  if (!left) return null;
  // A fee for work of one reason is shown for that reason and no other.
  const reason = fee.reason ?? search.reason ?? 'decay';
  const given = { day: search.on ?? today, reason, left, step };
  const meaning = meaningOf(plan, fee, given);
  return meaning === undefined ? null : <Told meaning={meaning} />;
}

function Told({ meaning }: { readonly meaning: Meaning }) {
  const w = useText().plans;
  const { planPays, patientPays, writeOff } = meaning.share;
  return (
    <div aria-live="polite" className={css.told}>
      <p className={css.said}>
        <ShareSentence meaning={meaning} />
      </p>
      <Figures>
        <Figure label={w.examplePays} large>
          <Money value={formatMoney(planPays)} />
        </Figure>
        <Figure label={w.examplePatient} large>
          <Money value={formatMoney(patientPays)} />
        </Figure>
        <Figure label={w.exampleWriteOff} large tone={isZero(writeOff) ? undefined : 'caution'}>
          <Money value={formatMoney(writeOff)} />
        </Figure>
      </Figures>
      <ShareSteps meaning={meaning} />
    </div>
  );
}
