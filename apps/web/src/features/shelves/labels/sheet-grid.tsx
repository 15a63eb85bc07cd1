import { useText } from '../../../text/text-provider.js';
import css from './labels.module.css';

const PLACES = Array.from({ length: 24 }, (_, i) => i + 1);

interface Props {
  /** From 1, row by row. */
  readonly start: number;
  readonly count: number;
  readonly onStart: (place: number) => void;
}

/** The first sheet as it lies there: where to begin, and which labels will be used. */
export function SheetGrid({ start, count, onStart }: Props) {
  const { labels } = useText().scan;
  return (
    <fieldset className={css.grid} aria-label={labels.where}>
      {PLACES.map((place) => (
        <label key={place} data-used={(place >= start && place < start + count) || undefined}>
          <input
            type="radio"
            name="start"
            aria-label={labels.place(place)}
            checked={place === start}
            onChange={() => onStart(place)}
          />
          <span aria-hidden="true">{place}</span>
        </label>
      ))}
    </fieldset>
  );
}
