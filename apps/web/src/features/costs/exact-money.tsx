import { useFormat } from '../../app/use-format.js';
import css from './exact-money.module.css';

/** Money to its last digit, not rounded to coins: 0.156014 EUR. */
export function ExactMoney({ value }: { readonly value: string }) {
  const format = useFormat();
  return (
    <span className={css.exact}>
      {format.number(value)}
      <small>{`\u00a0${format.currency}`}</small>
    </span>
  );
}
