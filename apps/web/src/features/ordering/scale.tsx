import { useFormat } from '../../app/use-format.js';
import css from './chart.module.css';

interface Props {
  readonly marks: readonly number[];
  readonly unit: string;
}

/** The numbers beside a picture; the unit stands with the highest. */
export function Scale({ marks, unit }: Props) {
  const format = useFormat();
  const end = marks.at(-1) ?? 1;
  return (
    <div className={css.scale} aria-hidden="true">
      {marks.map((mark) => (
        <span key={mark} style={{ bottom: `${(mark / end) * 100}%` }}>
          {mark === end ? format.quantity(String(mark), unit) : format.number(String(mark))}
        </span>
      ))}
    </div>
  );
}
