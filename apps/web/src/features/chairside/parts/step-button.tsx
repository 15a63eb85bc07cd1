import css from './step-button.module.css';

interface Props {
  readonly sign: '+' | '-';
  readonly label: string;
  readonly disabled?: boolean;
  readonly onStep: () => void;
}

export function StepButton({ sign, label, disabled = false, onStep }: Props) {
  return (
    <button
      type="button"
      className={css.step}
      aria-label={label}
      aria-disabled={disabled}
      onClick={() => {
        if (!disabled) onStep();
      }}
    >
      <svg viewBox="0 0 16 16" aria-hidden="true">
        <path d={sign === '+' ? 'M2 8h12M8 2v12' : 'M2 8h12'} />
      </svg>
    </button>
  );
}
