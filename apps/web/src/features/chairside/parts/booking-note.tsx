import { Button } from '@mantine/core';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { useChairside } from '../chairside-context.js';
import css from './visit-facts.module.css';

/** Says which booking this visit keeps, and lets it go. */
export function BookingNote() {
  const t = useText();
  const format = useFormat();
  const { draft, change } = useChairside();
  if (draft.bookedVisit === undefined) return null;
  return (
    <p className={css.booking}>
      {t.chairside.booking.keeps(format.day(draft.bookedVisit.day))}
      <Button
        variant="subtle"
        onClick={() => change((old) => ({ ...old, bookedVisit: undefined }))}
      >
        {t.chairside.booking.not}
      </Button>
    </p>
  );
}
