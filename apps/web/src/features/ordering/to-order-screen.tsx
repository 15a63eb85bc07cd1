import { useQuery } from '@tanstack/react-query';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { ButtonLink } from '../../ui/button-link.js';
import { Caution } from '../../ui/caution.js';
import { micro } from '../../ui/drawn.js';
import { EmptyState } from '../../ui/empty-state.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { PrintButton } from '../../ui/print-button.js';
import { Section } from '../../ui/section.js';
import { Money } from '../../ui/values.js';
import { type ProposalList, proposalsQuery } from './api/list-proposals.js';
import { plannedItemsQuery } from './api/planned-items.js';
import { BasketSection } from './basket-section.js';
import { formatSum } from './price-of.js';
import { StuckRow } from './proposal-row.js';
import css from './to-order.module.css';
import { StripKey } from './use-strip.js';

/** What to order now, one order per supplier. */
export function ToOrderScreen() {
  const query = useQuery(proposalsQuery);
  return (
    <>
      <Loaded query={query}>{(list) => <Due list={list} />}</Loaded>
      <Caution />
    </>
  );
}

function Due({ list }: { readonly list: ProposalList }) {
  const w = useText().ordering.now;
  const format = useFormat();
  const nothing = list.orders.length === 0 && list.stuck.length === 0;
  return (
    <>
      <PageHead title={w.title} lead={w.lead(format.day(list.asOf))}>
        <PrintButton />
      </PageHead>
      {nothing ? <NothingDue /> : <Sums list={list} />}
      {list.orders.map((basket) => (
        <BasketSection key={basket.supplier?.id ?? ''} basket={basket} />
      ))}
      {list.stuck.length > 0 && (
        <Section title={w.stuck} hint={w.stuckHint}>
          <ul className={css.lines}>
            {list.stuck.map((line) => (
              <StuckRow key={line.consumable.id} line={line} />
            ))}
          </ul>
        </Section>
      )}
    </>
  );
}

/** A practice that has entered nothing yet is told where to begin, others what comes next. */
function NothingDue() {
  const w = useText().ordering.now;
  const items = useQuery(plannedItemsQuery).data?.items;
  if (items === undefined) return null;
  return items.length === 0 ? (
    <EmptyState title={w.first} hint={w.firstHint}>
      <ButtonLink to="/setup/consumables">{w.toConsumables}</ButtonLink>
    </EmptyState>
  ) : (
    <EmptyState title={w.empty} hint={w.emptyHint}>
      <ButtonLink to="/ordering/items" variant="default">
        {w.toItems}
      </ButtonLink>
    </EmptyState>
  );
}

function Sums({ list }: { readonly list: ProposalList }) {
  const w = useText().ordering.now;
  const total = list.orders.reduce((sum, order) => sum + micro(order.total), 0n);
  return (
    <div className={css.sums}>
      <Figures>
        <Figure label={w.allOrders} large>
          <Money value={formatSum(total)} />
        </Figure>
        {list.budgetLeft !== null && (
          <Figure label={w.budgetLeft} large>
            <Money value={list.budgetLeft} />
          </Figure>
        )}
      </Figures>
      {list.orders.length > 0 && <StripKey />}
    </div>
  );
}
