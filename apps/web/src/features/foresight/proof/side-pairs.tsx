import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { drawnShare, micro } from '../../../ui/drawn.js';
import type { ReplayResult } from '../api/replays.js';
import css from './side-pairs.module.css';

interface Pair {
  readonly name: string;
  readonly computed: string;
  readonly old: string;
  readonly told: (value: string) => string;
}

/** Two bars a figure, each beside its number: as reckoned, and as it was ordered so far. */
export function SidePairs({ result }: { readonly result: ReplayResult }) {
  const t = useText();
  const format = useFormat();
  const words = t.foresight.proof.pairs;
  const { computed, old } = result;
  const count = (name: string, of: 'stockOutDays' | 'itemsOut' | 'orders'): Pair => ({
    ...{ name, computed: String(computed[of]), old: String(old[of]), told: format.number },
  });
  const value = (name: string, of: 'wastedValue' | 'averageValue'): Pair => ({
    ...{ name, computed: computed[of], old: old[of], told: format.money },
  });
  // Replays of earlier versions do not know what sending cost.
  const sendingPairs = ({ computed, old }: ReplayResult): readonly Pair[] =>
    computed.sent === null || old.sent === null || computed.freight === null || old.freight === null
      ? []
      : [
          {
            ...{ name: words.sent, told: format.number },
            ...{ computed: String(computed.sent), old: String(old.sent) },
          },
          {
            ...{ name: words.freight, told: format.money },
            ...{ computed: computed.freight, old: old.freight },
          },
        ];
  const pairs = [
    count(words.days, 'stockOutDays'),
    count(words.items, 'itemsOut'),
    value(words.waste, 'wastedValue'),
    value(words.stock, 'averageValue'),
    count(words.orders, 'orders'),
    ...sendingPairs(result),
  ];
  return (
    <table className={css.pairs} aria-label={t.foresight.proof.sum}>
      <thead>
        <tr>
          <td />
          <th scope="col">{words.computed}</th>
          <th scope="col">{words.old}</th>
        </tr>
      </thead>
      <tbody>
        {pairs.map((pair) => (
          <PairRow key={pair.name} pair={pair} />
        ))}
      </tbody>
    </table>
  );
}

function PairRow({ pair }: { readonly pair: Pair }) {
  const { name, told } = pair;
  const [computed, old] = [micro(pair.computed), micro(pair.old)];
  const most = computed > old ? computed : old;
  const bar = (value: bigint, side: 'computed' | 'old') => (
    <svg aria-hidden="true" className={css.bar} viewBox="0 0 100 8" preserveAspectRatio="none">
      <path className={css.ground} d="M0 4H100" />
      <path data-side={side} d={`M0 0H${drawnShare(value, most) * 100}V8H0Z`} />
    </svg>
  );
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>
        <span className={css.figure}>{told(pair.computed)}</span>
        {bar(computed, 'computed')}
      </td>
      <td>
        <span className={css.figure}>{told(pair.old)}</span>
        {bar(old, 'old')}
      </td>
    </tr>
  );
}
