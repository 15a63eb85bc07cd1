import { useSession } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import { Day } from '../../../ui/values.js';
import { daysBetween, nearnessOf } from './days.js';
import css from './parts.module.css';

/** A last day of use, and how near it is when it is near. */
export function LastDay({ value }: { readonly value: string | null }) {
  const t = useText();
  const { today, practice } = useSession();
  if (value === null) return <Day value={null} />;
  const nearness = nearnessOf(value, today, practice.expiryWarningDays);
  return (
    <>
      <Day value={value} />
      {nearness !== 'later' && (
        <span className={css.second} data-nearness={nearness}>
          {t.shelves.daysLeft(daysBetween(today, value))}
        </span>
      )}
    </>
  );
}
