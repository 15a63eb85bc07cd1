import { useText } from '../../../text/text-provider.js';
import { Figure, Figures } from '../../../ui/figure.js';
import { Amount, Day, Money } from '../../../ui/values.js';
import type { SummaryRow } from '../api/list-summary.js';
import css from './holdings.module.css';
import { levelOf } from './level.js';

/** One consumable in its figures. */
export function ConsumableFigures({ row }: { readonly row: SummaryRow }) {
  const { facts } = useText().shelves;
  const { unit } = row.consumable;
  const { low, owes } = levelOf(row);
  return (
    <div className={css.figures}>
      <Figures>
        <Figure label={facts.usable} large tone={low === true ? 'caution' : undefined}>
          <Amount value={row.usable} unit={unit} rough />
        </Figure>
        {row.blocked !== '0' && (
          <Figure label={facts.blocked} large tone="danger">
            <Amount value={row.blocked} unit={unit} rough />
          </Figure>
        )}
        {owes && (
          <Figure label={facts.owed} large tone="danger">
            <Amount value={row.openShortfall} unit={unit} rough />
          </Figure>
        )}
        {row.reorderAt !== null && (
          <Figure label={facts.orderAt} large>
            <Amount value={row.reorderAt} unit={unit} />
          </Figure>
        )}
        <Figure label={facts.nextExpiry} large>
          <Day value={row.earliestExpiry} />
        </Figure>
        <Figure label={facts.value} large>
          <Money value={row.value} />
        </Figure>
      </Figures>
    </div>
  );
}
