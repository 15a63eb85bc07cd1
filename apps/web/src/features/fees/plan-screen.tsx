import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { PrintButton } from '../../ui/print-button.js';
import { Section } from '../../ui/section.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Money } from '../../ui/values.js';
import { type Plan, planQuery } from './api/plans.js';
import css from './fees.module.css';
import { PlanExample } from './plan-example.js';
import { PlanForm } from './plan-form.js';
import { TermForm } from './term-form.js';
import { TermSections } from './term-sections.js';

const route = getRouteApi('/in/setup/plans/$planId');

export function PlanScreen() {
  const w = useText().plans;
  const { planId } = route.useParams();
  const plan = useQuery(planQuery(planId));
  return (
    <>
      <Link className={`${css.back ?? ''} tb-screen-only`} to="/setup/plans" search={{}}>
        {w.back}
      </Link>
      <Loaded query={plan}>{(data) => <Sheet plan={data} />}</Loaded>
      <p className={css.caution}>{w.caution}</p>
    </>
  );
}

function Sheet({ plan }: { readonly plan: Plan }) {
  const t = useText();
  const may = useMay();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const open = (part: Partial<typeof search>) =>
    void navigate({ search: (old) => ({ ...old, ...part }), resetScroll: false });
  const close = () => open({ edit: undefined, new: undefined });
  const write = may('pricing.write');
  return (
    <>
      <PageHead title={plan.name}>
        {write && (
          <>
            <Button onClick={() => open({ new: 'fee' })}>{t.plans.addTerm}</Button>
            <Button variant="default" onClick={() => open({ edit: '1' })}>
              {t.setup.change}
            </Button>
          </>
        )}
        <PrintButton />
      </PageHead>
      <Facts plan={plan} />
      <Ceiling plan={plan} />
      <TermSections plan={plan} />
      <PlanExample plan={plan} />
      <Dialog
        title={t.plans.termTitle}
        size="xl"
        opened={write && search.new !== undefined}
        onClose={close}
      >
        <TermForm plan={plan} about={search.new ?? 'fee'} onClose={close} />
      </Dialog>
      <Dialog
        title={t.setup.changeOf(plan.name)}
        size="xl"
        opened={write && search.edit !== undefined}
        onClose={close}
      >
        <PlanForm plan={plan} onClose={close} onSaved={close} />
      </Dialog>
    </>
  );
}

function Facts({ plan }: { readonly plan: Plan }) {
  const t = useText();
  const w = t.plans;
  return (
    <div className={css.facts}>
      <Figures>
        <Figure label={w.columns.network}>{plan.inNetwork ? w.network.in : w.network.out}</Figure>
        <Figure label={w.columns.deductible}>
          <Money value={plan.deductible} />
        </Figure>
        <Figure label={w.columns.maximum}>
          <Money value={plan.yearlyMaximum} />
        </Figure>
        {plan.inNetwork && (
          <Figure label={w.downgradeFact}>
            {plan.downgradeBilled ? w.downgrades.yes : w.downgrades.no}
          </Figure>
        )}
      </Figures>
      {!plan.active && <StatusMark tone="quiet">{t.setup.state.retired}</StatusMark>}
    </div>
  );
}

function Ceiling({ plan }: { readonly plan: Plan }) {
  const w = useText().plans;
  const { day } = useFormat();
  const { ceilingSource, ceilingCheckedOn } = plan;
  return (
    <Section title={w.groups.ceiling}>
      <p className={css.note}>
        <strong>{plan.inNetwork ? w.ceilingMeans[plan.feeCeiling] : w.ceilingOutside}</strong>
      </p>
      <p className={css.note}>{w.stated(ceilingSource, day(ceilingCheckedOn))}</p>
    </Section>
  );
}
