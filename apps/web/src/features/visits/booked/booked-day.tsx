import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { More } from '../../../ui/more.js';
import { Section } from '../../../ui/section.js';
import { Amount } from '../../../ui/values.js';
import type { DayUsage } from '../api/get-booked-usage.js';
import type { BookedVisit } from '../api/list-booked-visits.js';
import css from './booked.module.css';
import { BookedRow } from './booked-row.js';

interface Props {
  readonly day: string;
  readonly visits: readonly BookedVisit[];
  readonly usage: DayUsage | undefined;
}

/** One day: its bookings, and beside them what they will use. */
export function BookedDay({ day, visits, usage }: Props) {
  const t = useText();
  const format = useFormat();
  return (
    <Section
      title={format.weekday(day)}
      {...(usage ? { aside: t.booked.sum(usage.visits, usage.minutes) } : {})}
    >
      <div className={css.day}>
        <ul className={css.rows}>
          {visits.map((visit) => (
            <BookedRow key={visit.id} visit={visit} />
          ))}
        </ul>
        {usage && <Uses usage={usage} />}
      </div>
    </Section>
  );
}

/** So many stand there at once; the others are a click away. */
const SHOWN = 5;

function Uses({ usage }: { readonly usage: DayUsage }) {
  const t = useText();
  const [first, rest] = [usage.lines.slice(0, SHOWN), usage.lines.slice(SHOWN)];
  return (
    <div className={css.uses}>
      <h3 className={css.usesTitle}>{t.booked.uses}</h3>
      {usage.lines.length === 0 && <p className={css.quiet}>{t.booked.usesNothing}</p>}
      <Needs lines={first} />
      {rest.length > 0 && (
        <More summary={t.booked.usesMore(rest.length)}>
          <Needs lines={rest} />
        </More>
      )}
      {usage.shadesUnknown > 0 && (
        <p className={css.quiet}>{t.booked.shadeUnknown(usage.shadesUnknown)}</p>
      )}
    </div>
  );
}

function Needs({ lines }: { readonly lines: DayUsage['lines'] }) {
  return (
    <dl className={css.needs}>
      {lines.map(({ consumable, quantity }) => (
        <div key={consumable.id}>
          <dt>{[consumable.name, consumable.shade].filter((part) => part !== null).join(', ')}</dt>
          <dd>
            <Amount value={quantity} unit={consumable.unit} rough />
          </dd>
        </div>
      ))}
    </dl>
  );
}
