import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import type { Shape } from '../../api/client.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { ButtonLink } from '../../ui/button-link.js';
import { Caution } from '../../ui/caution.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { PrintButton } from '../../ui/print-button.js';
import { Section } from '../../ui/section.js';
import { Amount } from '../../ui/values.js';
import { forecastQuery, plannedItemQuery } from './api/planned-items.js';
import { planningSettingsQuery } from './api/planning-settings.js';
import { LeadSection } from './lead-section.js';
import { LineMarks } from './line-marks.js';
import { whyOf } from './line-words.js';
import { MethodSection } from './method-section.js';
import { nameOf } from './names.js';
import { NextMark } from './next-mark.js';
import { OneOffSection } from './one-off-section.js';
import { OwnSection } from './own-section.js';
import css from './parts.module.css';
import { ProposalDetails } from './proposal-details.js';
import { StandInSection } from './stand-in-section.js';
import { UseFan } from './use-fan.js';
import { UseHistory } from './use-history.js';
import { UseStrip } from './use-strip.js';

const route = getRouteApi('/in/ordering/items/$consumableId');

type Answer = Shape<'PlannedItemAnswerDto'>;

/** One consumable: its use, its forecast, its policy, and what people set by hand. */
export function ItemScreen() {
  const { consumableId } = route.useParams();
  const query = useQuery(plannedItemQuery(consumableId));
  return (
    <>
      <Loaded query={query}>{(answer) => <Item answer={answer} />}</Loaded>
      <Caution />
    </>
  );
}

function Item({ answer }: { readonly answer: Answer }) {
  const t = useText();
  const { item, policy } = answer;
  return (
    <>
      <PageHead title={nameOf(item.consumable)} lead={t.orderingItem.lead}>
        <PrintButton />
        <ButtonLink
          to="/setup/consumables/$consumableId"
          params={{ consumableId: item.consumable.id }}
          variant="default"
        >
          {t.ordering.now.buying}
        </ButtonLink>
      </PageHead>
      <Standing answer={answer} />
      <Forecast position={item.position} consumableId={item.consumable.id} />
      <Section title={t.orderingItem.policy}>
        <ProposalDetails line={policy} folded />
      </Section>
      {policy.lead !== null && (
        <LeadSection lead={policy.lead} supplierName={policy.supplier?.name ?? null} />
      )}
      <OwnSection consumable={item.consumable} />
      <StandInSection consumable={item.consumable} />
      <OneOffSection consumableId={item.consumable.id} />
    </>
  );
}

function Standing({ answer }: { readonly answer: Answer }) {
  const t = useText();
  const w = t.orderingItem;
  const format = useFormat();
  const { item, policy } = answer;
  const { unit } = item.consumable;
  const why = whyOf(policy, format, t);
  const days = item.runsOutInDays;
  return (
    <div className={css.head}>
      <Figures>
        <Figure label={t.orderingItems.next} large>
          <NextMark item={item} />
        </Figure>
        <Figure label={w.position} large>
          <Amount value={item.position} unit={unit} rough />
        </Figure>
        {item.reorderPoint !== null && (
          <Figure label={w.point} large>
            <Amount value={item.reorderPoint} unit={unit} rough />
          </Figure>
        )}
        {item.orderUpTo !== null && (
          <Figure label={w.upTo}>
            <Amount value={item.orderUpTo} unit={unit} rough />
          </Figure>
        )}
        <Figure label={w.week}>
          <Amount value={Number(item.useInWeek).toPrecision(2)} unit={unit} rough />
        </Figure>
        <Figure label={w.left}>
          {days > 366 ? t.orderingItems.long : t.orderingItems.days(days)}
        </Figure>
        {item.onOrder !== '0' && (
          <Figure label={w.onOrder}>
            <Amount value={item.onOrder} unit={unit} rough />
          </Figure>
        )}
      </Figures>
      {why !== undefined && <p className={css.words}>{why}</p>}
      <LineMarks line={policy} />
      <UseStrip line={policy} />
    </div>
  );
}

interface ForecastProps {
  readonly consumableId: string;
  readonly position: string;
}

function Forecast({ consumableId, position }: ForecastProps) {
  const search = route.useSearch();
  const forecast = useQuery(forecastQuery(consumableId));
  const settings = useQuery(planningSettingsQuery);
  return (
    <Loaded query={forecast}>
      {(found) => (
        <>
          <UseHistory
            forecast={found}
            leaveOutRetakes={settings.data?.leaveOutRetakes ?? false}
            asTable={search.history === 'table'}
          />
          <UseFan forecast={found} position={position} asTable={search.fan === 'table'} />
          <MethodSection forecast={found} />
        </>
      )}
    </Loaded>
  );
}
