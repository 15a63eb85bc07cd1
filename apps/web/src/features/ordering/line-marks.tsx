import { useText } from '../../text/text-provider.js';
import { StatusMark } from '../../ui/status-mark.js';
import type { Proposal } from './api/list-proposals.js';
import { known } from './line-words.js';
import css from './parts.module.css';

const GRAVE = [
  'may run out before it comes',
  'comes already expired',
  'usable life shorter than lead time and review',
];

/** What a person should decide on, and what made the order another size. */
export function LineMarks({ line }: { readonly line: Proposal }) {
  const w = useText().ordering;
  if (line.flags.length === 0 && line.bounds.length === 0) return null;
  return (
    <p className={css.marks}>
      {line.flags.map((flag) => (
        <StatusMark key={flag} tone={GRAVE.includes(flag) ? 'danger' : 'caution'}>
          {known(w.flags, flag)}
        </StatusMark>
      ))}
      {line.bounds.length > 0 && (
        <StatusMark tone="quiet">
          {w.boundBy(line.bounds.map((bound) => known(w.bounds, bound)).join(', '))}
        </StatusMark>
      )}
    </p>
  );
}
