import { Button } from '@mantine/core';
import { useText } from '../../text/text-provider.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Money } from '../../ui/values.js';
import { useChairside } from './chairside-context.js';
import { useOnline } from './offline/use-outbox.js';
import css from './post-bar.module.css';

interface Props {
  readonly isPosting: boolean;
  readonly problems: readonly string[];
  readonly onPost: () => void;
}

/** What it comes to, always in sight, with the one button that books it. */
export function PostBar({ isPosting, problems, onPost }: Props) {
  const t = useText();
  const online = useOnline();
  const { draft, plan } = useChairside();
  const words = t.chairside.bar;
  return (
    <div className={css.bar}>
      {problems.length > 0 && (
        <div role="alert" className={css.problem}>
          {problems.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      )}
      <div className={css.sum}>
        <p className={css.what}>
          {words.summary(draft.restorations.length)}
          {plan.preview?.estimated && <StatusMark tone="caution">{words.estimated}</StatusMark>}
        </p>
        {plan.preview && (
          <p className={css.cost}>
            <span>{words.cost}</span> <Money value={plan.preview.materialCost} />
          </p>
        )}
      </div>
      <div className={css.actions}>
        <Button
          size="lg"
          onClick={onPost}
          loading={isPosting}
          aria-busy={isPosting}
          title={words.keys}
          aria-keyshortcuts="Control+Enter"
        >
          {isPosting ? words.posting : online ? words.post : words.keep}
        </Button>
      </div>
    </div>
  );
}
