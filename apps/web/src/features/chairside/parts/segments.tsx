import type { Choice } from '../../../ui/fields.js';
import css from './segments.module.css';

interface Props<T extends string> {
  readonly label: string;
  readonly name: string;
  readonly value: T;
  readonly choices: readonly (Choice & { readonly value: T })[];
  readonly onChoose: (value: T) => void;
}

/** A switch between views; small, because it changes nothing that is booked. */
export function Segments<T extends string>({ label, name, value, choices, onChoose }: Props<T>) {
  return (
    <fieldset className={css.segments} aria-label={label}>
      {choices.map((choice) => (
        <label key={choice.value}>
          <input
            type="radio"
            name={name}
            value={choice.value}
            checked={choice.value === value}
            onChange={() => onChoose(choice.value)}
          />
          <span>{choice.label}</span>
        </label>
      ))}
    </fieldset>
  );
}
