import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Figure, Figures } from '../../ui/figure.js';
import { Money } from '../../ui/values.js';
import type { Balance } from './api/balances.js';
import { AsOf } from './balance-table.js';
import css from './fees.module.css';

interface Props {
  readonly items: readonly Balance[];
  readonly on: string;
}

/** What counts for a patient, plan by plan. */
export function ChartBalances({ items, on }: Props) {
  return (
    <ul className={css.plans}>
      {items.map((item) => (
        <li key={item.id}>
          <h3>{item.plan.name}</h3>
          <Left item={item} on={on} />
        </li>
      ))}
    </ul>
  );
}

/** What was told, less what charges used of it since then. */
function Left({ item, on }: { readonly item: Balance; readonly on: string }) {
  const w = useText().balances;
  const { day } = useFormat();
  const { asOf, deductibleLeft, maximumLeft } = item;
  const left = item.now ?? { deductibleLeft, maximumLeft };
  const used = left.deductibleLeft !== deductibleLeft || left.maximumLeft !== maximumLeft;
  return (
    <>
      <Figures>
        <Figure label={w.deductible} large>
          <Money value={left.deductibleLeft} />
        </Figure>
        <Figure label={w.maximum} large>
          {left.maximumLeft === null ? w.noMaximumShort : <Money value={left.maximumLeft} />}
        </Figure>
        <Figure label={w.columns.asOf}>
          <AsOf asOf={asOf} on={on} />
        </Figure>
      </Figures>
      {used && <p className={css.note}>{w.lessCharges(day(asOf))}</p>}
    </>
  );
}
