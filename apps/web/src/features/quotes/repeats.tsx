import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Section } from '../../ui/section.js';
import { Amount, Money } from '../../ui/values.js';
import css from './answer.module.css';
import type { Quote } from './api/make-quote.js';
import { minus, repeatedChairCost } from './ways.js';

/** What the second visit uses again: named things, minutes, and what both cost. */
export function Repeats({ quote }: { readonly quote: Quote }) {
  const t = useText();
  const w = t.quotes;
  const format = useFormat();
  const [first] = quote.ways;
  const apart = quote.ways.find(({ visits }) => visits.length > 1);
  if (!first || !apart) return null;
  const chair = repeatedChairCost(apart, first);
  return (
    <Section title={w.again.title} hint={w.again.hint}>
      <table className={css.plain} aria-label={w.again.title}>
        <thead>
          <tr>
            <th scope="col">{w.again.what}</th>
            <th scope="col">{w.again.quantity}</th>
            <th scope="col">{w.again.cost}</th>
          </tr>
        </thead>
        <tbody>
          {apart.repeated.map(({ consumable, quantity, cost }) => (
            <tr key={consumable.id}>
              <th scope="row">
                {consumable.name}
                {consumable.shade !== null && `, ${consumable.shade}`}
              </th>
              <td>
                <Amount value={quantity} unit={consumable.unit} />
              </td>
              <td>
                <Money value={cost} />
              </td>
            </tr>
          ))}
          <tr data-sum>
            <th scope="row">{w.again.material}</th>
            <td />
            <td>
              <Money value={minus(apart.material, first.material)} />
            </td>
          </tr>
          <tr>
            <th scope="row">{w.again.setUp}</th>
            <td>
              {apart.repeatedMinutes === null
                ? w.again.notStated
                : w.min(format.number(String(apart.repeatedMinutes)))}
            </td>
            <td>{chair === null ? w.again.noRate : format.money(chair)}</td>
          </tr>
        </tbody>
      </table>
    </Section>
  );
}
