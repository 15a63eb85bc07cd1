import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { type Replay, replaysQuery } from '../api/replays.js';
import css from './proof.module.css';

/** How far it is. One may leave the screen meanwhile. */
export function ReplayRunning({ replay }: { readonly replay: Replay }) {
  const t = useText();
  const format = useFormat();
  const queries = useQueryClient();
  const words = t.foresight.proof.running;
  // When it ends this goes away, and the list of replays is out of date.
  useEffect(
    () => () => void queries.invalidateQueries({ queryKey: replaysQuery.queryKey, exact: true }),
    [queries],
  );
  const share = Number(replay.progress);
  return (
    <div className={css.running}>
      <p className={css.state}>
        {words.title(format.day(replay.firstDay), format.day(replay.lastDay))}
      </p>
      <div
        className={css.track}
        role="progressbar"
        aria-label={words.label}
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={Math.round(share * 100)}
      >
        <div className={css.bar} style={{ width: `${share * 100}%` }} />
      </div>
      <p className={css.quiet}>{words.hint(format.percent(share.toFixed(2)))}</p>
    </div>
  );
}
