import { useFormat } from '../../app/use-format.js';
import { drawnShare, micro } from '../../ui/drawn.js';
import css from './ranked-bars.module.css';
import { type Ranked, sumOf } from './sums.js';

interface Props {
  readonly label: string;
  readonly rows: readonly Ranked[];
}

/** Costs by name, the largest first, each with its share of all. */
export function RankedBars({ label, rows }: Props) {
  const format = useFormat();
  const largest = rows.reduce((most, row) => (micro(row.cost) > most ? micro(row.cost) : most), 0n);
  const sum = micro(sumOf(rows.map((row) => row.cost)));
  return (
    <ol className={css.bars} aria-label={label}>
      {rows.map(({ name, cost }) => (
        <li key={name}>
          <span className={css.name}>{name}</span>
          <span className={css.track} aria-hidden="true">
            <span style={{ width: `${drawnShare(micro(cost), largest) * 100}%` }} />
          </span>
          <span className={css.cost}>{format.money(cost)}</span>
          <span className={css.share}>{format.percent(String(drawnShare(micro(cost), sum)))}</span>
        </li>
      ))}
    </ol>
  );
}
