import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { More } from '../../ui/more.js';
import type { Proposal } from './api/list-proposals.js';
import { FiguresTable } from './figures-table.js';
import { InsteadList } from './instead-list.js';
import { assumedWords, leadWords } from './line-words.js';
import { OutlookTable } from './outlook-table.js';
import css from './parts.module.css';

interface Props {
  readonly line: Proposal;
  /** The single figures only for who asks for them. */
  readonly folded?: boolean;
}

/** Everything behind a proposal: figures, what it does to the shelf, what was assumed, other ways. */
export function ProposalDetails({ line, folded = false }: Props) {
  const t = useText();
  const w = t.ordering;
  const format = useFormat();
  return (
    <div className={css.details}>
      {line.substitutes.length > 0 && (
        <section>
          <h4>{w.instead.title}</h4>
          <p className={css.quiet}>{w.instead.hint}</p>
          <InsteadList list={line.substitutes} />
        </section>
      )}
      <section>
        <h4>{w.outlook.title}</h4>
        <p className={css.quiet}>{w.outlook.hint(line.horizonDays)}</p>
        <OutlookTable line={line} />
      </section>
      <section className={css.across}>
        {folded ? (
          <More summary={w.figuresTitle}>
            <FiguresTable line={line} />
          </More>
        ) : (
          <>
            <h4>{w.figuresTitle}</h4>
            <FiguresTable line={line} />
          </>
        )}
      </section>
      {(line.assumed.length > 0 || line.lead !== null) && (
        <section className={css.across}>
          <h4>{w.assumedTitle}</h4>
          <ul className={css.plain}>
            {line.lead !== null && <li>{leadWords(line.lead, format, t)}</li>}
            {line.assumed.map((assumed) => (
              <li key={assumed.code}>{assumedWords(assumed, line.consumable.unit, format, t)}</li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
