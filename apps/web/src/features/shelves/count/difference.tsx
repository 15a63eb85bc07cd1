import { formatQuantity, isZero, type Quantity } from '#lib/measure';
import { useFormat } from '../../../app/use-format.js';
import css from './count.module.css';

interface Props {
  /** Counted less expected. */
  readonly micro: Quantity;
  readonly unit: string;
}

/** A difference with its sign; none is a dash. */
export function Difference({ micro, unit }: Props) {
  const format = useFormat();
  if (isZero(micro)) return <span className={css.none}>±0</span>;
  const sign = micro > 0n ? '+' : '−';
  const size = formatQuantity(micro).replace('-', '');
  return (
    <span className={css.difference} data-way={micro > 0n ? 'more' : 'less'}>
      {`${sign}\u2009${format.quantity(size, unit)}`}
    </span>
  );
}
