import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Amount, Money } from '../../ui/values.js';
import type { Proposal } from './api/list-proposals.js';
import { known } from './line-words.js';
import css from './parts.module.css';

/** Every number that a proposal rests on. */
export function FiguresTable({ line }: { readonly line: Proposal }) {
  const { ordering } = useText();
  return (
    <dl className={css.figures}>
      {line.figures.map(({ name, value, unit }) => (
        <div key={name}>
          <dt>{known(ordering.figures, name)}</dt>
          <dd>
            <FigureValue value={value} unit={unit} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

function FigureValue({ value, unit }: { readonly value: string; readonly unit: string }) {
  const { ordering } = useText();
  const { currency, percent, number } = useFormat();
  if (unit === currency) return <Money value={value} />;
  if (unit === 'share') return percent(value);
  if (unit === 'orders') return ordering.orders(Number(value));
  if (unit === 'days') return `${number(Number(value).toFixed(1))} ${ordering.dayUnit}`;
  return <Amount value={value} unit={unit} rough />;
}
