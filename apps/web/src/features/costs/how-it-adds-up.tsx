import { useText } from '../../text/text-provider.js';
import { Section } from '../../ui/section.js';
import { Money } from '../../ui/values.js';
import type { Explained } from './api/explain-cost.js';
import { ExactMoney } from './exact-money.js';
import css from './how-it-adds-up.module.css';
import { sumOf } from './sums.js';

/** From the exact shares of the lines to the whole cents of the reports. */
export function HowItAddsUp({ one }: { readonly one: Explained }) {
  const t = useText();
  const words = t.costs.one.sum;
  const exactly = (lines: Explained['ownLines']) => sumOf(lines.map((line) => line.share));
  return (
    <Section title={words.title} hint={words.hint}>
      <dl className={css.sum}>
        <div>
          <dt>{words.own}</dt>
          <dd>
            <ExactMoney value={exactly(one.ownLines)} />
          </dd>
        </div>
        <div>
          <dt>{words.shared}</dt>
          <dd>
            <ExactMoney value={exactly(one.sharedLines)} />
          </dd>
        </div>
        <div className={css.rule}>
          <dt>{words.exact}</dt>
          <dd>
            <ExactMoney value={one.exactCost} />
          </dd>
        </div>
        <div>
          <dt>{words.rounding}</dt>
          <dd>
            <ExactMoney value={one.rounding} />
          </dd>
        </div>
        <div className={css.total}>
          <dt>{words.cost}</dt>
          <dd>
            <Money value={one.cost} />
          </dd>
        </div>
      </dl>
    </Section>
  );
}
