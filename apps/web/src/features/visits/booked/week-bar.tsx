import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { ButtonLink } from '../../../ui/button-link.js';
import css from './booked.module.css';
import { daysAfter } from './week.js';

interface Props {
  readonly days: readonly string[];
  readonly today: string;
}

/** Which week is shown, and the ways to others. */
export function WeekBar({ days, today }: Props) {
  const t = useText();
  const format = useFormat();
  const [monday = today, sunday = today] = [days[0], days[6]];
  const way = (week: string | undefined, label: string) => (
    <ButtonLink to="/visits/booked" search={{ week }} variant="default" resetScroll={false}>
      {label}
    </ButtonLink>
  );
  return (
    <nav className={`${css.bar ?? ''} tb-screen-only`} aria-label={t.booked.title}>
      <p className={css.which} aria-live="polite">
        {t.booked.week(format.day(monday), format.day(sunday))}
      </p>
      <div className={css.ways}>
        {way(daysAfter(monday, -7), t.booked.before)}
        {!days.includes(today) && way(undefined, t.booked.now)}
        {way(daysAfter(monday, 7), t.booked.after)}
      </div>
    </nav>
  );
}
