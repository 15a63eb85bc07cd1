import { useFormat } from '../../app/use-format.js';
import { micro } from '../../ui/drawn.js';

/** '+€3.20', '−€1.10': a difference says its direction with a sign. */
export function useSigned() {
  const format = useFormat();
  return (value: string) => `${micro(value) > 0n ? '+' : ''}${format.money(value)}`;
}

/** A difference of cost: what is dearer is marked, not only by colour. */
export function SignedMoney({ value }: { readonly value: string }) {
  const signed = useSigned();
  return <span style={{ whiteSpace: 'nowrap' }}>{signed(value)}</span>;
}
