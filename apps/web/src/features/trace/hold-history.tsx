import type { Shape } from '../../api/client.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Section } from '../../ui/section.js';
import type { LotStatus } from './api/set-lot-status.js';
import css from './hold-history.module.css';
import { LotStatusMark } from './marks.js';

const isStatus = (word: string): word is LotStatus =>
  ['released', 'quarantined', 'recalled'].includes(word);

/** Who held or released it, when and why; the oldest first. */
export function HoldHistory({ lot }: { readonly lot: Shape<'LotDto'> }) {
  const t = useText();
  const format = useFormat();
  const words = t.trace.hold;
  return (
    <Section title={words.title}>
      {lot.statusChanges.length === 0 && <p className={css.none}>{words.never}</p>}
      <ol className={css.changes}>
        {lot.statusChanges.map((change) => (
          <li key={change.recordedAt}>
            {isStatus(change.status) && <LotStatusMark status={change.status} />}
            <p>{change.note}</p>
            <p className={css.quiet}>
              {words.by(change.recordedBy.name, format.instant(change.recordedAt))}
            </p>
          </li>
        ))}
      </ol>
    </Section>
  );
}
