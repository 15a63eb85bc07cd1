import type { ReactNode } from 'react';
import css from './chips.module.css';

export interface Chip<T extends string> {
  readonly value: T;
  readonly label: ReactNode;
}

interface Common<T extends string> {
  readonly id: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly chips: readonly Chip<T>[];
}

interface RadioProps<T extends string> extends Common<T> {
  readonly value: T | null;
  readonly onChoose: (value: T) => void;
}

/** One of a few, all in sight. */
export function RadioChips<T extends string>(props: RadioProps<T>) {
  const { id, label, hint, error, chips, value, onChoose } = props;
  return (
    <div className={css.field}>
      <span id={`${id}-label`} className={css.label}>
        {label}
      </span>
      <div
        id={id}
        role="radiogroup"
        className={css.chips}
        aria-labelledby={`${id}-label`}
        aria-invalid={error !== undefined}
        aria-describedby={`${id}-says`}
      >
        {chips.map((chip) => (
          <label key={chip.value} className={css.chip}>
            <input
              type="radio"
              name={id}
              value={chip.value}
              checked={chip.value === value}
              onChange={() => onChoose(chip.value)}
            />
            <span>{chip.label}</span>
          </label>
        ))}
      </div>
      <Says id={id} hint={hint} error={error} />
    </div>
  );
}

interface CheckProps<T extends string> extends Common<T> {
  readonly values: readonly T[];
  readonly onToggle: (value: T) => void;
  readonly children?: ReactNode;
}

/** Any of a few. */
export function CheckChips<T extends string>(props: CheckProps<T>) {
  const { id, label, hint, error, chips, values, onToggle, children } = props;
  return (
    <div className={css.field}>
      <span id={`${id}-label`} className={css.label}>
        {label}
      </span>
      <fieldset id={id} className={css.chips} aria-labelledby={`${id}-label`}>
        {chips.map((chip) => (
          <label key={chip.value} className={css.chip}>
            <input
              type="checkbox"
              checked={values.includes(chip.value)}
              aria-invalid={error !== undefined}
              aria-describedby={`${id}-says`}
              onChange={() => onToggle(chip.value)}
            />
            <span>{chip.label}</span>
          </label>
        ))}
        {children}
      </fieldset>
      <Says id={id} hint={hint} error={error} />
    </div>
  );
}

/** What is wrong, or else what helps. */
export function Says(props: {
  readonly id: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
}) {
  const { id, hint, error } = props;
  const words = error ?? hint;
  return (
    <p id={`${id}-says`} className={css.says} data-error={error !== undefined || undefined}>
      {words}
    </p>
  );
}
