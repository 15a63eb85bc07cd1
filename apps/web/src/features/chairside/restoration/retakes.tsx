import { useText } from '../../../text/text-provider.js';
import type { RestorationDraft } from '../draft/draft.js';
import { Says } from '../parts/chips.js';
import { StepButton } from '../parts/step-button.js';
import css from './restoration-card.module.css';

interface Props {
  readonly id: string;
  readonly error: string | undefined;
  readonly of: RestorationDraft;
  readonly onAttempts: (attempts: number) => void;
}

const MOST = 10;

/** How often it was taken out and made once more. */
export function Retakes({ id, error, of, onAttempts }: Props) {
  const words = useText().chairside.restoration;
  const retakes = of.attempts - 1;
  return (
    <div id={id}>
      <div className={css.retakes}>
        <span className={css.retakeLabel}>{words.retakes}</span>
        <StepButton
          sign="-"
          label={words.lessRetake}
          disabled={retakes === 0}
          onStep={() => onAttempts(of.attempts - 1)}
        />
        <output className={css.retakeCount}>{words.retakeCount(retakes)}</output>
        <StepButton
          sign="+"
          label={words.addRetake}
          disabled={of.attempts === MOST}
          onStep={() => onAttempts(of.attempts + 1)}
        />
      </div>
      <Says id={id} hint={retakes > 0 ? words.retakesHint : undefined} error={error} />
    </div>
  );
}
