import { useQuery } from '@tanstack/react-query';
import { formatMoney, type Money as MoneyValue, subtract } from '#lib/measure';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Amount, Money } from '../../ui/values.js';
import { pricesQuery } from './api/list-prices.js';
import type { PreviewLine, Usage } from './api/preview-template.js';
import { costsOf, estimateOf, type Prices, pricesOf } from './estimate.js';
import css from './example.module.css';
import { useUnitPrice } from './use-unit-price.js';
import type { UsageAnswer } from './use-usage.js';

interface Props {
  readonly answer: UsageAnswer;
  readonly usage: Usage;
}

export function ExampleUsage({ answer, usage }: Props) {
  const w = useText().setupExample;
  const may = useMay();
  const book = useQuery({ ...pricesQuery, enabled: may('costs.read') }).data;
  const prices = book ? pricesOf(book) : undefined;
  const stale = answer.state !== 'fresh';
  return (
    <div className={css.usage} aria-busy={stale} data-stale={stale || undefined}>
      <Totals usage={usage} before={answer.before} prices={prices} />
      {usage.lines.length === 0 ? (
        <p className={css.quiet}>{w.nothing}</p>
      ) : (
        <UsageTable lines={usage.lines} prices={prices} />
      )}
      {prices && <p className={css.quiet}>{w.costHint}</p>}
    </div>
  );
}

interface TotalsProps {
  readonly usage: Usage;
  readonly before: Usage | undefined;
  readonly prices: Prices | undefined;
}

function Totals({ usage, before, prices }: TotalsProps) {
  const w = useText().setupExample;
  const now = prices && estimateOf(usage.lines, prices);
  const then = prices && before && estimateOf(before.lines, prices);
  return (
    <>
      <Figures>
        {now && (
          <Figure label={w.cost} large>
            <Money value={formatMoney(now.total)} />
          </Figure>
        )}
        <Figure label={w.minutes} large={now === undefined}>
          {w.minutesOf(usage.minutes)}
        </Figure>
        <Figure label={w.assistants}>{w.minutesOf(usage.assistantMinutes)}</Figure>
        {now && then && (
          <Figure label={w.before}>
            <Money value={formatMoney(then.total)} />
          </Figure>
        )}
        {now && then && now.total !== then.total && (
          <Figure label={w.difference} tone={now.total > then.total ? 'caution' : 'good'}>
            {now.total > then.total ? '+' : ''}
            <Money value={formatMoney(subtract(now.total, then.total))} />
          </Figure>
        )}
      </Figures>
      {now && now.unknown > 0 && <p className={css.quiet}>{w.unknown(now.unknown)}</p>}
    </>
  );
}

interface TableProps {
  readonly lines: readonly PreviewLine[];
  readonly prices: Prices | undefined;
}

function UsageTable({ lines, prices }: TableProps) {
  const w = useText().setupExample;
  const costs = prices && costsOf(lines, prices);
  return (
    <table className={css.table} aria-label={w.uses}>
      <thead>
        <tr>
          <th scope="col">{w.columns.what}</th>
          <th scope="col">{w.columns.out}</th>
          {prices && <th scope="col">{w.columns.cost}</th>}
        </tr>
      </thead>
      <tbody>
        {lines.map((line, i) => (
          <UsageRow key={line.key} line={line} priced={costs !== undefined} cost={costs?.[i]} />
        ))}
      </tbody>
    </table>
  );
}

interface RowProps {
  readonly line: PreviewLine;
  /** Whether costs are shown at all. */
  readonly priced: boolean;
  readonly cost: MoneyValue | undefined;
}

function UsageRow({ line, priced, cost }: RowProps) {
  const t = useText();
  const w = t.setupExample;
  const perUnit = useUnitPrice();
  const about = [
    ...(line.shade === null ? [] : [line.shade]),
    t.setupTemplates.drivers[line.driver].title.toLowerCase(),
    ...(line.tooth === null ? [] : [w.forTooth(line.tooth)]),
    ...(line.attempt > 1 ? [w.retake(line.attempt)] : []),
  ];
  return (
    <tr>
      <th scope="row">
        {line.consumableName}
        <span>{about.join(' · ')}</span>
      </th>
      <td>
        <Amount value={line.dispensed} unit={line.stockUnit} />
        {line.placed !== '0' && line.placed !== line.dispensed && (
          <span>
            {w.columns.stays} <Amount value={line.placed} unit={line.stockUnit} />
          </span>
        )}
      </td>
      {priced && (
        <td>
          {cost === undefined ? (
            <span className={css.quiet}>{w.noPrice}</span>
          ) : (
            perUnit(formatMoney(cost))
          )}
        </td>
      )}
    </tr>
  );
}
