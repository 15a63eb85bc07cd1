import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { formatMoney } from '#lib/measure';
import { useMay, useSession } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { Dialog } from '../../ui/dialog.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { Section } from '../../ui/section.js';
import { Money } from '../../ui/values.js';
import { type Rate, ratesQuery } from './api/rates.js';
import css from './fees.module.css';
import { hoursOf, rateOf } from './rate.js';
import { RateForm } from './rate-form.js';
import { RateTable } from './rate-table.js';
import { usePrecise } from './use-precise.js';

const route = getRouteApi('/in/setup/rates');

export function RatesScreen() {
  const w = useText().rates;
  const may = useMay();
  const { new: adding } = route.useSearch();
  const navigate = route.useNavigate();
  const rates = useQuery(ratesQuery);
  const write = may('practice.manage');
  const close = () => void navigate({ search: {} });
  return (
    <>
      <PageHead title={w.title} lead={w.lead}>
        {write && <Button onClick={() => void navigate({ search: { new: '1' } })}>{w.add}</Button>}
      </PageHead>
      <Loaded query={rates}>
        {({ items }) =>
          items.length === 0 ? (
            <EmptyState title={w.empty} hint={w.emptyHint} />
          ) : (
            <Rates items={items} />
          )
        }
      </Loaded>
      <section className={css.idle}>
        <h2>{w.idleTitle}</h2>
        <p>{w.idle}</p>
      </section>
      <Caution />
      <Dialog title={w.addTitle} size="lg" opened={write && adding !== undefined} onClose={close}>
        <RateForm onClose={close} />
      </Dialog>
    </>
  );
}

function Rates({ items }: { readonly items: readonly Rate[] }) {
  const w = useText().rates;
  const { today } = useSession();
  const current = items.find(({ validFrom }) => validFrom <= today);
  return (
    <>
      <div className={css.facts}>
        {current ? <Current rate={current} /> : <p className={css.quiet}>{w.noneToday}</p>}
      </div>
      <Section title={w.history} hint={w.historyHint}>
        <RateTable items={items} current={current?.id} />
      </Section>
    </>
  );
}

function Current({ rate }: { readonly rate: Rate }) {
  const w = useText().rates;
  const format = useFormat();
  const precise = usePrecise();
  const made = rateOf(rate.yearlyCost, BigInt(rate.practicalMinutes));
  if (!made) return null;
  const perMinute = precise.money(rate.ratePerMinute);
  const perHour = precise.money(formatMoney(made.perHour));
  const hours = format.number(hoursOf(rate.practicalMinutes));
  return (
    <>
      <Figures>
        <Figure label={w.perMinute} large>
          {perMinute}
        </Figure>
        <Figure label={w.perHour} large>
          {perHour}
        </Figure>
        <Figure label={w.assistant}>
          {rate.assistantRate === null ? w.assistantIncluded : precise.money(rate.assistantRate)}
        </Figure>
        <Figure label={w.yearly}>
          <Money value={rate.yearlyCost} />
        </Figure>
        <Figure label={w.capacity}>{w.hours(hours, hours === '1')}</Figure>
      </Figures>
      <p className={css.sentence}>
        {w.sentence(format.money(rate.yearlyCost), hours, perMinute, perHour)}
      </p>
    </>
  );
}
